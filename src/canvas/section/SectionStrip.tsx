/** The long section under the plan; it moves with the floor. */
export function SectionStrip() {
  return <section className="section-strip" aria-label="Section" />;
}
