/** Which piece of a lot's line a setback belongs to after the lot is drawn anew. Metres. */
import type { Lot, Point, Setback } from "./schema";

/** Lines that differ by more than this aren't the same line of the lot, cosine of 30°. */
const alike = Math.cos(Math.PI / 6);

/** The lot with a new outline: each line keeps the setback of the old line that it follows. */
export function lotAlong(lot: Lot, outline: readonly Point[]): Lot {
  return {
    ...lot,
    outline: outline.map(([x, y]): Point => [x, y]),
    setbacks: setbacksAlong(lot.setbacks, lot.outline, outline),
  };
}

/** The setbacks along the new outline: each line takes those of the old line that ran as it does, nearest to its middle. */
function setbacksAlong(
  setbacks: readonly Setback[],
  before: readonly Point[],
  after: readonly Point[],
): Setback[] {
  if (before.length < 3) return [];
  return after.flatMap((_, line) => {
    const old = likeliest(side(after, line), before);
    return setbacks.filter((setback) => setback.line === old).map((setback) => ({ ...setback, line }));
  });
}

interface Side {
  readonly middle: Point;
  readonly along: Point;
}

function side(outline: readonly Point[], line: number): Side {
  const [a, b] = [outline[line] as Point, outline[(line + 1) % outline.length] as Point];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return {
    middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    along: [(b[0] - a[0]) / length, (b[1] - a[1]) / length],
  };
}

function likeliest({ middle, along }: Side, outline: readonly Point[]): number | null {
  let found: number | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const line of outline.keys()) {
    const other = side(outline, line);
    const turn = Math.abs(along[0] * other.along[0] + along[1] * other.along[1]);
    if (turn < alike) continue;
    // How far it lies across the old line counts before how far along.
    const [dx, dy] = [middle[0] - other.middle[0], middle[1] - other.middle[1]];
    const across = Math.abs(dx * other.along[1] - dy * other.along[0]);
    const far = across + 0.1 * Math.hypot(dx, dy);
    if (far < nearest) [nearest, found] = [far, line];
  }
  return found;
}
