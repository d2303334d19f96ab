/** The rod: a vertical scale of heights with the floor as a handle. */
export function Rod() {
  return <section className="rod" aria-label="Floor height" />;
}
