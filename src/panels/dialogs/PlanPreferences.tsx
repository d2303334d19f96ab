import { siteEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { Toggle } from "../fields/Choice";
import { EarthFields } from "../steps/EarthFields";
import { PaperChoice } from "../steps/SheetsPanel";
import { useProject, useResults } from "../useProject";

/** What the plan is printed on, which limits its floor obeys, and what its earth is counted with: kept in its file. */
export function PlanPreferences() {
  return (
    <>
      <p className="soft">Kept in the plan's file. Each change can be undone.</p>
      <div className="part">
        <PaperChoice />
        <EarthFields />
      </div>
      <Rules />
    </>
  );
}

function Rules() {
  const off = useProject(({ rules }) => rules.off);
  const rules = useResults(({ band }) => band.rules);
  if (rules.length === 0) return null;
  const turn = (id: string, on: boolean) =>
    tryRun(siteEdits.changeRules, {
      patch: { off: on ? off.filter((other) => other !== id) : [...off, id] },
    });
  return (
    <fieldset className="toggles toggles-lines">
      <legend className="part-title">Limits of the floor</legend>
      {rules.map(({ id, name, source }) => (
        <div key={id}>
          <Toggle label={name} on={!off.includes(id)} onToggle={(on) => turn(id, on)} />
          <p className="field-help">{source}</p>
        </div>
      ))}
    </fieldset>
  );
}
