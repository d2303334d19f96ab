/**
 * What test pits say about the ground below: how much to strip, where firm ground begins, where rock and water stand.
 *
 * Units   metres; depths from the ground down, heights in the project's datum.
 * Method  At a place: the depths of the pits that met it, weighted by 1 / distance² (a pit's own depth at the pit).
 * Source  inverse distance weighting, Shepard 1968 (from memory). Between pits it is a guess: every answer says how many
 *         pits it rests on and how far the nearest is. The soil itself is for an engineer to judge.
 */
import { placeResolver } from "../document/places";
import type { Measure, Point, Survey, TestPit } from "../document/schema";
import type { PitSummary } from "../solve/results";

export type Layer = "topsoil" | "oldFill" | "rock" | "water";

export interface PitSpot {
  readonly id: string;
  readonly name: string;
  readonly at: Point | null;
  readonly depths: Readonly<Record<Layer, number | null>>;
  /** How deep it was dug, null where nobody wrote it down. */
  readonly dug: number | null;
}

export interface PitDepthAt {
  readonly depth: number;
  readonly count: number;
  /** Distance of the nearest pit that met it. */
  readonly nearest: number;
}

/** The pits with their places; one whose place is gone counts where no place is asked for. */
export function pitSpots(survey: Survey, corners: readonly Point[]): PitSpot[] {
  const place = placeResolver(survey, corners);
  const depth = (measure: Measure | null) => measure?.m ?? null;
  return survey.pits.map(
    (pit: TestPit): PitSpot => ({
      id: pit.id,
      name: pit.name,
      at: place(pit.place).at,
      depths: {
        topsoil: depth(pit.topsoil),
        oldFill: depth(pit.oldFill),
        rock: depth(pit.rock),
        water: depth(pit.water),
      },
      dug: depth(pit.depth),
    }),
  );
}

/** One layer over all pits: for the strip, its mean is the depth to reckon with. Null where no pit met it. */
export function pitSummary(pits: readonly PitSpot[], layer: Layer): PitSummary | null {
  const depths = pits.flatMap(({ depths: each }) => each[layer] ?? []);
  if (depths.length === 0) return null;
  return {
    count: depths.length,
    of: pits.length,
    mean: depths.reduce((sum, depth) => sum + depth, 0) / depths.length,
    least: Math.min(...depths),
    most: Math.max(...depths),
  };
}

/** Depth of a layer at a place, null where no placed pit met it. */
export function pitDepthAt(
  pits: readonly PitSpot[],
  layer: Layer,
  [x, y]: Readonly<Point>,
): PitDepthAt | null {
  let [sum, weights, nearest, count] = [0, 0, Number.POSITIVE_INFINITY, 0];
  let here: number | null = null;
  for (const { at, depths } of pits) {
    const depth = depths[layer];
    if (at === null || depth === null) continue;
    const distance = Math.hypot(at[0] - x, at[1] - y);
    count++;
    nearest = Math.min(nearest, distance);
    if (distance === 0) here = depth;
    sum += depth / (distance * distance);
    weights += 1 / (distance * distance);
  }
  return count === 0 ? null : { depth: here ?? sum / weights, count, nearest };
}

export interface FirmGround {
  readonly depth: number;
  readonly height: number;
  readonly under: "topsoil" | "oldFill";
  readonly count: number;
  readonly nearest: number;
}

/** Where undisturbed ground begins at a place: below topsoil and old fill, whichever reaches deeper. */
export function firmGround(pits: readonly PitSpot[], at: Point, ground: number): FirmGround | null {
  const layers = (["topsoil", "oldFill"] as const).flatMap((under) => {
    const found = pitDepthAt(pits, under, at);
    return found === null ? [] : [{ ...found, under, height: ground - found.depth }];
  });
  return layers.reduce<FirmGround | null>(
    (deepest, layer) => (deepest === null || layer.depth > deepest.depth ? layer : deepest),
    null,
  );
}

export interface UnderFooting {
  readonly layer: Layer;
  /** Height of the layer: the bottom of topsoil or old fill, the top of rock, the water. */
  readonly height: number;
  /** What it does at the bottom of the trench: too high there by this much, m. */
  readonly by: number;
  readonly count: number;
}

/**
 * What a trench at a place meets: loose ground that reaches below its bottom (dig deeper, or step), rock and water that
 * stand above it. The gravest first; none where the pits see no trouble.
 */
export function underFooting(
  pits: readonly PitSpot[],
  at: Point,
  ground: number,
  bottom: number,
): UnderFooting[] {
  const layers: readonly Layer[] = ["topsoil", "oldFill", "rock", "water"];
  return layers
    .flatMap((layer): UnderFooting[] => {
      const found = pitDepthAt(pits, layer, at);
      if (found === null) return [];
      const height = ground - found.depth;
      const isLoose = layer === "topsoil" || layer === "oldFill";
      const by = isLoose ? bottom - height : height - bottom;
      return by > 0 ? [{ layer, height, by, count: found.count }] : [];
    })
    .sort((a, b) => b.by - a.by);
}
