/**
 * Where a later act changes the surface that an earlier one made.
 *
 * Units   metres, m2; the change keeps its sign: negative is cut into the earlier surface.
 * Method  Act by act. What happens to a drive's surface counts by what is left of it at the end: a swale that cuts it is
 *         made good by the earth over its pipe.
 * Source  First principles.
 */
import type { GradingConflict } from "../solve/results";
import type { Layout } from "./layout";

/** A change of height that counts, m. */
const change = 0.01;

export function gradingConflicts(
  { prepared, cells, plan }: Layout,
  floor: number,
  nameOf: (id: string) => string,
): GradingConflict[] {
  const { existing, acts } = prepared;
  const z = Float64Array.from(existing);
  const owner = new Int16Array(z.length).fill(-1);
  const found = new Map<string, Found>();
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
        const one = found.get(key) ?? { first, second: a, cells: [], before: [], after: [] };
        one.cells.push(i);
        one.before.push(before);
        one.after.push(after);
        found.set(key, one);
      }
      // Who made the surface: an act that only limits one way has made it only where it changed the ground.
      const oneWay = low === Number.NEGATIVE_INFINITY || high === Number.POSITIVE_INFINITY;
      if (core[k] && (!oneWay || after !== before)) owner[i] = a;
    }
  });
  const drives = new Set(plan.drives.map(({ drive }) => drive.id));
  return [...found.values()].flatMap((one) => {
    const [first, second] = [acts[one.first]?.id ?? "", acts[one.second]?.id ?? ""];
    const worst = greatest(one, drives.has(first) ? z : null, cells.weight);
    if (!worst) return [];
    return [
      {
        first,
        second,
        firstName: nameOf(first),
        secondName: nameOf(second),
        by: worst.by,
        at: [cells.x[worst.cell] as number, cells.y[worst.cell] as number] as const,
        area: worst.area,
      },
    ];
  });
}

/** Where one act has changed another's surface: the cells, with their heights before and after it. */
interface Found {
  readonly first: number;
  readonly second: number;
  readonly cells: number[];
  readonly before: number[];
  readonly after: number[];
}

/** The greatest change and the area of all that count; `end`: heights at the end, where it is those that count. */
function greatest(
  { cells, before, after }: Found,
  end: Float64Array | null,
  weight: Float64Array,
): { readonly by: number; readonly cell: number; readonly area: number } | null {
  let [by, cell, area] = [0, -1, 0];
  cells.forEach((i, k) => {
    const changed = (end ? (end[i] as number) : (after[k] as number)) - (before[k] as number);
    if (Math.abs(changed) <= change) return;
    area += weight[i] as number;
    if (Math.abs(changed) > Math.abs(by)) [by, cell] = [changed, i];
  });
  return cell < 0 ? null : { by, cell, area };
}
