/** The layer that a thing of the plan belongs to, and whether that layer lets it be picked. */
import type { Thing } from "../../document";
import type { PlanLayer } from "../../store/layers";
import { closedLayers } from "./pickable";

const layers: Readonly<Partial<Record<Thing["kind"], PlanLayer>>> = {
  building: "building",
  door: "building",
  window: "building",
  shot: "shots",
  breakline: "breaklines",
  drive: "drives",
  swale: "swales",
  pad: "drives",
  berm: "drives",
  "retaining-wall": "drives",
  "grade-point": "drives",
  lot: "lot",
  feature: "features",
  underlay: "underlay",
  note: "notes",
  dimension: "dimensions",
  section: "sections",
};

/** Is the thing in a layer that is neither hidden nor locked? */
export function isOpen(thing: Thing): boolean {
  const layer = layers[thing.kind];
  return layer === undefined || !closedLayers().has(layer);
}
