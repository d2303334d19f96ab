/**
 * The corners: a ring, the name, and on screen how far the wall stands out of the ground as it is. On paper, where that
 * could be taken for the wall to leave showing, what to fill or cut there.
 */
import type { Project } from "../document/schema";
import type { CornerResult, Results } from "../solve/results";
import { capOf, sizeOf, stacked } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, seenWay, textBox } from "./context";
import type { Labels } from "./labels";
import { leaderLine, ledPlaces } from "./leader";
import type { DrawingMark, MarkLayer, TextMark, XY } from "./marks";
import { reserveLines } from "./reserve";
import { cornerRing } from "./sizes";
import { textWidth } from "./text-width";
import { cornerDirections, innerCorners } from "./walls";
import { outText, workInWords } from "./words";

/** Free paper between ring and label, mm. */
const gap = 0.9;
const lead = 1.15;
/** A direction leans to a side from here on (sine). */
const aside = 0.35;
/** Directions tried, turned from straight out of the corner, radians. */
const turns = [0, 0.35, -0.35, 0.7, -0.7];
/** A name farther from its ring than this would be looked for, mm. */
const reaches = [0, 1.5, 3];
/** A leader to a value is at least so long, mm: it begins beyond the name. */
const leastLeader = 7;
/** On the screen, where one can come nearer and the panel tells the values, a leader is at most so long, mm. */
const mostLeader = 13;

/**
 * Name and value in the quarter that a direction points to, clear of the ring and of the dimension lines that
 * leave the corner square to its walls.
 */
function labelAt(at: XY, direction: XY, reach: number, corner: { name: string; value: string }): LabelTexts {
  const lines = [
    { text: corner.name, style: "corner-label" },
    { text: corner.value, style: "corner-value" },
  ] as const;
  const height = (sizeOf("corner-label") + sizeOf("corner-value")) * lead;
  const [right, up] = direction;
  const off = cornerRing / 2 + gap + reach;
  const anchor = right > aside ? "start" : right < -aside ? "end" : "middle";
  const shift: XY = [
    anchor === "middle" ? 0 : Math.sign(right) * off,
    Math.abs(up) < aside ? 0 : Math.sign(up) * (off + height / 2 - gap),
  ];
  return stacked(at, lines, shift, anchor, lead);
}

/** The name alone, close by its ring. */
function nameAt(at: XY, [right, up]: XY, reach: number, name: string): LabelTexts {
  const off = cornerRing / 2 + gap + reach;
  const anchor = right > aside ? "start" : right < -aside ? "end" : "middle";
  const shift: XY = [
    anchor === "middle" ? 0 : Math.sign(right) * off,
    Math.abs(up) < aside ? 0 : Math.sign(up) * (off + capOf("corner-label") / 2),
  ];
  return stacked(at, [{ text: name, style: "corner-label" }], shift, anchor, lead);
}

/** The same label with its value as wide as it may get. */
function widened(texts: LabelTexts, room: number): LabelTexts {
  return texts.map((text): TextMark => {
    if (text.style !== "corner-value") return text;
    let wide = text.text;
    while (textWidth(wide, sizeOf("corner-value"), 600) < room) wide += "0";
    return { ...text, text: wide };
  });
}

interface Corner {
  readonly name: string;
  readonly at: XY;
  readonly value: string;
  /** Room for the value whatever the floor is dragged to, mm. */
  readonly room: number;
  /** Straight out of the corner, radians. */
  readonly out: number;
  readonly inner: boolean;
  /** The other corners. */
  readonly others: readonly XY[];
}

/** A name that stands nearer to another ring would be taken for that one's. */
function isOwn(texts: LabelTexts, { at, others }: Corner, { metresPerMm, turn }: DrawContext): boolean {
  const [letter] = texts;
  if (letter === undefined) return true;
  const { x, y } = textBox(letter, metresPerMm, 0, turn);
  const away = (ring: XY) => Math.hypot(ring[0] / metresPerMm - x, ring[1] / metresPerMm - y);
  const own = away(at);
  return others.every((ring) => own < away(ring));
}

/** Places one label; the room for its value is kept, whatever it says at other floors. */
function placed(
  candidates: readonly LabelTexts[],
  room: number,
  context: DrawContext,
  must: boolean | "over-lines" | "over-thin-lines",
): { readonly texts: LabelTexts; readonly index: number } {
  const wide = candidates.map((texts) => widened(texts, room));
  const index = wide.indexOf(placeLabel(context, "corners", wide, must));
  return { texts: candidates[index] ?? [], index };
}

