/** Kinds of thing that the bill's costs are summed by, for the chart of cost against floor. */
import type { BillItem, CostGroup } from "../solve/results";

/** In the order they are stacked. */
export const costGroups: readonly CostGroup[] = [
  "concrete",
  "stone",
  "earth-in",
  "earth-out",
  "topsoil",
  "work",
  "other",
];

const byId: Readonly<Record<string, CostGroup>> = {
  "fill-loose": "earth-in",
  "slab-fill-loose": "earth-in",
  "cut-loose": "earth-out",
  "trench-left": "earth-out",
  "drain-stone": "stone",
  "drain-pipe": "other",
};

const byStage: Readonly<Record<BillItem["stage"], CostGroup>> = {
  strip: "topsoil",
  undercut: "other",
  earth: "other",
  trench: "work",
  foundation: "concrete",
  drain: "other",
  base: "stone",
  drive: "stone",
  topsoil: "topsoil",
  hours: "work",
};

export function groupOf({ id, stage }: Pick<BillItem, "id" | "stage">): CostGroup {
  return byId[id] ?? byStage[stage];
}
