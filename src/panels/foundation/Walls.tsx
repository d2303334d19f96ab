/** How much of each wall shows, and how far its siding stays off the ground. */
import { FigureTable, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

/** Siding above the ground, IRC R317.1 (2012), over paving, m: 2 in. */
const overPaving = 0.0508;

export function Walls() {
  const result = useResults((results) => results.foundation);
  const { sidingClearance: least, sidingLap } = useProject(({ rules }) => rules);
  const notation = useNotation();
  if (!result) return null;
  const shown = (m: number) => (m < 0 ? `${notation.length(-m)} buried` : notation.length(m));
  const low = new Set(
    result.walls.flatMap(({ sidingClearance }, i) => (sidingClearance < least - 0.003 ? [i] : [])),
  );
  const lapWords =
    sidingLap > 0 ? `${notation.length(sidingLap)} below the top of wall` : "at the top of wall";
  const drives = result.walls.flatMap(({ besideDrive }) => (besideDrive ? [besideDrive] : []));
  return (
    <Section title="Walls out of the ground">
      <FigureTable
        label="How much of each wall shows above finished ground"
        heads={["wall", "least", "most", "siding clear"]}
        rows={result.walls.map(({ name, leastShowing, mostShowing, sidingClearance }) => [
          name,
          Number.isFinite(leastShowing) ? shown(leastShowing) : "no wall",
          shown(mostShowing),
          Number.isFinite(sidingClearance) ? shown(sidingClearance) : "no siding",
        ])}
        marked={low}
      />
      {drives.map(({ showing, at }) => (
        <p className="soft small" key={at.place}>
          {showing < -0.003
            ? `Beside the drive's door, ${at.place}, its earth stands ${notation.length(-showing)} over the top of wall, against wood.`
            : `Beside the drive's door, ${at.place}, the drive leaves ${notation.length(Math.max(0, showing))} of wall. Siding there needs ${notation.length(overPaving)} above paving.`}
        </p>
      ))}
      <p className="soft small">
        Siding begins {lapWords} and isn't counted in doors and on the drive to them. International
        Residential Code R317.1 (2012) asks for {notation.rule("6 in", "152 mm")} above ground,{" "}
        {notation.rule("2 in", "51 mm")} above paving; yours: {notation.length(least)}.
      </p>
    </Section>
  );
}
