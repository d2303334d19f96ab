import { type Setup, surveyEdits } from "../../document";
import { run, tryRun } from "../../store/actions";
import { Action } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Facts } from "../parts";
import { useNotation } from "../useProject";
import { beamErrorWords } from "./pegs";
import { openSurveyDialog } from "./surveyDialogs";

/** The beam's accuracy from its data sheet, and the error that a two-peg check found. */
export function BeamFields({ setup: { id, accuracy, collimation } }: { setup: Setup }) {
  const notation = useNotation();
  return (
    <>
      <TypedField
        label="Beam accuracy"
        shown={accuracy?.text ?? ""}
        placeholder={"1/16\" at 100'"}
        help="As on its data sheet: so much at a distance, or seconds of arc."
        commit={(text) => refusal(tryRun(surveyEdits.setAccuracy, { id, text }))}
      />
      {collimation === 0 ? null : (
        <Facts
          facts={[
            {
              name: "Beam's error",
              figure: beamErrorWords(collimation, notation),
              note: "taken off by distance",
            },
          ]}
        />
      )}
      <div className="survey-acts">
        <Action look="quiet" onPress={() => openSurveyDialog({ kind: "pegs", setup: id })}>
          Two-peg check…
        </Action>
        {collimation === 0 ? null : (
          <Action look="quiet" onPress={() => run(surveyEdits.setCollimation, { id, error: 0 })}>
            Don't correct
          </Action>
        )}
      </div>
    </>
  );
}
