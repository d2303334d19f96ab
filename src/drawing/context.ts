/** What every layer needs to know to draw itself, and how a text finds its place. */
import type { Bounds } from "../geometry";
import type { Results } from "../solve/results";
import { type Box, type Crossing, coveredGroup, createLabels, type Labels } from "./labels";
import type { TextMark, XY } from "./marks";
import { styles } from "./styles";
import { textWidth } from "./text-width";

export interface DrawOptions {
  /** Plan metres that one millimetre of paper shows; on screen one millimetre is about 3.78 px. */
  readonly metresPerMm: number;
  /** What heights are told from. Without a mark in the survey they are told from the datum. */
  readonly heightsFrom?: "mark" | "datum";
  /** Paper gets depths as hatched areas, the floor's height and the ties; on screen others show these. */
  readonly medium?: "paper" | "screen";
  /** The plan is shown turned by this, radians counter-clockwise: texts look for upright places. */
  readonly turn?: number;
  /** Only this part of the plan is looked at: a crowd of shots is drawn there alone. Everything where it isn't said. */
  readonly seen?: Bounds;
  /** Paper that something else lies over: no text is written there. */
  readonly covered?: readonly Box[];
}

/**
 * A drawing in work at one scale. Keep it while the scale stays: a layer that is drawn again gives its own
 * label places back first and leaves the others' alone.
 */
export interface DrawContext {
  readonly metresPerMm: number;
  readonly heightsFrom: "mark" | "datum";
  readonly medium: "paper" | "screen";
  readonly turn: number;
  readonly seen: Bounds | null;
  readonly labels: Labels;
}

/** Starts a drawing at one scale, with no label place taken yet. */
export function createDrawContext(options: DrawOptions): DrawContext {
  const labels = createLabels();
  for (const box of options.covered ?? []) labels.take(coveredGroup, box);
  return {
    metresPerMm: options.metresPerMm,
    heightsFrom: options.heightsFrom ?? "mark",
    medium: options.medium ?? "screen",
    turn: options.turn ?? 0,
    seen: options.seen ?? null,
    labels,
  };
}

/** Height of what heights are told from, m: the reference mark's or the datum's zero. */
export function heightOrigin(results: Results, context: DrawContext): number {
  return context.heightsFrom === "mark" ? (results.survey.mark?.height ?? 0) : 0;
}

/** Is every height told from the mark? Then it is shown with its sign. */
export function toldFromMark(results: Results, context: DrawContext): boolean {
  return context.heightsFrom === "mark" && results.survey.mark !== null;
}

/** Height of a capital letter over the em, and depth of descenders, in Source Sans 3. */
export const capHeight = 0.66;
const descent = 0.2;
/** Free paper kept round a text, mm. */
export const textMargin = 0.45;

/** Paper that a text takes, mm, where the plan is turned by `turn`. */
export function textBox(mark: TextMark, metresPerMm: number, room = textMargin, turn = 0): Box {
  const { size = 2.6, weight = 400 } = styles[mark.style];
  const width = textWidth(mark.text, size, weight);
  const angle = mark.angle ?? -turn;
  const [right, up] = mark.shift ?? [0, 0];
  const start = mark.anchor === "end" ? -width : mark.anchor === "middle" ? -width / 2 : 0;
  const cx = right + start + width / 2;
  const cy = up + ((capHeight - descent) * size) / 2;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return {
    x: mark.at[0] / metresPerMm + cx * c - cy * s,
    y: mark.at[1] / metresPerMm + cx * s + cy * c,
    width: width + 2 * room,
    height: (capHeight + descent) * size + 2 * room,
    angle,
  };
}

/** A label of one or more lines of text that stay together. */
export type LabelTexts = readonly TextMark[];

/** How much a label may cross where it finds no free place; `true`: it must be shown. */
export type Must = boolean | "over-thin-lines" | "over-lines";

/** The less a text crosses the better. */
const crossings: readonly Crossing[] = ["nothing", "crosses", "lines", "firm-lines", "signs"];
const mostCrossed = { "over-thin-lines": 3, "over-lines": 4 } as const;

