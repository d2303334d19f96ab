/** What the step's own panel tells of a thing: the inspector doesn't tell it a second time. */
import type { Point, Project, Thing } from "../../document";
import type { StepName } from "../../store/state";

export type Part =
  | "name"
  | "figures"
  | "places"
  | "sides"
  | "bearing"
  | "diagonals"
  | "area"
  | "round it"
  | "whole length";

type OfKind = Partial<Record<Thing["kind"], readonly Part[]>>;

/** What a step keeps folded until it is wanted isn't told: a swale's depth, the ways a shot's place is measured in. */
const told: Partial<Record<StepName, OfKind>> = {
  lot: {
    lot: ["places", "area", "round it"],
    feature: ["name", "figures"],
    underlay: ["name", "figures", "bearing"],
  },
  // A shot's name and reading stand in the level book below the plan.
  shots: { shot: ["name", "figures"], mark: ["name", "figures", "places"], breakline: ["name"] },
  building: {
    building: ["name", "places", "diagonals", "area", "round it"],
    door: ["figures"],
    window: ["name", "figures"],
  },
  drive: {
    drive: ["name", "figures", "whole length"],
    pad: ["name", "figures", "area"],
    berm: ["name", "figures"],
    "retaining-wall": ["name", "figures"],
    "grade-point": ["name", "figures"],
  },
  water: { swale: ["name", "whole length"] },
  foundation: { pit: ["name", "figures", "places"] },
};

export function toldByStep(project: Project, thing: Thing, step: StepName): ReadonlySet<Part> {
  const parts = new Set(told[step]?.[thing.kind]);
  // Its card has coordinates where it stands at one place only.
  if (parts.has("figures") && thing.kind === "feature" && isAtOnePlace(project, thing.id))
    parts.add("places");
  // Of a rectangle two walls say all four.
  if (parts.has("places") && thing.kind === "building" && isRectangle(project.building?.outline ?? []))
    parts.add("sides");
  return parts;
}

function isAtOnePlace({ lot }: Project, id: string): boolean {
  return lot.features.find((feature) => feature.id === id)?.points.length === 1;
}

/** To half a millimetre, as its step says "square". */
function isRectangle(outline: readonly Point[]): boolean {
  const [a, b, c, d] = outline;
  if (outline.length !== 4 || !a || !b || !c || !d) return false;
  const apart = (p: Point, q: Point) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  const alike = (m: number, n: number) => Math.abs(m - n) < 0.0005;
  return (
    alike(apart(a, b), apart(c, d)) && alike(apart(b, c), apart(d, a)) && alike(apart(a, c), apart(b, d))
  );
}
