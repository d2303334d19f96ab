/**
 * Cut and fill under a footprint as a function of the height of a level plane: exact, at little cost a height.
 *
 * Method  The ground's triangles are clipped by the footprint once (`clipped.ts`); each height then takes
 *         two searches and the triangles that straddle it (`piece-set.ts`).
 * Source  First principles.
 */
import type { Point } from "../geometry";
import type { Ground } from "../terrain";
import { forEachClipped, forEachFan, heightsOn } from "./clipped";
import { type Piece, PieceSet } from "./piece-set";
import type { CutFill } from "./prism";

/** A height of the ground with its place. */
export interface GroundSpot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Volumes in place, m3; plan areas, m2; depths, m. */
export interface PlaneCutFill extends CutFill {
  /** Deepest cut and fill under the footprint, 0 where there is none. */
  readonly greatestCut: number;
  readonly greatestFill: number;
  /** What of the volumes rests on guessed ground. */
  readonly guessedCut: number;
  readonly guessedFill: number;
}

export interface VolumeCurve {
  /** Area of the footprint that the ground covers, and the part of it that is guessed, m2. */
  readonly area: number;
  readonly guessedArea: number;
  /** Lowest and highest ground under the footprint; null where the ground doesn't reach it. */
  readonly lowest: GroundSpot | null;
  readonly highest: GroundSpot | null;
  /** Cut and fill to bring the ground to the height `planeZ`, m. */
  at(planeZ: number): PlaneCutFill;
}

/** The ground under a footprint as triangles, measured and guessed apart, and its lowest and highest place. */
export function clippedPieces(ground: Ground, ring: readonly Point[]) {
  const measured: Piece[] = [];
  const guessed: Piece[] = [];
  let lowest: GroundSpot | null = null;
  let highest: GroundSpot | null = null;
  forEachClipped(ground.tin, ring, (polygon, triangle) => {
    const heights = heightsOn(ground.tin, triangle, polygon);
    const pieces = ground.guessed[triangle] ? guessed : measured;
    forEachFan(polygon, (area, second, third) => {
      pieces.push({ area, z: [heights[0] as number, heights[second] as number, heights[third] as number] });
    });
    heights.forEach((z, i) => {
      const spot = { x: polygon[2 * i] as number, y: polygon[2 * i + 1] as number, z };
      if (!lowest || z < lowest.z) lowest = spot;
      if (!highest || z > highest.z) highest = spot;
    });
  });
  return { measured, guessed, lowest: lowest as GroundSpot | null, highest: highest as GroundSpot | null };
}

/** The curve for a footprint: a simple ring, either way round. */
export function volumeCurve(ground: Ground, ring: readonly Point[]): VolumeCurve {
  const { measured, guessed, lowest, highest } = clippedPieces(ground, ring);
  return curveOf(new PieceSet(measured), new PieceSet(guessed), lowest, highest);
}

/** Fill up to a level plane, m3, as a function of its height, m, over simple rings that don't overlap. */
export function fillOver(ground: Ground, rings: readonly (readonly Point[])[]): (planeZ: number) => number {
  const pieces = rings.map((ring) => clippedPieces(ground, ring));
  const set = new PieceSet(pieces.flatMap(({ measured, guessed }) => [...measured, ...guessed]));
  return (planeZ) => set.at(planeZ).fill;
}

function curveOf(
  measured: PieceSet,
  guessed: PieceSet,
  lowest: GroundSpot | null,
  highest: GroundSpot | null,
): VolumeCurve {
  return {
    area: measured.area + guessed.area,
    guessedArea: guessed.area,
    lowest,
    highest,
    at(planeZ) {
      const known = measured.at(planeZ);
      const guess = guessed.at(planeZ);
      return {
        cut: known.cut + guess.cut,
        fill: known.fill + guess.fill,
        cutArea: known.cutArea + guess.cutArea,
        fillArea: known.fillArea + guess.fillArea,
        greatestCut: highest ? Math.max(0, highest.z - planeZ) : 0,
        greatestFill: lowest ? Math.max(0, planeZ - lowest.z) : 0,
        guessedCut: guess.cut,
        guessedFill: guess.fill,
      };
    },
  };
}
