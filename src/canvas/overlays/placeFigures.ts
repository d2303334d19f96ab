/**
 * Places for figures that stand on the screen beside what they measure.
 *
 * Method  the longest piece first; of each figure's places the first that covers no other figure and no handle, and the
 *         least of the plan's words. A figure without such a place isn't shown: it is in the panel too.
 *         Once all stand, those that have words to go with them take the longest that find room: they push no figure
 *         away, and cover no more of the plan's words than the bare figure does.
 * Units   CSS pixels, y down.
 */
import type { ScreenBox } from "../scene/written";

type XY = readonly [number, number];

export interface ScreenFigure {
  readonly ends: readonly [XY, XY];
  /** To the left of the way between the ends; 0: on it. */
  readonly off: number;
  readonly width: number;
  /** With words, the longest first. */
  readonly wider?: readonly number[];
  readonly height: number;
  /** It stands in the middle of its piece or nowhere. */
  readonly fixed: boolean;
}

export interface Covered {
  readonly handles: readonly ScreenBox[];
  readonly words: readonly ScreenBox[];
}

/** A piece shorter than this can't be told from its figure. */
const leastPixels = 22;
/** Where along its piece a figure may stand, best first. */
const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
/** Close beside its piece, where there is no more room; and beside one that it would stand on. */
const [near, aside] = [11, 17];
/** A second row on the other side, as times of the first one's distance. */
const secondRow = 2.5;
/** Higher figures stand farther off by half of what they are higher than this, px. */
const usualHeight = 19;

export interface FigurePlace {
  readonly at: XY;
  /** Which of its wider forms finds room; null: the bare figure. */
  readonly form: number | null;
}

/** A place for each figure, in their order; null where it has none. */
export function placeFigures(
  figures: readonly ScreenFigure[],
  screen: Size,
  covered: Covered,
): readonly (FigurePlace | null)[] {
  const places = figures.map((): FigurePlace | null => null);
  const taken = figures.map((): ScreenBox | null => null);
  const order = figures.map((_, i) => i);
  order.sort((a, b) => lengthOf(figures[b] as ScreenFigure) - lengthOf(figures[a] as ScreenFigure));
  const put = (i: number, width: number, form: number | null, most: number) => {
    const one = { ...(figures[i] as ScreenFigure), width };
    const others = taken.filter((box, j): box is ScreenBox => box !== null && j !== i);
    const found = bestPlace(one, screen, others, covered, form === null ? 0 : width / 2);
    if (!found || found.covers > most) return false;
    const [x, y] = found.at;
    places[i] = { at: found.at, form };
    taken[i] = { x, y, width, height: one.height };
    return true;
  };
  for (const i of order) {
    const one = figures[i] as ScreenFigure;
    if (lengthOf(one) >= leastPixels) put(i, one.width, null, Number.POSITIVE_INFINITY);
  }
  for (const i of order) {
    const one = figures[i] as ScreenFigure;
    const bare = taken[i];
    if (!bare) continue;
    const most = coveredWords([bare.x, bare.y], one, covered.words);
    (one.wider ?? []).some((width, form) => put(i, width, form, most));
  }
  return places;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The first of a figure's free places, so far from the screen's sides, that covers the least of the words. */
function bestPlace(
  one: ScreenFigure,
  screen: Size,
  taken: readonly ScreenBox[],
  { handles, words }: Covered,
  margin: number,
): { at: XY; covers: number } | null {
  const seen = candidates(one).filter(
    ([x, y]) => x > margin && y > 0 && x < screen.width - margin && y < screen.height,
  );
  const free = seen.filter((at) => isFree(at, one, taken) && (one.fixed || isFree(at, one, handles)));
  return leastCovering(free, one, words);
}

function lengthOf({ ends: [a, b] }: ScreenFigure): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** Left of the way as seen on the screen, where y runs down; a wide figure stands farther off an upright piece. */
function candidates(one: ScreenFigure): XY[] {
  const [[ax, ay], [bx, by]] = one.ends;
  const length = lengthOf(one);
  const [left, up] = [(by - ay) / length, -(bx - ax) / length];
  const higher = one.fixed ? 0 : Math.max(0, one.height - usualHeight) / 2;
  const reachOf = (off: number) =>
    off + Math.sign(off) * (higher + Math.abs(left) * (one.width / 2 - one.height / 2));
  const side = Math.sign(one.off);
  const beside = [one.off, side * near, -one.off, -one.off * secondRow];
  const offs = one.fixed ? [one.off] : side === 0 ? [0, aside, -aside] : beside;
  return offs.flatMap((off) =>
    (one.fixed ? [0.5] : shares).map((t): XY => {
      const reach = reachOf(off);
      return [ax + (bx - ax) * t + left * reach, ay + (by - ay) * t + up * reach];
    }),
  );
}

/** The first place that covers the least of the words, and how much, px². */
function leastCovering(
  places: readonly XY[],
  one: ScreenFigure,
  words: readonly ScreenBox[],
): { at: XY; covers: number } | null {
  let best: { at: XY; covers: number } | null = null;
  for (const at of places) {
    const covers = coveredWords(at, one, words);
    if (best === null || covers < best.covers) best = { at, covers };
  }
  return best;
}

function coveredWords(at: XY, one: ScreenFigure, words: readonly ScreenBox[]): number {
  return words.reduce((sum, word) => sum + overlap(at, one, word), 0);
}

function overlap([x, y]: XY, { width, height }: ScreenFigure, box: ScreenBox): number {
  const across = Math.min(width, box.width, (box.width + width) / 2 - Math.abs(box.x - x));
  const down = Math.min(height, box.height, (box.height + height) / 2 - Math.abs(box.y - y));
  return Math.max(0, across) * Math.max(0, down);
}

function isFree([x, y]: XY, { width, height }: ScreenFigure, boxes: readonly ScreenBox[]): boolean {
  return !boxes.some(
    (box) => Math.abs(box.x - x) < (box.width + width) / 2 && Math.abs(box.y - y) < (box.height + height) / 2,
  );
}
