/** The line on the plan along which the section below it is cut, while that section is shown. */
import { createStore } from "zustand/vanilla";
import type { DrawingMark, XY } from "../../drawing/marks";
import type { SectionLine } from "../../solve/results";
import type { Box } from "../view/freeArea";
import { toScreen, type View } from "../view/view";
import { runsLeft, sectionEnds } from "./sectionShapes";

type Cut = Pick<SectionLine, "start" | "end">;

/** The straight line that the shown section is cut along; null where none is shown, or it has marks of its own. */
export const sectionShown = createStore<{ readonly cut: Cut | null }>(() => ({ cut: null }));
/** The place on the plan under the pointer on the section. */
export const sectionSpot = createStore<{ readonly at: XY | null }>(() => ({ at: null }));

/** The heavy stroke at each end, px. */
const endPixels = 16;
/** The letters stay this far inside the plan's rim, clear of tools and buttons, px. */
const inset = { x: 70, y: 26 };

/** A letter of usual size: its middle stands this far beyond its end, and needs this much room about it, px. */
const letter = { beyond: 12, room: 9 } as const;
/** An end that lies under something moves inwards by so much at a time, px. */
const inwards = 6;

export interface SectionSurroundings {
  /** What lies over the plan, px. */
  readonly taken?: readonly Box[];
  /** Texts of the plan, px: the letters keep off them while they can. */
  readonly written?: readonly Box[];
  /** How much larger than usual the letters are. */
  readonly words?: number;
}

/**
 * The line with the letters of the section's ends; where the line runs out of sight, or under something that lies over
 * the plan, they stand at the rim of what is seen.
 */
export function sectionOnPlan(
  section: Cut,
  north: number,
  view: View,
  { taken = [], written = [], words = 1 }: SectionSurroundings = {},
): DrawingMark[] {
  const { start, end } = section;
  const seen = runsLeft(section, view.angle) ? { start: end, end: start } : section;
  const [first, last] = [toScreen(view, seen.start), toScreen(view, seen.end)];
  const inside = sharesInside(first, last, view);
  const clearOf = (boxes: readonly Box[]) => inside && sharesClear(first, last, inside, boxes, words);
  const shares = clearOf([...taken, ...written]) ?? clearOf(taken);
  if (!shares) return [];
  const at = (share: number): XY => [
    seen.start[0] + (seen.end[0] - seen.start[0]) * share,
    seen.start[1] + (seen.end[1] - seen.start[1]) * share,
  ];
  const [a, b] = [at(shares[0]), at(shares[1])];
  const pixels = Math.hypot(b[0] - a[0], b[1] - a[1]) * view.scale;
  if (pixels < 3 * endPixels) return [];
  const [left, right] = sectionEnds(seen, north);
  return [
    { kind: "line", points: [...a, ...b], style: "section-line" },
    ...endMarks(a, b, endPixels / pixels, left, view),
    ...endMarks(b, a, endPixels / pixels, right, view),
  ];
}

/** A heavy stroke from one end towards the other, and the end's letter beyond it. */
function endMarks(at: XY, other: XY, share: number, text: string, view: View): DrawingMark[] {
  const [dx, dy] = [other[0] - at[0], other[1] - at[1]];
  const turn = Math.atan2(dy, dx) + view.angle;
  return [
    { kind: "line", points: [...at, at[0] + dx * share, at[1] + dy * share], style: "section-end" },
    {
      kind: "text",
      at,
      text,
      style: "section-label",
      angle: -view.angle,
      anchor: "middle",
      shift: [-Math.cos(turn) * 3.2, -Math.sin(turn) * 3.2 - 1.1],
      halo: true,
    },
  ];
}

/** The same shares, each moved inwards until its letter lies clear of what is taken; null where none is. */
function sharesClear(
  a: XY,
  b: XY,
  [from, to]: readonly [number, number],
  taken: readonly Box[],
  words: number,
): readonly [number, number] | null {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const step = inwards / Math.max(length, 1e-9);
  const [beyond, room] = [letter.beyond * words, letter.room * words];
  const isClear = (share: number, way: 1 | -1) => {
    const at = share - (way * beyond) / length;
    const [x, y] = [a[0] + (b[0] - a[0]) * at, a[1] + (b[1] - a[1]) * at];
    return taken.every(
      ({ left, right, top, bottom }) =>
        x < left - room || x > right + room || y < top - room || y > bottom + room,
    );
  };
  let [start, end] = [from, to];
  while (start < end && !isClear(start, 1)) start += step;
  while (end > start && !isClear(end, -1)) end -= step;
  return start < end ? [start, end] : null;
}

/** Shares of the way from a to b, px, between which it lies inside the plan's rim; null where it doesn't. */
function sharesInside(a: XY, b: XY, { width, height }: View): readonly [number, number] | null {
  let [from, to] = [0, 1];
  for (const [start, way, low, high] of [
    [a[0], b[0] - a[0], inset.x, width - inset.x],
    [a[1], b[1] - a[1], inset.y, height - inset.y],
  ] as const) {
    if (Math.abs(way) < 1e-9) {
      if (start < low || start > high) return null;
      continue;
    }
    const [one, two] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(one, two));
    to = Math.min(to, Math.max(one, two));
  }
  return from < to ? [from, to] : null;
}
