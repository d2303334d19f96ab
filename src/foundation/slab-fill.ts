/**
 * Fill between the stripped ground and the base course under a slab.
 *
 * Units   metres; positive: fill.
 * Source  IRC R506.2.1 (2012): 24 in of clean sand or gravel, 8 in of earth, unless approved.
 */
import { hasSlab, mostSlabFill } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { Point } from "../geometry";
import type { FillUnderSlab } from "../solve/results";

export interface SlabGround {
  /** Underside of the base course. */
  readonly earthInside: number;
  readonly strip: number;
  readonly corners: readonly { readonly name: string; readonly ground: number }[];
  /** Lowest and highest existing ground inside the walls. */
  readonly lowest: { readonly height: number; readonly at: Point };
  readonly highest: number;
}

export function fillUnderSlab(foundation: Foundation, ground: SlabGround): FillUnderSlab | null {
  if (!hasSlab(foundation)) return null;
  const depth = (height: number) => ground.earthInside - (height - ground.strip);
  const { lift, kind, approved } = foundation.slabFill;
  const greatest = Math.max(
    depth(ground.lowest.height),
    ...ground.corners.map((corner) => depth(corner.ground)),
  );
  const least = Math.min(depth(ground.highest), ...ground.corners.map((corner) => depth(corner.ground)));
  const limit = mostSlabFill(foundation);
  return {
    corners: ground.corners.map(({ name, ground: height }) => ({
      corner: name,
      depth: depth(height),
      lifts: liftsOf(depth(height), lift),
    })),
    greatest,
    least,
    at: [...ground.lowest.at],
    lift,
    lifts: liftsOf(greatest, lift),
    limit,
    passes: greatest <= limit + 1e-9,
    cutAndFill: greatest > 0.0254 && least < -0.0254,
    source:
      approved !== null
        ? "the depth that you typed as approved"
        : `International Residential Code R506.2.1 (2012): ${
            kind === "earth" ? "8 in of earth" : "24 in of clean sand or gravel"
          }, unless approved`,
  };
}

/** Layers of at most this thickness; a hair more of depth isn't another layer. */
function liftsOf(depth: number, lift: number): number {
  return Math.max(0, Math.ceil(depth / lift - 1e-6));
}
