/** A grid of stakes: laid once, then its readings alone are typed, walked to and fro. */
import { useEffect, useMemo, useRef, useState } from "react";
import { Heading } from "react-aria-components";
import { useStore } from "zustand";
import { surveyEdits } from "../../document";
import { select, setStep, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { pickStakeRow, type StakeRow, showStakes, stakeGridStore, stakeSheet } from "../../store/stakeGrid";
import { appStore, shownProject } from "../../store/store";
import { Action } from "../fields/Choice";
import { useNotation, useProject } from "../useProject";
import { askBook } from "./bookRequest";
import { noStakes, type Stakes, stakesFrom, stakesShown, withPickedRow } from "./stakes";
import { openSurveyDialog, stakesDraft } from "./surveyDialogs";

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
  const notation = useNotation();
  const stakes = useStore(stakesDraft, (state) => state.stakes);
  const setStakes = (next: Stakes) => stakesDraft.setState({ stakes: next });
  const [fault, setFault] = useState<{ readonly field: keyof Stakes | null; readonly why: string } | null>(
    null,
  );
  useEffect(() => {
    const { picked } = stakeGridStore.getState();
    pickStakeRow(null);
    if (picked?.row)
      stakesDraft.setState((draft) => ({
        stakes: withPickedRow(draft.stakes, picked.row as StakeRow, project, notation.length),
      }));
  }, [project, notation]);
  // What is typed is seen on the plan at once.
  const shown = useMemo(() => stakesShown(stakes, project), [stakes, project]);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    stakeSheet(form.current?.closest<HTMLElement>(".modal") ?? null);
    return () => stakeSheet(null);
  }, []);
  useEffect(() => showStakes(shown), [shown]);
  useEffect(() => () => showStakes([]), []);
  const lay = () => {
    const read = stakesFrom(stakes, project);
    if (!read.ok) return setFault(read);
    const hasSetup = project.survey.setups.length > 0 || tryRun(surveyEdits.addSetup, {}).ok;
    const edit = hasSetup ? tryRun(surveyEdits.addGrid, read.grid) : null;
    if (edit?.ok !== true) return setFault({ field: null, why: edit?.why ?? "" });
    openSurveyDialog(null);
    stakesDraft.setState({ stakes: noStakes });
    goToFirst(edit.made ?? "");
  };
  return (
    <form
      ref={form}
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
      <Action look="quiet" icon="place" onPress={pickOnPlan}>
        Click the first stake and the row's direction
      </Action>
      <p className="soft small" role="status">
        {shown.length > 0 ? `${shown.length} stakes, shown on the plan.` : ""}
      </p>
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

/** The sheet goes away while two places are clicked, and comes back with them. */
function pickOnPlan(): void {
  if (pickTool("stakes")) openSurveyDialog(null);
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
