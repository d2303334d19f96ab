/**
 * How deep the trench is at each corner, and how much wall shows.
 *
 * Units   metres.
 * Method  Bottom of trench = top of wall − wall height − footing thickness, level all round.
 * Source  First principles.
 */
import type { Foundation } from "../document/schema";
import type { CornerResult, TrenchCorner } from "../solve/results";

export interface FoundationLevels {
  readonly floor: number;
  readonly topOfWall: number;
  readonly topOfFooting: number;
  readonly bottomOfTrench: number;
  readonly undersideOfSlab: number;
  /** Where the base course rests: the earth inside is brought to this height. */
  readonly undersideOfBase: number;
}

export function foundationLevels(
  floor: number,
  topOfWallAboveFloor: number,
  foundation: Foundation,
): FoundationLevels {
  const topOfWall = floor + topOfWallAboveFloor;
  const topOfFooting = topOfWall - foundation.wallHeight;
  const undersideOfSlab = floor - foundation.slabThickness;
  return {
    floor,
    topOfWall,
    topOfFooting,
    bottomOfTrench: topOfFooting - foundation.footingThickness,
    undersideOfSlab,
    undersideOfBase: undersideOfSlab - foundation.baseThickness,
  };
}

export interface CornerGround {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly ground: number;
  readonly guessed: boolean;
  /** Finished ground just outside the corner. */
  readonly finished: number;
}

/** Wall showing at each corner, against the ground as it is and as it will be. */
export function cornerResults(levels: FoundationLevels, corners: readonly CornerGround[]): CornerResult[] {
  return corners.map((corner) => ({
    ...corner,
    wallAboveGround: levels.topOfWall - corner.ground,
    wallAboveFinished: levels.topOfWall - corner.finished,
    floorAboveGround: levels.floor - corner.ground,
  }));
}

/** Depth of the trench at each corner. */
export function trenchCorners(levels: FoundationLevels, corners: readonly CornerGround[]): TrenchCorner[] {
  return corners.map(({ name, ground, finished }) => ({
    corner: name,
    bottom: levels.bottomOfTrench,
    belowGround: ground - levels.bottomOfTrench,
    belowFinished: finished - levels.bottomOfTrench,
  }));
}
