/**
 * How deep the trench is at each corner, and how much wall shows.
 *
 * Units   metres.
 * Method  Bottom of trench = top of wall − wall height − footing thickness, level all round; steps and holes for posts
 *         have a bottom of their own at each corner (`footing.ts`).
 * Source  First principles.
 */
import { bottomBelowTop, earthBelowFloor, hasStemWall, slabDepth } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { CornerResult, TrenchCorner } from "../solve/results";

export interface FoundationLevels {
  readonly floor: number;
  readonly topOfWall: number;
  /** Of the highest step; the top of wall where there is no strip footing. */
  readonly topOfFooting: number;
  /** Of the highest step; for posts the hole's depth below the top of wall, as on level ground. */
  readonly bottomOfTrench: number;
  readonly undersideOfSlab: number;
  /** Where the base course rests, or the crawl space's ground: the earth inside is brought to this height. */
  readonly undersideOfBase: number;
}

export function foundationLevels(
  floor: number,
  topOfWallAboveFloor: number,
  foundation: Foundation,
): FoundationLevels {
  const topOfWall = floor + topOfWallAboveFloor;
  return {
    floor,
    topOfWall,
    topOfFooting: hasStemWall(foundation) ? topOfWall - foundation.wallHeight : topOfWall,
    bottomOfTrench: topOfWall - (bottomBelowTop(foundation) ?? foundation.posts.holeDepth),
    undersideOfSlab: floor - slabDepth(foundation),
    undersideOfBase: floor - earthBelowFloor({ foundation, topOfWallAboveFloor }),
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

/** Depth of the trench at each corner; `bottoms` where it isn't level all round. */
export function trenchCorners(
  levels: FoundationLevels,
  corners: readonly CornerGround[],
  strip = 0,
  bottoms: readonly number[] = [],
): TrenchCorner[] {
  return corners.map(({ name, ground, finished }, i) => {
    const bottom = bottoms[i] ?? levels.bottomOfTrench;
    return {
      corner: name,
      bottom,
      belowGround: ground - bottom,
      belowStripped: ground - strip - bottom,
      belowFinished: finished - bottom,
    };
  });
}
