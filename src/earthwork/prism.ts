/**
 * Cut and fill between one triangle of ground and a surface that is plane over it, in closed form.
 *
 * Units   plan areas m2, heights m, volumes m3 in place (neither loosened nor compacted).
 * Sign    offset = ground - target: where it is positive there is cut, where negative fill.
 * Method  Over the triangle the offset is linear: its integral is plan area x mean of the corner offsets.
 *         Where it changes sign, the zero line cuts off one corner as a smaller triangle, whose volume is
 *         direct; what is on the other side follows from the whole.
 * Source  First principles.
 * Error   A few rounding units of the larger volume.
 */

/** Volumes in place, m3, and the plan areas they stand on, m2; all zero or more. */
export interface CutFill {
  readonly cut: number;
  readonly fill: number;
  readonly cutArea: number;
  readonly fillArea: number;
}

/** Splits a triangle's prism into cut and fill, from its plan area (not negative) and three corner offsets. */
export function prismCutFill(area: number, first: number, second: number, third: number): CutFill {
  const low = Math.min(first, second, third);
  const high = Math.max(first, second, third);
  const middle = Math.max(Math.min(first, second), Math.min(Math.max(first, second), third));
  const whole = (area * (low + middle + high)) / 3;
  if (low === 0 && high === 0) return { cut: 0, fill: 0, cutArea: 0, fillArea: 0 };
  if (low >= 0) return { cut: whole, fill: 0, cutArea: area, fillArea: 0 };
  if (high <= 0) return { cut: 0, fill: -whole, cutArea: 0, fillArea: area };
  if (middle <= 0) {
    const cutArea = loneCornerArea(area, high, middle, low);
    const cut = (cutArea * high) / 3;
    return { cut, fill: Math.max(0, cut - whole), cutArea, fillArea: area - cutArea };
  }
  const fillArea = loneCornerArea(area, low, middle, high);
  const fill = (fillArea * -low) / 3;
  return { cut: Math.max(0, fill + whole), fill, cutArea: area - fillArea, fillArea };
}

/** Plan area that the zero line cuts off at the one corner whose offset has another sign than the others. */
function loneCornerArea(area: number, lone: number, other: number, another: number): number {
  return area * (lone / (lone - other)) * (lone / (lone - another));
}
