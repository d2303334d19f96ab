/**
 * Each shot predicted from its neighbours, itself left out.
 *
 * Units   metres.
 * Sign    off = height - predicted: positive, the shot lies higher than its neighbours make likely.
 * Method  A plane through the eight nearest other shots: the one through three of them that leaves the least median miss of
 *         all eight (least median of squares), then least squares over those it fits. So up to three odd neighbours spoil
 *         nothing. Expected scatter: √(floor² + (roughness x distance)²), wider where the shot lies outside its
 *         neighbours; the roughness of the ground is the median of |off| / distance over the whole survey.
 * Source  Rousseeuw 1984 for the least median (from memory); the rest first principles, the floor common practice.
 * Limits  Needs eight shots. Where the neighbours lie in a line no plane is made and nothing is said.
 */

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Prediction {
  readonly predicted: number;
  readonly off: number;
  /** What chance and rough ground make of it anyway: one standard deviation. */
  readonly scatter: number;
  /** Neighbours lie off the same way and about as far: slips of one size aren't made side by side, so the ground bends. */
  readonly bends: boolean;
}

const NEIGHBOURS = 8;
/** In a larger survey only what a plain fit finds odd is fitted again with care: one odd shot can't sway the whole. */
const FEW = 60;
const ODD = 2;
const FEWEST = 8;
/** Grass, ruts and a rod that isn't plumb, m. */
const FLOOR = 0.02;
/** From the median of absolute values to a standard deviation, for a normal distribution. */
const MEDIAN_TO_SIGMA = 1.4826;
/** Beside its neighbours, not amid them: there the plane is carried on, and one other that is off alike tells that it bends. */
const BESIDE = 1.5;
/** Three places whose triangle is flatter than this share of its longest side squared fix no plane. */
const FLAT = 0.05;

/** One for each spot, null where it can't be predicted. */
export function leaveOneOut(spots: readonly Spot[]): (Prediction | null)[] {
  if (spots.length < FEWEST) return spots.map(() => null);
  const nearest = nearestOf(spots);
  const lists = spots.map((_, i) => nearest(i));
  const near = (i: number) => lists[i] ?? [];
  const isLarge = spots.length > FEW;
  const first = spots.map((spot, i) => predict(spot, near(i), spots, isLarge ? leastSquares : robustPlane));
  const roughness = roughnessOf(first);
  const found = first.map((each, i) => {
    const isOdd = each !== null && isLarge && Math.abs(each.off) > ODD * scatterOf(each, roughness);
    return isOdd ? (predict(spots[i] as Spot, near(i), spots, robustPlane) ?? each) : each;
  });
  return found.map((each, i) => {
    if (each === null) return null;
    const alike = near(i).filter((other) => isAlike(each.off, found[other]?.off ?? 0)).length;
    const bends = alike >= (each.outside > BESIDE ? 1 : 2);
    return { predicted: each.predicted, off: each.off, scatter: scatterOf(each, roughness), bends };
  });
}

/** The same way, and neither more than twice the other. */
function isAlike(off: number, other: number): boolean {
  const ratio = other / off;
  return ratio >= 0.5 && ratio <= 2;
}

function roughnessOf(found: readonly (Rough | null)[]): number {
  const rough = found.flatMap((each) => (each === null ? [] : [Math.abs(each.off) / each.distance]));
  return MEDIAN_TO_SIGMA * median(rough);
}

function scatterOf({ distance, outside }: Rough, roughness: number): number {
  return Math.hypot(FLOOR, roughness * distance) * outside;
}

interface Rough {
  readonly predicted: number;
  readonly off: number;
  /** Root mean square distance to the neighbours. */
  readonly distance: number;
  /** 1 amid its neighbours, more beside them. */
  readonly outside: number;
}

function predict(
  spot: Spot,
  near: readonly number[],
  spots: readonly Spot[],
  planeOf: (around: readonly Spot[]) => Plane | null,
): Rough | null {
  const around = near.map((i): Spot => {
    const { x, y, z } = spots[i] as Spot;
    return { x: x - spot.x, y: y - spot.y, z: z - spot.z };
  });
  const distance = Math.sqrt(mean(around.map(({ x, y }) => x * x + y * y)));
  const plane = distance > 0 ? planeOf(around) : null;
  if (plane === null) return null;
  const away = Math.hypot(mean(around.map(({ x }) => x)), mean(around.map(({ y }) => y))) / distance;
  return { predicted: spot.z + plane.z, off: -plane.z + 0, distance, outside: 1 + 2 * away * away };
}

/** z = plane.z + gx x + gy y, at the spot itself z. */
interface Plane {
  readonly z: number;
  readonly gx: number;
  readonly gy: number;
}

