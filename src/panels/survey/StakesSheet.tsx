/** A grid of stakes: laid once, then its readings alone are typed, walked to and fro. */
import { useState } from "react";
import { Heading } from "react-aria-components";
import { surveyEdits } from "../../document";
import { select, setStep, tryRun } from "../../store/actions";
import { appStore, shownProject } from "../../store/store";
import { Action } from "../fields/Choice";
import { useProject } from "../useProject";
import { askBook } from "./bookRequest";
import { noStakes, type Stakes, stakesFrom } from "./stakes";
import { openSurveyDialog } from "./surveyDialogs";

const fields: readonly { readonly id: keyof Stakes; readonly label: string; readonly help?: string }[] = [
  { id: "rows", label: "Rows" },
  { id: "columns", label: "Stakes in a row" },
  { id: "columnSpacing", label: "Between stakes" },
  { id: "rowSpacing", label: "Between rows" },
  { id: "start", label: "First stake", help: "A corner such as A, or east and north such as 12', 34'." },
  {
    id: "towards",
    label: "Rows run towards",
    help: "Clockwise from north: 90 is east. Further rows lie to the left of the first.",
  },
];

export function StakesSheet() {
  const project = useProject((present) => present);
  const [stakes, setStakes] = useState(noStakes);
  const [fault, setFault] = useState<{ readonly field: keyof Stakes | null; readonly why: string } | null>(
    null,
  );
  const lay = () => {
    const read = stakesFrom(stakes, project);
    if (!read.ok) return setFault(read);
    const hasSetup = project.survey.setups.length > 0 || tryRun(surveyEdits.addSetup, {}).ok;
    const edit = hasSetup ? tryRun(surveyEdits.addGrid, read.grid) : null;
    if (edit?.ok !== true) return setFault({ field: null, why: edit?.why ?? "" });
    openSurveyDialog(null);
    goToFirst(edit.made ?? "");
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        lay();
      }}
    >
      <Heading slot="title" className="dialog-title">
        Grid of stakes
      </Heading>
      <p className="soft">
        Each stake gets a row in the level book with its place. Then only readings are typed, one a row: along
        the first row, back along the next. The next stake is lit on the plan.
      </p>
      {fields.map(({ id, label, help }) => (
        <div key={id} className="field field-row">
          <label className="field-label" htmlFor={`stakes-${id}`}>
            {label}
          </label>
          <span className="field-box">
            <input
              id={`stakes-${id}`}
              className="field-input"
              value={stakes[id]}
              spellCheck={false}
              autoComplete="off"
              data-typed="true"
              aria-invalid={fault?.field === id}
              onChange={(event) => {
                setFault(null);
                setStakes({ ...stakes, [id]: event.currentTarget.value });
              }}
            />
          </span>
          {help ? <p className="field-help">{help}</p> : null}
          {fault?.field === id ? (
            <p className="field-fault" role="alert">
              {fault.why}
            </p>
          ) : null}
        </div>
      ))}
      {fault?.field === null ? (
        <p className="field-fault" role="alert">
          {fault.why}
        </p>
      ) : null}
      <div className="dialog-acts">
        <Action look="accent" type="submit">
          Lay the stakes
        </Action>
        <Action look="quiet" onPress={() => openSurveyDialog(null)}>
          Cancel
        </Action>
      </div>
    </form>
  );
}

/** Typing goes on at the first stake's reading. */
function goToFirst(grid: string): void {
  const { shots } = shownProject(appStore.getState()).survey;
  const first = shots.find(({ place }) => place.kind === "stake" && place.grid === grid);
  if (!first) return;
  setStep("shots");
  select([{ kind: "shot", id: first.id }]);
  askBook(first.id);
}
