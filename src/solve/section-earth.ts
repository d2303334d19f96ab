/**
 * What is dug and filled along a section.
 *
 * Units   metres along and heights; m2 of section.
 * Sign    finished above the ground is fill, below it cut.
 * Method  The two lines are straight between the samples, so the areas between them are sums of trapezia and, where
 *         the lines cross, of triangles parted at the crossing: exact for what is drawn.
 * Source  First principles.
 */
import type { SectionLine } from "./results";

export interface SectionEarth {
  /** Heights of the finished earth at the section's samples: inside the walls the underside of the floor's base. */
  readonly earth: Float64Array;
  /** Heights once the topsoil is off, where anything is done; elsewhere the ground as it is. */
  readonly stripped: Float64Array;
  /** Between the ground as it is and the finished earth, m2. */
  readonly cut: number;
  readonly fill: number;
}

/** A depth that counts as disturbed ground, m. */
const disturbed = 1e-3;

/** `earthInside`: height at which the earth ends under the floor; `strip`: depth of topsoil that goes first, m. */
export function sectionEarth(section: SectionLine, earthInside: number, strip: number): SectionEarth {
  const { existing, finished, building } = section;
  const count = existing.length / 2;
  const isInside = (d: number) => building !== null && d > building[0] && d < building[1];
  const earth = Float64Array.from({ length: count }, (_, i) =>
    isInside(existing[2 * i] as number) ? earthInside : (finished[2 * i + 1] as number),
  );
  const stripped = Float64Array.from({ length: count }, (_, i) => {
    const z = existing[2 * i + 1] as number;
    return Math.abs((earth[i] as number) - z) > disturbed ? z - strip : z;
  });
  return { earth, stripped, ...areasBetween(existing, earth) };
}

/** Areas above and below a line of distances and heights. */
function areasBetween(existing: Float64Array, earth: Float64Array): { cut: number; fill: number } {
  let cut = 0;
  let fill = 0;
  for (let i = 0; i + 1 < earth.length; i++) {
    const width = (existing[2 * i + 2] as number) - (existing[2 * i] as number);
    const a = (earth[i] as number) - (existing[2 * i + 1] as number);
    const b = (earth[i + 1] as number) - (existing[2 * i + 3] as number);
    if (a >= 0 === b >= 0) {
      const area = ((a + b) / 2) * width;
      if (area > 0) fill += area;
      else cut -= area;
    } else {
      // The lines cross: a triangle on either side of the crossing.
      const share = a / (a - b);
      const [near, far] = [(a * share * width) / 2, (b * (1 - share) * width) / 2];
      fill += Math.max(near, far);
      cut -= Math.min(near, far);
    }
  }
  return { cut, fill };
}
