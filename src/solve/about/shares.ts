/**
 * How much of a figure rests on ground that is a guess, by the part of the results that it stands in.
 *
 * Units   0 to 1: of volume (earthwork), of length (drives, swales, walls), of cells (water); for a figure of one place 1 where
 *         the ground there is guessed, else 0.
 */
import { type Ground, groundAt } from "../../terrain";
import type { Results } from "../results";

export type GuessedShare = number | readonly (number | null)[];

type Placed = { readonly at?: readonly [number, number] | readonly number[] | null };

/** Undefined for figures that don't lean on the ground. */
export function guessedShareOf(results: Results): (path: string) => GuessedShare | undefined {
  const known = Object.entries(sharesOf(results));
  return (path) => (isPlace(path) ? undefined : known.find(([part]) => begins(path, part))?.[1]?.());
}

/** Places, indices and the shares themselves don't lean on the ground. */
function isPlace(path: string): boolean {
  if (path.startsWith("foundation.takeOff.")) return false;
  return /\.(at|middle|start|end|way|spill)\[\]$|\.(wall|line|index|x|y|guessed|share|guessedShare)(\[\])?$/.test(
    path,
  );
}

function begins(path: string, part: string): boolean {
  return path === part || (path.startsWith(part) && /^[.[]/.test(path.slice(part.length)));
}

function sharesOf(results: Results): Record<string, () => GuessedShare | undefined> {
  const { ground, earthwork, guessed, water, foundation, grading, band } = results;
  const volume = () => earthwork?.guessedShare;
  const trench = () => guessed.trench ?? undefined;
  const cells = once(() => shareOf(results.surface?.guessed));
  const at = (places: readonly Placed[]) => () => places.map((place) => shareAt(ground, place));
  const named = (list: readonly { readonly id: string }[], shares: typeof guessed.drives) => () =>
    list.map(({ id }) => shares.find((one) => one.id === id)?.share ?? null);
  return {
    "earthwork.disturbedArea": cells,
    "earthwork.outside.area": cells,
    earthwork: volume,
    curveInside: trench,
    curve: volume,
    sensitivity: volume,
    balance: volume,
    bill: volume,
    cost: volume,
    costs: volume,
    corners: () => results.corners.map((corner) => (corner.guessed ? 1 : 0)),
    trench: () => results.corners.map((corner) => (corner.guessed ? 1 : 0)),
    "setout.rows": () => results.setout.rows.map((row) => setoutShare(row, results)),
    "foundation.walls": () => (foundation?.walls ?? []).map((wall) => shareOf(wall.guessed) ?? null),
    "foundation.heights": () => undefined,
    "foundation.sizes": () => undefined,
    foundation: trench,
    drives: named(results.drives, guessed.drives),
    "grading.walls": () =>
      (grading?.walls ?? []).map(({ stations }) => mean(stations.map((one) => shareAt(ground, one)))),
    "grading.conflicts": at(grading?.conflicts ?? []),
    "grading.fits": at(grading?.fits ?? []),
    "grading.pads": at((grading?.pads ?? []).map(({ middle }) => ({ at: middle }))),
    "grading.sides": at((grading?.sides ?? []).map(({ fill, cut }) => ({ at: (fill ?? cut)?.at ?? null }))),
    "band.rules": at(band.rules),
    "band.lowRule": () => shareAt(ground, band.lowRule ?? {}) ?? undefined,
    "band.highRule": () => shareAt(ground, band.highRule ?? {}) ?? undefined,
    "band.low": () => shareAt(ground, band.lowRule ?? {}) ?? undefined,
    "band.high": () => shareAt(ground, band.highRule ?? {}) ?? undefined,
    sections: () => undefined,
    "section.existing": () => shareOf(results.section?.guessed),
    "section.finished": () => shareOf(results.section?.guessed),
    "ground.greatestFill": () => shareAt(ground, results.surface?.greatestFill ?? {}) ?? undefined,
    "ground.greatestCut": () => shareAt(ground, results.surface?.greatestCut ?? {}) ?? undefined,
    daylight: cells,
    "contours.interval": () => undefined,
    contours: cells,
    "water.ponds": () => water.ponds.map((pond) => (pond.guessed ? 1 : 0)),
    "water.walls": () => water.walls.map((wall) => wall.guessed),
    "water.swales": named(water.swales, guessed.swales),
    "water.flows": cells,
    "water.roof": () => undefined,
    water: cells,
  };
}

/** Beds and drives lie on ground of their own, footings that step follow it along the walls; the rest hangs on the floor alone. */
function setoutShare(
  { what, where }: Results["setout"]["rows"][number],
  { drives, water, guessed, foundation }: Results,
): number | null {
  const route =
    findShare(water.swales, guessed.swales, (name) => what === `bed of ${name}`) ??
    findShare(drives, guessed.drives, (name) => what === `top of ${name}`) ??
    findShare(drives, guessed.drives, (name) => what === "invert of pipe" && where.includes(name));
  if (route !== undefined) return route;
  const inGround = /^(top of footing|bottom of (trench|hole)|invert of footing drain)/.test(what);
  return foundation && inGround && where !== "all round" ? (guessed.trench ?? null) : 0;
}

function findShare(
  things: readonly { readonly id: string; readonly name: string }[],
  shares: Results["guessed"]["drives"],
  isIt: (name: string) => boolean,
): number | null | undefined {
  const thing = things.find(({ name }) => isIt(name));
  return thing && (shares.find(({ id }) => id === thing.id)?.share ?? null);
}

function shareAt(ground: Ground | null, { at }: Placed): number | null {
  const [x, y] = at ?? [];
  if (!ground || x === undefined || y === undefined) return null;
  return groundAt(ground, x, y)?.guessed === false ? 0 : 1;
}

function shareOf(guessed: Uint8Array | undefined): number | undefined {
  if (!guessed || guessed.length === 0) return undefined;
  return guessed.reduce((sum, one) => sum + one, 0) / guessed.length;
}

function mean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
