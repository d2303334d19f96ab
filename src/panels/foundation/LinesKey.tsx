/** What the lines of a foundation's drawings mean. */

const keys = [
  ["finished ground", "ink", ""],
  ["ground as it is", "soft", "6 3"],
  ["floor", "accent", "12 3 3 3"],
  ["frost depth", "water", "8 3"],
] as const;

export function LinesKey({ frost }: { frost: boolean }) {
  return (
    <p className="elevations-key">
      {keys
        .filter(([words]) => frost || words !== "frost depth")
        .map(([words, ink, dash]) => (
          <span key={words}>
            <svg width="26" height="6" aria-hidden="true">
              <path d="M0 3H26" stroke={`var(--${ink})`} strokeWidth="1.6" strokeDasharray={dash} />
            </svg>
            {words}
          </span>
        ))}
    </p>
  );
}
