/** One side or diagonal: its planned length, what the tape said, and how the tape was held. */
import { plotEdits, type Tape } from "../../document";
import { cornerName } from "../../grading";
import { run as runEdit, tryRun } from "../../store/actions";
import { Action } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import type { Notation } from "../notation";
import { useNotation, useResults } from "../useProject";

export interface TapeRowProps {
  readonly from: number;
  readonly to: number;
  readonly planned: number;
  readonly tape: Tape | null;
}

export function TapeRow({ from, to, planned, tape }: TapeRowProps) {
  const notation = useNotation();
  const name = `${cornerName(from)}–${cornerName(to)}`;
  const commit = (text: string) => {
    if (tape === null) return refusal(tryRun(plotEdits.addTape, { from, to, text }));
    if (text.trim() === "") return refusal(runEdit(plotEdits.removeTape, { id: tape.id }));
    return refusal(tryRun(plotEdits.changeTape, { id: tape.id, text }));
  };
  return (
    <li className="tape">
      <span className="coordinate-name">{name}</span>
      <span className="tape-planned">{notation.length(planned)}</span>
      <TypedField
        layout="bare"
        label={`${name} as taped`}
        shown={tape?.length.text ?? ""}
        placeholder="taped"
        commit={commit}
      />
      {tape ? <Held tape={tape} name={name} planned={planned} /> : null}
    </li>
  );
}

function Held({ tape, name, planned }: { tape: Tape; name: string; planned: number }) {
  const notation = useNotation();
  const said = useSaid(tape, planned, notation);
  const sloping = tape.held === "slope";
  return (
    <p className="tape-said small">
      <span className="soft">{said}</span>
      <Action
        look="quiet"
        aria-label={`${name}: the tape ${sloping ? "was held level" : "lay on the slope"}`}
        onPress={() => runEdit(plotEdits.changeTape, { id: tape.id, held: sloping ? "level" : "slope" })}
      >
        {sloping ? "Say it was held level" : "Say it lay on the slope"}
      </Action>
    </p>
  );
}

/** Against the plan, against the other tapes, and what the slope took. */
function useSaid(tape: Tape, planned: number, notation: Notation): string {
  const plot = useResults((results) => results.plot);
  const index = plot.tapes.findIndex(({ id }) => id === tape.id);
  const level = plot.tapes[index];
  if (!level) return "not level yet: both corners need a shot";
  const off = level.distance - planned;
  const residual = plot.squared?.residuals[index]?.residual ?? 0;
  const least = 0.0008;
  return [
    level.lost > 0
      ? `on the slope; level ${notation.length(level.distance)}, ${notation.length(level.lost)} less`
      : "",
    Math.abs(off) < least ? "as planned" : `${notation.length(Math.abs(off))} ${off > 0 ? "over" : "under"}`,
    Math.abs(residual) < least ? "" : `${notation.signed(residual)} against the others`,
  ]
    .filter(Boolean)
    .join("; ");
}
