/**
 * Layers of the plan: which there are, which show in which step of the job, and what of it a person keeps.
 * What is shown, how strong and what is locked is personal: it belongs to the window, not to the project.
 */
import type { AppState, StepName } from "./state";

/** Parts of the plan that can be switched off, in the order of the panel. */
export const planLayers = [
  "existing",
  "finished",
  "shots",
  "breaklines",
  "arrows",
  "ponds",
  "runs",
  "depth",
  "heights",
  "slopes",
  "building",
  "drives",
  "swales",
  "lot",
  "features",
  "underlay",
  "dimensions",
  "notes",
  "sections",
  "grid",
] as const;
export type PlanLayer = (typeof planLayers)[number];

/** Maps in colour lie over each other: one is shown at a time. */
export const mapLayers = ["depth", "heights", "slopes"] as const satisfies readonly PlanLayer[];
export type MapLayer = (typeof mapLayers)[number];

/** Layers with things that can be picked, and so locked. */
export const lockableLayers = [
  "shots",
  "breaklines",
  "building",
  "drives",
  "swales",
  "lot",
  "features",
  "underlay",
  "dimensions",
  "notes",
  "sections",
] as const satisfies readonly PlanLayer[];

/** Which ground the maps of heights and steepness show. */
export type MapGround = "existing" | "finished";

export interface LayerState {
  readonly hidden: ReadonlySet<PlanLayer>;
  /** 0 to 1; a layer that isn't here is at full strength. */
  readonly strengths: Readonly<Partial<Record<PlanLayer, number>>>;
  /** Layers whose things are seen but not picked. */
  readonly lockedLayers: ReadonlySet<PlanLayer>;
  /** What is shown follows the step of the job. */
  readonly layersFollow: boolean;
  readonly mapGround: MapGround;
}

export const usualLayers: LayerState = {
  hidden: new Set<PlanLayer>(["heights", "slopes", "grid"]),
  strengths: {},
  lockedLayers: new Set(),
  layersFollow: false,
  mapGround: "existing",
};

const site = ["lot", "features", "building"] as const;
const works = [...site, "drives", "swales"] as const;

/** What each step of the job needs to see. */
export const stepLayers: Readonly<Record<StepName, readonly PlanLayer[]>> = {
  lot: [...works, "underlay", "dimensions", "notes"],
  shots: [...site, "shots", "breaklines", "existing", "underlay", "notes"],
  building: [...works, "existing", "shots", "dimensions", "notes", "underlay"],
  drive: [...works, "existing", "finished", "dimensions", "notes"],
  water: [...works, "existing", "finished", "arrows", "ponds", "runs", "notes"],
  floor: [...works, "existing", "finished", "depth", "arrows", "ponds", "sections", "notes"],
  foundation: [...site, "existing", "finished", "dimensions", "sections", "notes"],
  quantities: [...works, "depth", "finished", "notes"],
  setout: [...works, "shots", "dimensions", "notes"],
  sheets: planLayers.filter((layer) => !["heights", "slopes", "grid", "underlay", "runs"].includes(layer)),
};

/** Everything off but what the step needs. */
export function hiddenInStep(step: StepName): ReadonlySet<PlanLayer> {
  return new Set(planLayers.filter((layer) => !stepLayers[step].includes(layer)));
}

/** Hidden layers after one is shown or hidden: of the maps at most one stays. */
export function withShown(
  hidden: ReadonlySet<PlanLayer>,
  layer: PlanLayer,
  shown: boolean,
): ReadonlySet<PlanLayer> {
  const next = new Set(hidden);
  if (!shown) return next.add(layer);
  if ((mapLayers as readonly PlanLayer[]).includes(layer)) for (const map of mapLayers) next.add(map);
  next.delete(layer);
  return next;
}

/** What is remembered of the layers, as text. */
export function layersToText({
  hidden,
  strengths,
  lockedLayers,
  layersFollow,
  mapGround,
}: LayerState): string {
  return JSON.stringify({
    hidden: [...hidden],
    strengths,
    locked: [...lockedLayers],
    follow: layersFollow,
    ground: mapGround,
  });
}

/** Reads remembered layers; what isn't understood is left as usual. */
export function layersFromText(text: string | null): LayerState {
  const kept = parsed(text);
  const list = (value: unknown): PlanLayer[] | null =>
    Array.isArray(value) ? planLayers.filter((layer) => value.includes(layer)) : null;
  const hidden = list(kept.hidden);
  const strengths: Partial<Record<PlanLayer, number>> = {};
  if (typeof kept.strengths === "object" && kept.strengths !== null) {
    for (const layer of planLayers) {
      const strength = (kept.strengths as Record<string, unknown>)[layer];
      if (typeof strength === "number" && strength >= 0 && strength <= 1) strengths[layer] = strength;
    }
  }
  return {
    hidden: hidden ? new Set(hidden) : usualLayers.hidden,
    strengths,
    lockedLayers: new Set(list(kept.locked) ?? []),
    layersFollow: kept.follow === true,
    mapGround: kept.ground === "finished" ? "finished" : "existing",
  };
}

function parsed(text: string | null): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text ?? "{}");
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** The layers of a window's state. */
export function layersOf(state: AppState): LayerState {
  const { hidden, strengths, lockedLayers, layersFollow, mapGround } = state;
  return { hidden, strengths, lockedLayers, layersFollow, mapGround };
}

/** How strong a layer is drawn, 0 to 1. */
export function strengthOf(state: Pick<LayerState, "strengths">, layer: PlanLayer | undefined): number {
  return layer === undefined ? 1 : (state.strengths[layer] ?? 1);
}