function robustPlane(around: readonly Spot[]): Plane | null {
  let best: Plane | null = null;
  let least = Number.POSITIVE_INFINITY;
  const n = around.length;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      for (let k = j + 1; k < n; k++) {
        const plane = throughThree(around[i] as Spot, around[j] as Spot, around[k] as Spot);
        if (plane === null) continue;
        const miss = median(around.map((spot) => missOf(plane, spot)));
        if (miss >= least) continue;
        least = miss;
        best = plane;
      }
    }
  }
  if (best === null) return null;
  const chosen = best;
  const bound = Math.max(3 * MEDIAN_TO_SIGMA * least, FLOOR);
  return leastSquares(around.filter((spot) => missOf(chosen, spot) <= bound)) ?? chosen;
}

function missOf({ z, gx, gy }: Plane, spot: Spot): number {
  return Math.abs(spot.z - z - gx * spot.x - gy * spot.y);
}

function throughThree(a: Spot, b: Spot, c: Spot): Plane | null {
  const [ux, uy, uz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const [vx, vy, vz] = [c.x - a.x, c.y - a.y, c.z - a.z];
  const cross = ux * vy - uy * vx;
  const longest = Math.max(ux * ux + uy * uy, vx * vx + vy * vy, (ux - vx) ** 2 + (uy - vy) ** 2);
  if (!(Math.abs(cross) > FLAT * longest)) return null;
  const gx = (uz * vy - vz * uy) / cross;
  const gy = (ux * vz - vx * uz) / cross;
  return { z: a.z - gx * a.x - gy * a.y, gx, gy };
}

function leastSquares(spots: readonly Spot[]): Plane | null {
  const [mx, my, mz] = [
    mean(spots.map(({ x }) => x)),
    mean(spots.map(({ y }) => y)),
    mean(spots.map(({ z }) => z)),
  ];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const { x, y, z } of spots) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
    xz += (x - mx) * (z - mz);
    yz += (y - my) * (z - mz);
  }
  const determinant = xx * yy - xy * xy;
  if (spots.length < 4 || !(determinant > (FLAT * (xx + yy)) ** 2)) return null;
  const gx = (xz * yy - yz * xy) / determinant;
  const gy = (yz * xx - xz * xy) / determinant;
  return { z: mz - gx * mx - gy * my, gx, gy };
}

/** The nearest others of each spot, by cells of about two spots each. */
function nearestOf(spots: readonly Spot[]): (i: number) => number[] {
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  const [minX, maxX, minY, maxY] = [
    least(xs),
    -least(xs.map((x) => -x)),
    least(ys),
    -least(ys.map((y) => -y)),
  ];
  const size = Math.max(
    Math.sqrt(((maxX - minX) * (maxY - minY) * 2) / spots.length),
    (maxX - minX + maxY - minY) / spots.length,
    1e-3,
  );
  const columns = Math.floor((maxX - minX) / size) + 1;
  const rows = Math.floor((maxY - minY) / size) + 1;
  const column = (i: number) => Math.floor(((xs[i] ?? 0) - minX) / size);
  const row = (i: number) => Math.floor(((ys[i] ?? 0) - minY) / size);
  const cells = new Map<number, number[]>();
  for (let i = 0; i < spots.length; i++) {
    const key = row(i) * columns + column(i);
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [i]);
    else cell.push(i);
  }
  return (i) => {
    const [ci, ri] = [column(i), row(i)];
    const [x, y] = [xs[i] ?? 0, ys[i] ?? 0];
    const found: number[] = [];
    const squares: number[] = [];
    for (let ring = 0; ring <= Math.max(columns, rows); ring++) {
      for (const cell of cellsOfRing(ci, ri, ring, columns, rows)) {
        for (const at of cells.get(cell) ?? []) {
          if (at !== i) keepNearest(found, squares, at, ((xs[at] ?? 0) - x) ** 2 + ((ys[at] ?? 0) - y) ** 2);
        }
      }
      // Whatever lies in further rings is at least so far off.
      if (found.length === NEIGHBOURS && (squares[NEIGHBOURS - 1] ?? 0) <= (ring * size) ** 2) break;
    }
    return found;
  };
}

/** Sorted insertion: both lists stay in order of distance and no longer than what is asked for. */
function keepNearest(found: number[], squares: number[], at: number, square: number): void {
  if (found.length === NEIGHBOURS && square >= (squares[NEIGHBOURS - 1] ?? 0)) return;
  let k = Math.min(found.length, NEIGHBOURS - 1);
  for (; k > 0 && (squares[k - 1] ?? 0) > square; k--) {
    found[k] = found[k - 1] ?? at;
    squares[k] = squares[k - 1] ?? square;
  }
  found[k] = at;
  squares[k] = square;
}

function cellsOfRing(column: number, row: number, ring: number, columns: number, rows: number): number[] {
  const cells: number[] = [];
  for (let r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
    const edge = Math.abs(r - row) === ring;
    const step = edge || ring === 0 ? 1 : 2 * ring;
    for (let c = column - ring; c <= column + ring; c += step) {
      if (c >= 0 && c < columns) cells.push(r * columns + c);
    }
  }
  return cells;
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The upper of the two middle ones where there are two. */
function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
