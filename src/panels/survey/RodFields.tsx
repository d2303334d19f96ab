import { type Rod, type Setup, surveyEdits } from "../../document";
import { run, tryRun } from "../../store/actions";
import { rodRule } from "../../survey";
import { Choice } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { RodDrawing } from "./RodDrawing";

const kinds: readonly { value: Rod["kind"]; words: string }[] = [
  { value: "plain", words: "tape or story pole" },
  { value: "direct", words: "direct-elevation rod" },
  { value: "cut-fill", words: "cut and fill rod" },
  { value: "line", words: "laser line on a post" },
];
const senses: readonly { value: Rod["reads"]; words: string }[] = [
  { value: "down", words: "lower ground" },
  { value: "up", words: "higher ground" },
];

/** Which rod was read, its rule in words and in a drawing, and the receiver's offset. */
export function RodFields({ setup: { id, rod } }: { setup: Setup }) {
  return (
    <details className="survey-more">
      <summary>{`Rod: ${rodRule(rod).name}`}</summary>
      <Choice
        label="Rod"
        value={rod.kind}
        options={kinds}
        onChoose={(kind) => run(surveyEdits.setRod, { id, kind })}
      />
      <RodDrawing kind={rod.kind} />
      <p className="field-help">{rodRule(rod).rule}</p>
      {rod.kind === "cut-fill" || rod.kind === "direct" ? (
        <Choice
          label="Bigger is"
          value={rod.reads}
          options={senses}
          onChoose={(reads) => run(surveyEdits.setRod, { id, reads })}
        />
      ) : (
        <TypedField
          label="Receiver offset"
          shown={rod.offset?.text ?? ""}
          placeholder="none"
          help="From the edge where you read up to the receiver's line; added to each reading."
          commit={(offset) => refusal(tryRun(surveyEdits.setRod, { id, offset }))}
        />
      )}
    </details>
  );
}
