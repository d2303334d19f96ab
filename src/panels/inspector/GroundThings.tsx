/** What the inspector tells of lines at which the ground bends, and of test pits. */
import { type BreaklineKind, breaklineKinds, breaklineWord, surveyEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { Choice } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { PitDepths } from "../plot/PitDepths";
import { useNotation, useProject } from "../useProject";

/** A long line shows the first heights; the rest is in its file. */
const mostShown = 60;

const kinds = breaklineKinds.map((value) => ({ value, words: breaklineWord(value) }));

interface GroundThingProps {
  readonly id: string;
  readonly locked: boolean;
}

/** The kind of a line, and the height of each of its places; an empty one is left to the shots round it. */
export function BreaklineFacts({ id, locked }: GroundThingProps) {
  const line = useProject(({ survey }) => survey.breaklines.find((each) => each.id === id));
  const notation = useNotation();
  if (!line) return null;
  const choose = (kind: BreaklineKind) =>
    tryRun(surveyEdits.changeBreakline, { id, patch: { kind }, what: "choose a breakline's kind" });
  return (
    <>
      {locked ? null : <Choice label="Kind" value={line.kind} options={kinds} onChoose={choose} />}
      <fieldset className="pit-depths" aria-label="Heights of its places">
        {line.points.slice(0, mostShown).map(([x, y, z], index) => (
          <TypedField
            // biome-ignore lint/suspicious/noArrayIndexKey: a place is known by its order
            key={`${index} ${x} ${y}`}
            layout="stack"
            label={`Height of ${index + 1}`}
            shown={z === null ? "" : notation.length(z)}
            placeholder="from the shots"
            locked={locked}
            commit={(text) => refusal(tryRun(surveyEdits.setBreaklineHeight, { id, index, text }))}
          />
        ))}
      </fieldset>
    </>
  );
}

export function PitFacts({ id, locked }: GroundThingProps) {
  const pit = useProject(({ survey }) => survey.pits.find((each) => each.id === id));
  return pit ? <PitDepths pit={pit} locked={locked} /> : null;
}
