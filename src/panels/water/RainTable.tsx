/** Rain by duration, as local tables print it: rows of minutes and intensity. */
import { type Storm, siteEdits } from "../../document";
import { rainRises } from "../../solve/storm-rain";
import { tryRun } from "../../store/actions";
import { rainUnit } from "../../units";
import { Action, IconAction } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { useProject } from "../useProject";
import { RateField } from "./RateField";

const minute = 60;
/** Row that a new table begins with: durations that local tables print, min. */
const usualMinutes = [5, 10, 15, 30, 60] as const;

export function RainTable() {
  const { table, intensity } = useProject(({ storm }) => storm);
  const feet = useProject(({ display }) => display.area === "ft2");
  const set = (rows: Storm["table"]) => tryRun(siteEdits.changeStorm, { patch: { table: rows } });
  const change = (index: number, patch: Partial<Storm["table"][number]>) =>
    set(table.map((row, i) => (i === index ? { ...row, ...patch } : row)));
  const add = () => {
    const last = table.at(-1);
    const duration = nextDuration(table);
    return set([...table, { duration, intensity: last?.intensity ?? intensity ?? 1e-5 }]);
  };
  return (
    <>
      {table.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place in the table
        <fieldset className="part-group" key={index} aria-label={`Rain, row ${index + 1}`}>
          <NumberField
            label={`Storm ${index + 1} lasts`}
            unit="min"
            value={row.duration / minute}
            onCommit={(minutes) => change(index, { duration: minutes * minute })}
          />
          <RateField
            label={`Storm ${index + 1} rains`}
            unit={rainUnit(feet)}
            value={row.intensity}
            commit={(value) => refusalOf(change(index, { intensity: value ?? 0 }))}
          />
          <IconAction
            icon="trash"
            label={`Remove row ${index + 1} of the rain`}
            onPress={() => set(table.filter((_, i) => i !== index))}
          />
        </fieldset>
      ))}
      {rainRises(table) ? (
        <p className="small">
          A longer storm that rains harder than a shorter one isn't in any table: look at the rows again.
        </p>
      ) : null}
      <Action icon="plus" look="quiet" onPress={add}>
        {table.length === 0 ? "Type a table by duration instead" : "Another row"}
      </Action>
    </>
  );
}

function refusalOf(edit: ReturnType<typeof tryRun>): string | null {
  return edit.ok ? null : edit.why;
}

function nextDuration(table: Storm["table"]): number {
  const longest = Math.max(0, ...table.map(({ duration }) => duration));
  const next = usualMinutes.find((minutes) => minutes * minute > longest + 1);
  return next === undefined ? longest * 2 : next * minute;
}
