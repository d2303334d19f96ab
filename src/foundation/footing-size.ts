/**
 * The footing's dimensions against the published least ones. The program sizes nothing: it says where a typed figure is less.
 *
 * Units   metres.
 * Source  International Residential Code (2012) as in the California Residential Code 2013: table R403.1 (least width by
 *         storeys and bearing; editions from 2015 have tables by snow load instead), R403.1.1 (thickness at least 6 in,
 *         projection at least 2 in and at most the thickness), R506.1 (slab at least 3 1/2 in), table R401.4.1 (bearing).
 */
import { hasSlab, hasStemWall } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { FootingSize } from "../solve/results";

const inch = 0.0254;

type Load = Foundation["load"];

/** Presumed bearing, psf: clay and silt; sands and silty gravels; gravels; sedimentary rock. */
export const presumedBearing: Readonly<Record<Load["soil"], number>> = {
  clay: 1500,
  sand: 2000,
  gravel: 3000,
  rock: 4000,
};

const bearings = [1500, 2000, 3000, 4000] as const;

/** Inches, by storeys, then by bearing. */
const widths: Readonly<Record<Load["built"], readonly (readonly number[])[]>> = {
  "light-frame": [
    [12, 12, 12, 12],
    [15, 12, 12, 12],
    [23, 17, 12, 12],
  ],
  veneer: [
    [12, 12, 12, 12],
    [21, 16, 12, 12],
    [32, 24, 16, 12],
  ],
  masonry: [
    [16, 12, 12, 12],
    [29, 21, 14, 12],
    [42, 32, 21, 16],
  ],
};

/** Least width of a strip footing, m. */
export function leastFootingWidth({ built, storeys, soil }: Load): number {
  const column = bearings.indexOf(presumedBearing[soil] as (typeof bearings)[number]);
  return (widths[built][storeys - 1]?.[column] ?? Number.NaN) * inch;
}

/** Each published least or most that this foundation has a figure for. */
export function footingSizes(foundation: Foundation): FootingSize[] {
  const sizes: FootingSize[] = [];
  const check = (what: string, value: number, bound: { least?: number; most?: number }, source: string) => {
    const { least = null, most = null } = bound;
    const passes = (least === null || value >= least - 1e-6) && (most === null || value <= most + 1e-6);
    sizes.push({
      what,
      value,
      least,
      most,
      passes,
      source: `International Residential Code ${source} (2012)`,
    });
  };
  if (hasStemWall(foundation)) {
    const { footingWidth, footingThickness, wallThickness, load } = foundation;
    const beyond = (footingWidth - wallThickness) / 2;
    check("footing width", footingWidth, { least: leastFootingWidth(load) }, "table R403.1");
    check("footing thickness", footingThickness, { least: 6 * inch }, "R403.1.1");
    check(
      "footing beyond the wall, each side",
      beyond,
      { least: 2 * inch, most: footingThickness },
      "R403.1.1",
    );
  }
  if (foundation.kind === "thickened-edge")
    check(
      "width of the edge's bottom",
      foundation.edge.width,
      { least: leastFootingWidth(foundation.load) },
      "table R403.1",
    );
  if (hasSlab(foundation)) check("slab", foundation.slabThickness, { least: 3.5 * inch }, "R506.1");
  return sizes;
}
