/** The line on the plan along which the section below it is cut, while that section is shown. */
import { createStore } from "zustand/vanilla";
import type { Project } from "../../document";
import { type DrawContext, type LabelTexts, onPaper, placeLabel } from "../../drawing/context";
import type { DrawingMark, TextMark, XY } from "../../drawing/marks";
import { containsPoint } from "../../geometry";
import type { SectionLine } from "../../solve/results";
import { rimOf, textOnScreen } from "../scene/written";
import type { Box } from "../view/freeArea";
import { toScreen, type View } from "../view/view";
import { runsLeft, sectionEnds } from "./sectionShapes";

type Cut = Pick<SectionLine, "start" | "end">;

/** The straight line that the shown section is cut along; null where none is shown, or it has marks of its own. */
export const sectionShown = createStore<{ readonly cut: Cut | null }>(() => ({ cut: null }));
/** The place on the plan under the pointer on the section. */
export const sectionSpot = createStore<{ readonly at: XY | null }>(() => ({ at: null }));

/** What the section's line is drawn for: the same object as long as nothing of it changes. */
export interface CutInView {
  readonly cut: Cut;
  readonly view: View;
  /** What lies over the plan, px. */
  readonly taken: readonly Box[];
}

/** The line, and what stands at its ends: a heavy stroke and the end's letter. */
export interface SectionOnPlan {
  readonly line: readonly DrawingMark[];
  readonly ends: readonly DrawingMark[];
}

/** The letters' places are given back under this name. */
export const endsGroup = "section-ends" as const;
const nothing: SectionOnPlan = { line: [], ends: [] };

/** The heavy stroke at each end, px, and how broad it is on paper, mm. */
const endPixels = 16;
const strokeWidth = 0.8;
/** The letters stay this far inside the plan's rim, clear of tools and buttons, px. */
const inset = { x: 70, y: 26 };
/** The middle of a letter stands so far beyond the end of its line, or beside its stroke, mm. */
const [beyond, beside] = [3.2, 3];
/** From the middle of a letter down to its foot, mm. */
const foot = 1.1;

/** An end whose letter has no room moves inwards by so much at a time, px: by so many steps, then up to a share of the line. */
const inwards = 6;
const nearSteps = 6;
const farthest = 0.4;

/**
 * The line with the letters of the section's ends. Where the line runs out of sight they stand at the rim of what is
 * seen. They take their paper as every text of the plan does: beyond the line's end, beside it, or farther in.
 */
export function sectionOnPlan(
  { cut, view, taken }: CutInView,
  { building, lot }: Pick<Project, "building" | "lot">,
  context: DrawContext,
): SectionOnPlan {
  context.labels.forget(endsGroup);
  const seen = runsLeft(cut, view.angle) ? { start: cut.end, end: cut.start } : cut;
  const [first, last] = [toScreen(view, seen.start), toScreen(view, seen.end)];
  const inside = sharesInside(first, last, view);
  const pixels = Math.hypot(last[0] - first[0], last[1] - first[1]);
  if (!inside || (inside[1] - inside[0]) * pixels < 3 * endPixels) return nothing;
  const [left, right] = sectionEnds(seen, lot.north);
  const walls = building?.outline ?? [];
  const place = { view, taken, walls, pixels: (inside[1] - inside[0]) * pixels };
  const at = (share: number): XY => [
    seen.start[0] + (seen.end[0] - seen.start[0]) * share,
    seen.start[1] + (seen.end[1] - seen.start[1]) * share,
  ];
  const [a, b] = [at(inside[0]), at(inside[1])];
  const start = endOf({ at: a, other: b, text: left }, place, context);
  const end = endOf({ at: b, other: a, text: right }, place, context);
  return {
    line: [{ kind: "line", points: [...start.at, ...end.at], style: "section-line" }],
    ends: [...start.marks, ...end.marks],
  };
}

interface End {
  /** Where the line ends in what is seen, and its other end. */
  readonly at: XY;
  readonly other: XY;
  readonly text: string;
}

interface Place {
  readonly view: View;
  readonly taken: readonly Box[];
  readonly walls: readonly XY[];
  /** Of the line as it is seen. */
  readonly pixels: number;
}

/** A heavy stroke from the end inwards and the letter by it, at the first place that is free; where none is, the stroke alone. */
function endOf(
  end: End,
  place: Place,
  context: DrawContext,
): { readonly at: XY; readonly marks: DrawingMark[] } {
  const { pixels } = place;
  const step = inwards / pixels;
  const all = Math.floor((farthest * pixels - endPixels) / inwards);
  const choices = Array.from({ length: Math.max(1, all) }, (_, k) => k * step).flatMap((share) =>
    lettersAt(end, share, place).map((texts) => ({ share, texts })),
  );
  const near = choices.filter(({ share }) => share < nearSteps * step);
  const put = (some: typeof choices) =>
    placeLabel(
      context,
      endsGroup,
      some.map(({ texts }) => texts),
      "over-thin-lines",
    );
  const close = put(near);
  const letter = close.length > 0 ? close : put(choices);
  const share = choices.find(({ texts }) => texts === letter)?.share ?? 0;
  const [at, inner] = [share, share + endPixels / pixels].map((part) => partWay(end, part)) as [XY, XY];
  const points = [...at, ...inner];
  context.labels.takeLine(endsGroup, onPaper(points, context.metresPerMm), strokeWidth, true);
  return { at, marks: [{ kind: "line", points, style: "section-end" }, ...letter] };
}

function partWay({ at, other }: End, share: number): XY {
  return [at[0] + (other[0] - at[0]) * share, at[1] + (other[1] - at[1]) * share];
}

/** Beyond the end, then on both sides of its stroke; off what lies over the plan, and not inside the walls. */
function lettersAt(end: End, share: number, { view, taken, walls, pixels }: Place): readonly LabelTexts[] {
  const [from, middle] = [partWay(end, share), partWay(end, share + endPixels / 2 / pixels)];
  if (containsPoint(walls, from[0], from[1])) return [];
  const [dx, dy] = [end.other[0] - end.at[0], end.other[1] - end.at[1]];
  const way = Math.atan2(dy, dx) + view.angle;
  const letter = (at: XY, direction: number, off: number): TextMark => ({
    kind: "text",
    at,
    text: end.text,
    style: "section-label",
    anchor: "middle",
    shift: [Math.cos(direction) * off, Math.sin(direction) * off - foot],
    halo: true,
  });
  const letters = [
    letter(from, way + Math.PI, beyond),
    letter(middle, way + Math.PI / 2, beside),
    letter(middle, way - Math.PI / 2, beside),
  ];
  return letters.filter((mark) => isClear(mark, view, taken)).map((mark) => [mark]);
}

function isClear(mark: TextMark, view: View, taken: readonly Box[]): boolean {
  const rim = rimOf(textOnScreen(mark, view));
  return taken.every(
    (box) => rim.right < box.left || rim.left > box.right || rim.bottom < box.top || rim.top > box.bottom,
  );
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
