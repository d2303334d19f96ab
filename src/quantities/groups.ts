/** Kinds of thing that the bill's costs are summed by, for the chart of cost against floor. */
import type { CostGroup } from "../solve/results";

/** In the order they are stacked. */
export const costGroups: readonly CostGroup[] = [
  "concrete",
  "stone",
  "earth-in",
  "earth-out",
  "topsoil",
  "other",
];

const groups: Readonly<Record<string, CostGroup>> = {
  topsoil: "topsoil",
  "fill-loose": "earth-in",
  "cut-loose": "earth-out",
  base: "stone",
  slab: "concrete",
  edge: "concrete",
  pads: "concrete",
  footing: "concrete",
  wall: "concrete",
};

export function groupOf(id: string): CostGroup {
  return groups[id] ?? (id.startsWith("gravel-") ? "stone" : "other");
}
