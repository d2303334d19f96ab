/** How much of each wall shows, and how far its siding stays off the ground. */
import { FigureTable, Section } from "../parts";
import { useNotation, useResults } from "../useProject";

/** Siding above the ground, IRC R317.1 (2012), m: 6 in. */
const leastClearance = 0.1524;

export function Walls() {
  const result = useResults((results) => results.foundation);
  const notation = useNotation();
  if (!result) return null;
  const shown = (m: number) => (m < 0 ? `${notation.length(-m)} buried` : notation.length(m));
  const low = new Set(
    result.walls.flatMap(({ sidingClearance }, i) => (sidingClearance < leastClearance - 1e-6 ? [i] : [])),
  );
  return (
    <Section title="Walls out of the ground">
      <FigureTable
        label="How much of each wall shows above finished ground"
        heads={["wall", "least", "most", "siding clear"]}
        rows={result.walls.map(({ name, leastShowing, mostShowing, sidingClearance }) => [
          name,
          shown(leastShowing),
          shown(mostShowing),
          Number.isFinite(sidingClearance) ? shown(sidingClearance) : "no siding",
        ])}
        marked={low}
      />
      <p className="soft small">
        Siding begins at the top of wall and isn't counted in doors. International Residential Code R317.1
        (2012) asks for {notation.length(leastClearance)} above ground, {notation.length(leastClearance / 3)}{" "}
        above paving.
      </p>
    </Section>
  );
}