/** Name and value together by the ring; where they have no room the name alone, and the value at the end of a leader. */
function cornerLabel(corner: Corner, context: DrawContext): readonly DrawingMark[] {
  const { at, name, value, room, out, inner } = corner;
  const ways = (start: number, spread: readonly number[]) =>
    spread.map((turn) => seenWay(start + turn, context.turn));
  const together = (start: number, reach: number) =>
    ways(start, turns).map((way) => labelAt(at, way, reach, { name, value }));
  // Between the two walls of an inner corner a label may stand inside instead.
  const near = inner
    ? [together(out, 0), together(out + Math.PI, 0), together(out + Math.PI, 1.5)].flat()
    : reaches.flatMap((reach) => together(out, reach));
  const own = (texts: LabelTexts) => isOwn(texts, corner, context);
  const both = placed(near.filter(own), room, context, "over-thin-lines");
  if (both.index >= 0) return both.texts;
  const alone = [0, 1].flatMap((reach) =>
    [out, out + Math.PI].flatMap((start) => ways(start, turns).map((way) => nameAt(at, way, reach, name))),
  );
  const close = alone.filter(own);
  const letter = placed(close.length > 0 ? close : alone, 0, context, true);
  const led = ledPlaces(at, out, { text: value, style: "corner-value" }, context, {
    least: leastLeader,
    ...(context.medium === "screen" && { most: mostLeader }),
  });
  const far = placed(
    led.map(({ texts }) => texts),
    room,
    context,
    "over-lines",
  );
  const end = led[far.index];
  // No room at all: the value is told by name in the tables.
  if (!end) return letter.texts;
  return [leaderLine(at, end, cornerRing / 2, "note-leader", context), ...letter.texts, ...far.texts];
}

function cornerOf(
  corner: CornerResult,
  { direction, inner, others }: Pick<Corner, "inner" | "others"> & { readonly direction: XY },
  { display }: Project,
  context: DrawContext,
): Corner {
  const paper = context.medium === "paper";
  const value = paper ? workInWords(corner, display) : outText(corner.wallAboveGround, display);
  const size = sizeOf("corner-value");
  return {
    name: corner.name,
    at: [corner.x, corner.y],
    value,
    room: Math.max(textWidth(value, size, 600), textWidth("2′ 10⅝″ out", size, 600)),
    out: Math.atan2(direction[1], direction[0]),
    inner,
    others,
  };
}

/** Where the corners' labels stand on a drawing in work, and what they were placed by. */
interface Kept {
  readonly by: readonly unknown[];
  readonly corners: readonly Corner[];
  readonly marks: readonly (readonly DrawingMark[])[];
}

const keptOn = new WeakMap<Labels, Kept>();

/** The labels at the places that they have, while nothing they were placed by has changed and each value has room there. */
function keptMarks(
  by: readonly unknown[],
  corners: readonly Corner[],
  { labels }: DrawContext,
): Kept["marks"] | null {
  const kept = keptOn.get(labels);
  if (!kept || !labels.holds("corners") || by.some((part, i) => part !== kept.by[i])) return null;
  if (corners.length !== kept.corners.length) return null;
  const fits = corners.every(({ name, room }, i) => {
    const before = kept.corners[i] as Corner;
    return name === before.name && room <= before.room;
  });
  if (!fits) return null;
  return corners.map(({ value }, i) =>
    (kept.marks[i] ?? []).map((mark) =>
      mark.kind === "text" && mark.style === "corner-value" ? { ...mark, text: value } : mark,
    ),
  );
}

function placedMarks(
  by: readonly unknown[],
  corners: readonly Corner[],
  context: DrawContext,
): Kept["marks"] {
  context.labels.forget("corners");
  const marks = corners.map((corner) => cornerLabel(corner, context));
  keptOn.set(context.labels, { by, corners, marks });
  return marks;
}

/**
 * Rings with names and "10¾″ out", on paper "1′ 1″ of fill", at the corners. Cheap: redrawn on every frame of a floor drag,
 * in which labels keep their places.
 */
export function drawCorners(project: Project, results: Results, context: DrawContext): MarkLayer {
  const { building, grading, lot, survey } = project;
  if (!building) {
    context.labels.forget("corners");
    return { id: "corners", marks: [] };
  }
  const directions = cornerDirections(building.outline);
  const inner = innerCorners(building.outline);
  reserveLines(project, results, context);
  const rings = results.corners.map(({ x, y }): XY => [x, y]);
  const shapeOf = (i: number) => ({
    direction: directions[i] ?? [0, 1],
    inner: inner[i] ?? false,
    others: rings.filter((_, other) => other !== i),
  });
  const corners = results.corners.map((corner, i) => cornerOf(corner, shapeOf(i), project, context));
  const by = [
    building.outline,
    grading.drives,
    grading.swales,
    lot,
    survey.marks,
    results.plot,
    results.survey,
  ];
  const labels = keptMarks(by, corners, context) ?? placedMarks(by, corners, context);
  const marks = corners.flatMap(({ at }, i): DrawingMark[] => [
    { kind: "symbol", at, symbol: "ring", size: cornerRing, style: "corner-ring" },
    ...(labels[i] ?? []),
  ]);
  return { id: "corners", marks };
}
