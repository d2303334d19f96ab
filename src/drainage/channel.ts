/**
 * Water in a ditch of even section and fall: depth, speed, and how it runs.
 *
 * Units   metres, m2, m3/s, m/s, Pa; slopes rise over run; side slopes run for one of rise. Manning's n in s/m^(1/3).
 * Source  Manning's formula Q = A R^(2/3) S^(1/2) / n; critical depth where Q2 T = g A3; geometry of trapezoid and parabola
 *         from first principles (the parabola's wetted length in closed form).
 */

export const gravity = 9.80665;
/** Weight of water, N/m3. */
export const waterWeight = 9806.65;

/**
 * A trapezoid; with no bottom a V. A smooth dish: a parabola so wide when it is so deep. Or a rounded bottom: a dish so
 * wide that runs on smoothly into straight sides.
 */
export type ChannelShape =
  | { readonly kind: "trapezoid"; readonly bottom: number; readonly sideSlope: number }
  | { readonly kind: "dish"; readonly width: number; readonly depth: number }
  | { readonly kind: "rounded"; readonly bottom: number; readonly sideSlope: number };

export interface Wetted {
  readonly area: number;
  readonly perimeter: number;
  /** Width of the water's surface. */
  readonly top: number;
}

/** The wetted section at a depth, m. */
export function wetted(shape: ChannelShape, depth: number): Wetted {
  if (shape.kind === "trapezoid") {
    const { bottom, sideSlope } = shape;
    return {
      area: (bottom + sideSlope * depth) * depth,
      perimeter: bottom + 2 * depth * Math.hypot(1, sideSlope),
      top: bottom + 2 * sideSlope * depth,
    };
  }
  if (shape.kind === "rounded") return rounded(shape.bottom, shape.sideSlope, depth);
  const top = shape.width * Math.sqrt(depth / shape.depth);
  if (top === 0) return { area: 0, perimeter: 0, top: 0 };
  const x = (4 * depth) / top;
  return {
    area: (2 / 3) * top * depth,
    perimeter: (top / 2) * (Math.hypot(1, x) + Math.asinh(x) / x),
    top,
  };
}

/** The dish's rim is as steep as the sides: it lies a quarter of the width over the side slope above the bed. */
function rounded(bottom: number, sideSlope: number, depth: number): Wetted {
  if (bottom === 0) return wetted({ kind: "trapezoid", bottom, sideSlope }, depth);
  const rim = bottom / (4 * sideSlope);
  const dish = { kind: "dish", width: bottom, depth: rim } as const;
  if (depth <= rim) return wetted(dish, depth);
  const [below, above] = [wetted(dish, rim), wetted({ kind: "trapezoid", bottom, sideSlope }, depth - rim)];
  return {
    area: below.area + above.area,
    perimeter: below.perimeter + above.perimeter - bottom,
    top: above.top,
  };
}

/** What runs in a channel full to a depth, m3/s. */
export function manningFlow(shape: ChannelShape, depth: number, fall: number, n: number): number {
  const { area, perimeter } = wetted(shape, depth);
  return perimeter === 0 ? 0 : (area * (area / perimeter) ** (2 / 3) * Math.sqrt(fall)) / n;
}

/** Depth at which a flow runs evenly, m; null where the bed doesn't fall. */
export function normalDepth(shape: ChannelShape, flow: number, fall: number, n: number): number | null {
  if (!(fall > 0) || !(flow >= 0)) return null;
  return depthAt((depth) => manningFlow(shape, depth, fall, n) - flow);
}

/** Depth below which the flow shoots, m. */
export function criticalDepth(shape: ChannelShape, flow: number): number {
  return depthAt((depth) => {
    const { area, top } = wetted(shape, depth);
    return top === 0 ? -(flow ** 2) : gravity * area ** 3 - flow ** 2 * top;
  });
}

/** Froude's number: over 1 the water shoots. */
export function froude(shape: ChannelShape, flow: number, depth: number): number {
  const { area, top } = wetted(shape, depth);
  return area === 0 ? 0 : flow / area / Math.sqrt((gravity * area) / top);
}

/** Greatest shear on the bed, Pa. */
export function bedShear(depth: number, fall: number): number {
  return waterWeight * depth * fall;
}

/** The depth at which a quantity that grows with it passes nought; found by halving. */
function depthAt(over: (depth: number) => number): number {
  let high = 1e-3;
  while (over(high) < 0 && high < 1e4) high *= 2;
  return halved(high, over);
}

/** Where between 0 and `high` a quantity that grows passes nought; `high` where it doesn't. */
export function halved(most: number, over: (depth: number) => number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (over(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
