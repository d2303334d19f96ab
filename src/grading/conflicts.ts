/**
 * Where a later act changes the surface that an earlier one made.
 *
 * Units   metres, m2; the change keeps its sign: negative is cut into the earlier surface.
 * Source  First principles.
 */
import type { GradingConflict } from "../solve/results";
import type { Layout } from "./layout";

/** A change of height that counts, m. */
const change = 0.01;

export function gradingConflicts(
  { prepared, cells }: Layout,
  floor: number,
  nameOf: (id: string) => string,
): GradingConflict[] {
  const { existing, acts } = prepared;
  const z = Float64Array.from(existing);
  const owner = new Int16Array(z.length).fill(-1);
  const found = new Map<string, { first: number; second: number; by: number; cell: number; area: number }>();
  acts.forEach(({ index, lower, upper, share, core }, a) => {
    for (let k = 0; k < index.length; k++) {
      const i = index[k] as number;
      const rise = (share[k] as number) * floor;
      const [low, high] = [(lower[k] as number) + rise, (upper[k] as number) + rise];
      const before = z[i] as number;
      const after = before < low ? low : Math.min(before, high);
      z[i] = after;
      const first = owner[i] as number;
      const other = first >= 0 && acts[first]?.id !== acts[a]?.id;
      if (other && Math.abs(after - before) > change && (cells.weight[i] as number) > 0) {
        const key = `${first} ${a}`;
        const one = found.get(key) ?? { first, second: a, by: 0, cell: i, area: 0 };
        one.area += cells.weight[i] as number;
        if (Math.abs(after - before) > Math.abs(one.by)) Object.assign(one, { by: after - before, cell: i });
        found.set(key, one);
      }
      // Who made the surface: an act that only limits one way has made it only where it changed the ground.
      const oneWay = low === Number.NEGATIVE_INFINITY || high === Number.POSITIVE_INFINITY;
      if (core[k] && (!oneWay || after !== before)) owner[i] = a;
    }
  });
  return [...found.values()].map(({ first, second, by, cell, area }) => {
    const [one, other] = [acts[first]?.id ?? "", acts[second]?.id ?? ""];
    return {
      first: one,
      second: other,
      firstName: nameOf(one),
      secondName: nameOf(other),
      by,
      at: [cells.x[cell] as number, cells.y[cell] as number],
      area,
    };
  });
}