/**
 * Puts a label at the first of its possible places that is free of texts and of lines, and takes the paper.
 *
 * Where none is free the label is left out (the answer is empty). One that may go "over-thin-lines" may then lie on a
 * shot's cross, which gives way to it, or cross a thin line; "over-lines" at last also a lot line or a wall; one that `must`
 * be shown even a sign, and in the worst case takes its first place. `allows` is asked of free places alone.
 */
export function placeLabel(
  context: DrawContext,
  group: string,
  candidates: readonly LabelTexts[],
  must: Must = false,
  allows: (texts: LabelTexts) => boolean = () => true,
): LabelTexts {
  const most = must === false ? 1 : must === true ? crossings.length : mostCrossed[must];
  const boxesOf = boxesOnce(context);
  for (const over of crossings.slice(0, most)) {
    const free = candidates.find(
      (texts) => boxesOf(texts).every((box) => context.labels.fits(box, over)) && allows(texts),
    );
    if (free) return taken(context, group, free);
  }
  const [first] = candidates;
  return must === true && first ? taken(context, group, first) : [];
}

/** The boxes of each candidate, worked out when they are first asked for: most are tried over several kinds of marks. */
function boxesOnce({ metresPerMm, turn }: DrawContext) {
  const known = new Map<LabelTexts, readonly Box[]>();
  return (texts: LabelTexts): readonly Box[] => {
    const before = known.get(texts);
    if (before) return before;
    const boxes = texts.map((text) => textBox(text, metresPerMm, textMargin, turn));
    known.set(texts, boxes);
    return boxes;
  };
}

function taken(context: DrawContext, group: string, texts: LabelTexts): LabelTexts {
  for (const text of texts)
    context.labels.take(group, textBox(text, context.metresPerMm, textMargin, context.turn));
  return texts;
}

/** Lines this near to straight up, radians, are all read from the right, so that neighbours read alike. */
const upright = 0.1;

/** Turns an angle by half a turn where needed, so that text along it can be read from below or from the right. */
export function readable(angle: number): number {
  const turned = Math.atan2(Math.sin(angle), Math.cos(angle));
  if (turned > Math.PI / 2 + upright) return turned - Math.PI;
  if (turned <= -Math.PI / 2 + upright) return turned + Math.PI;
  return turned;
}

/**
 * A text as it is read on a plan turned by `turn`: one that would stand on its head is turned round on the same paper.
 * A text without an angle stands upright anyway.
 */
export function asRead(mark: TextMark, turn: number): TextMark {
  if (mark.angle === undefined || turn === 0) return mark;
  const angle = readable(mark.angle + turn) - turn;
  if (Math.cos(angle - mark.angle) > 0) return mark;
  const cap = (styles[mark.style].size ?? 2.6) * capHeight;
  const [right, up] = mark.shift ?? [0, 0];
  const anchor = mark.anchor ?? "start";
  return {
    ...mark,
    angle,
    anchor: anchor === "start" ? "end" : anchor === "end" ? "start" : anchor,
    shift: [-right, -up - cap],
  };
}

/** Right and up on screen or paper of a direction of the plan, where the plan is turned. */
export function seenWay(angle: number, turn: number): XY {
  return [Math.cos(angle + turn), Math.sin(angle + turn)];
}

/** Flat plan coordinates in paper millimetres. */
export function onPaper(points: ArrayLike<number>, metresPerMm: number): Float64Array {
  const paper = new Float64Array(points.length);
  for (let i = 0; i < paper.length; i++) paper[i] = (points[i] as number) / metresPerMm;
  return paper;
}

/** Takes a symbol's place. */
export function takeSymbol(context: DrawContext, group: string, at: XY, size: number): void {
  context.labels.take(group, {
    x: at[0] / context.metresPerMm,
    y: at[1] / context.metresPerMm,
    width: size,
    height: size,
    angle: 0,
  });
}
