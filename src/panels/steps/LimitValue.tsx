/** The figures behind a rule of the floor, where they are the person's to set. */
import { buildingEdits, generalRules, type Rules, siteEdits } from "../../document";
import type { BandRule } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { NumberField, SlopeField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { useProject } from "../useProject";

type Keys<Value> = { [Key in keyof Rules]: Rules[Key] extends Value ? Key : never }[keyof Rules];
type Lengths = Exclude<Keys<number | null>, "costLimit" | "steepestDrive" | "breakAtDoor">;

/** A length of the rules. `empty`: it may be left out, and what its field says then. */
interface Field {
  readonly key: Lengths;
  readonly label: string;
  readonly empty?: string;
}

const least = (key: Lengths, empty?: string): Field => ({
  key,
  label: "At least",
  ...(empty ? { empty } : {}),
});
const most = (key: Lengths, empty: string): Field => ({ key, label: "At most", empty });
const level = (key: Lengths, label: string): Field => ({ key, label, empty: "not typed" });

const lengths: Readonly<Record<string, readonly Field[]>> = {
  aboveUphillGround: [least("aboveUphillGround"), { key: "uphillReach", label: "High ground counts within" }],
  leastShowing: [least("leastShowing")],
  sidingClearance: [least("sidingClearance"), { key: "sidingLap", label: "Siding laps over the wall by" }],
  intoUndisturbed: [least("intoUndisturbed")],
  swaleBelowWall: [least("aboveSwale")],
  pondFreeboard: [least("aboveWater")],
  aboveRoad: [
    level("roadLevel", "Level of the gutter"),
    least("aboveRoad"),
    { key: "toRoad", label: "Way of the water to it" },
  ],
  aboveFlood: [level("floodLevel", "Level of the flood"), least("aboveFlood")],
  doorThreshold: [least("doorThreshold")],
  leastOut: [least("leastOut", "no limit")],
  mostShowing: [most("mostShowing", "no limit")],
  greatestWall: [most("greatestWall", "no limit")],
  unbalancedFill: [most("mostUnbalanced", "by the tables")],
};

const slopes: Readonly<Record<string, "steepestDrive" | "breakAtDoor">> = {
  steepestDrive: "steepestDrive",
  driveDown: "steepestDrive",
  landing: "breakAtDoor",
  landingDown: "breakAtDoor",
};

/** Whether a rule goes by a value of the person's own, where its source speaks of the general one. */
export function hasOwnValue({ id }: BandRule, rules: Rules): boolean {
  const keys: readonly (keyof Rules)[] = [
    ...(lengths[id] ?? []).filter(({ empty }) => !empty).map(({ key }) => key),
    ...(slopes[id] ? [slopes[id]] : []),
  ];
  const usual: Partial<Rules> = generalRules.values;
  return keys.some((key) => usual[key] !== undefined && rules[key] !== usual[key]);
}

export function LimitValue({ rule }: { rule: BandRule }) {
  const rules = useProject((project) => project.rules);
  const slope = slopes[rule.id];
  if (rule.id === "frostCover") return <FrostDepth />;
  if (rule.id === "costLimit") return <CostLimit />;
  if (rule.id === "fillUnderSlab") return <ApprovedFill />;
  if (slope)
    return (
      <SlopeField label="At most" ratio={rules[slope]} onCommit={(ratio) => change({ [slope]: ratio })} />
    );
  return (lengths[rule.id] ?? []).map(({ key, label, empty }) => (
    <LengthField
      key={key}
      label={label}
      m={rules[key]}
      onCommit={(m) => change({ [key]: m })}
      // Levels are heights of the plan, which may lie below its zero.
      {...(label.startsWith("Level") ? {} : { least: 0 })}
      {...(empty ? { placeholder: empty, onEmpty: () => change({ [key]: null }) } : {})}
    />
  ));
}

const change = (patch: Partial<Rules>) => tryRun(siteEdits.changeRules, { patch });

function CostLimit() {
  const limit = useProject(({ rules }) => rules.costLimit);
  return (
    <NumberField
      label="At most, for what is priced"
      value={limit}
      least={0}
      placeholder="no limit"
      onEmpty={() => change({ costLimit: null })}
      onCommit={(costLimit) => change({ costLimit })}
    />
  );
}

function ApprovedFill() {
  const slabFill = useProject(({ building }) => building?.foundation.slabFill ?? null);
  if (!slabFill) return null;
  const change = (approved: number | null) =>
    tryRun(buildingEdits.changeFoundation, { patch: { slabFill: { ...slabFill, approved } } });
  return (
    <LengthField
      label="Fill that is approved"
      m={slabFill.approved}
      placeholder="as published"
      help="What an engineer or the building office allows here, in writing."
      onEmpty={() => change(null)}
      onCommit={change}
    />
  );
}

function FrostDepth() {
  const frost = useProject(({ building }) => building?.foundation.frostDepth ?? null);
  return (
    <LengthField
      label="Frost depth"
      m={frost}
      least={0}
      placeholder="ask locally"
      onEmpty={() => tryRun(buildingEdits.changeFoundation, { patch: { frostDepth: null } })}
      onCommit={(m) => tryRun(buildingEdits.changeFoundation, { patch: { frostDepth: m } })}
    />
  );
}
