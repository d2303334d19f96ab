/**
 * The corners: a ring, the name, and on screen how far the wall stands out of the ground as it is. On paper, where that
 * could be taken for the wall to leave showing, what to fill or cut there.
 */
import type { Project } from "../document/schema";
import { boundsOf } from "../geometry";
import type { CornerResult, Results } from "../solve/results";
import { capOf, sizeOf, stacked } from "./beside";
import { type DrawContext, type LabelTexts, type Must, placeLabel, seenWay, textBox } from "./context";
import type { Labels } from "./labels";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer, TextMark, XY } from "./marks";
import { reserveLines } from "./reserve";
import { cornerRing } from "./sizes";
import { textWidth } from "./text-width";
import { cornerDirections, innerCorners } from "./walls";
import { outText, workInWords } from "./words";
import { isClearOfDrives, isClearOfWorks } from "./works";

/** Free paper between ring and label, mm. */
const gap = 0.9;
const lead = 1.15;
/** A direction leans to a side from here on (sine). */
const aside = 0.35;
/** Directions tried, turned from straight out of the corner, radians. */
const turns = [0, 0.35, -0.35, 0.7, -0.7];
/** A name farther from its ring than this would be looked for, mm. */
const reaches = [0, 1.5, 3];
/** So many of these are close. */
const closest = 2;
/** A leader to a value is at least so long, mm: it begins beyond the name. */
const leastLeader = 7;
/** On the screen, where one can come nearer and the panel tells the values, a leader is at most so long, mm, and no longer than so many of the building's shorter side: round a tiny one they would be a thicket. */
const mostLeader = 13;
const leaderOfSide = 0.8;
/** Nor is it turned farther from straight out of the corner, radians: it would run across the building. */
const leaderSpread = 1.5;
/** A name alone stands so far from its ring, mm, best first. */
const namesAt = [0, 1, 2.2];

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
  /** The building's shorter side, mm. */
  readonly side: number;
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
  must: Must,
): { readonly texts: LabelTexts; readonly index: number } {
  const wide = candidates.map((texts) => widened(texts, room));
  const index = wide.indexOf(placeLabel(context, "corners", wide, must));
  return { texts: candidates[index] ?? [], index };
}

/** Ways that a label may lie from the corner, as seen. */
function waysFrom(start: number, { turn }: DrawContext): readonly XY[] {
  return turns.map((aside) => seenWay(start + aside, turn));
}

/** Name and value together by the ring; null where they have no room. On the screen they lie on no drive. */
function together(corner: Corner, project: Project, context: DrawContext): LabelTexts | null {
  const { at, name, value, room, out, inner } = corner;
  const places = (start: number, reach: number) =>
    waysFrom(start, context).map((way) => labelAt(at, way, reach, { name, value }));
  // Between the two walls of an inner corner a label may stand inside instead.
  const near = inner
    ? [places(out, 0), places(out + Math.PI, 0), places(out + Math.PI, 1.5)].flat()
    : reaches.flatMap((reach) => places(out, reach));
  const screen = context.medium === "screen";
  const own = near.filter(
    (texts) =>
      isOwn(texts, corner, context) && (!screen || isClearOfDrives(widened(texts, room), project, context)),
  );
  // A name that is far from its ring and crosses something besides is better close and alone.
  const close = screen ? own.slice(0, closest * turns.length) : own;
  const free = placed(own, room, context, false);
  const { texts, index } = free.index >= 0 ? free : placed(close, room, context, "over-thin-lines");
  return index < 0 ? null : texts;
}

/** The name alone: outside the walls, else inside, on paper at last wherever it may be. */
function nameAlone(corner: Corner, context: DrawContext): LabelTexts {
  const { at, out, name } = corner;
  const places = [out, out + Math.PI].flatMap((start) =>
    namesAt.flatMap((reach) => waysFrom(start, context).map((way) => nameAt(at, way, reach, name))),
  );
  const close = places.filter((texts) => isOwn(texts, corner, context));
  const outside = close.filter((_, i) => i < close.length / 2);
  for (const [some, must] of [
    [outside, "over-thin-lines"],
    [close, "over-thin-lines"],
    [close.length > 0 ? close : places, context.medium === "paper" ? true : "over-lines"],
  ] as const) {
    const { texts } = placed(some, 0, context, must);
    if (texts.length > 0) return texts;
  }
  return [];
}

/** The value at the end of a leader; without room it is told by name in the tables. */
function valueApart(
  { at, out, value, room, side }: Corner,
  project: Project,
  context: DrawContext,
): readonly DrawingMark[] {
  const most = Math.min(mostLeader, leaderOfSide * side);
  const led = ledPlaces(at, out, { text: value, style: "corner-value" }, context, {
    least: leastLeader,
    ...(context.medium === "screen" && { most, spread: leaderSpread }),
  });
  const wide = led
    .map((one) => ({ ...one, texts: widened(one.texts, room) }))
    .filter(({ texts }) => context.medium === "paper" || isClearOfWorks(texts, project, context));
  const from = cornerRing / 2;
  const marks = placeLed(context, "corners", at, wide, { from, style: "note-leader", over: "over-lines" });
  return withValue(marks, value);
}

/** The marks with a value as it is written, not as wide as it may get. */
function withValue(marks: readonly DrawingMark[], value: string): readonly DrawingMark[] {
  return marks.map((mark) =>
    mark.kind === "text" && mark.style === "corner-value" ? { ...mark, text: value } : mark,
  );
}

function cornerOf(
  corner: CornerResult,
  { direction, ...shape }: Pick<Corner, "inner" | "others" | "side"> & { readonly direction: XY },
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
    ...shape,
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
  return corners.map(({ value }, i) => withValue(kept.marks[i] ?? [], value));
}

/** Where some corners have no room for both, their names come before the others' values, and their values last. */
function labelsOf(corners: readonly Corner[], project: Project, context: DrawContext): Kept["marks"] {
  const tight = new Set<Corner>();
  for (;;) {
    context.labels.forget("corners");
    const names = new Map([...tight].map((corner) => [corner, nameAlone(corner, context)]));
    const both = new Map(
      corners.filter((one) => !tight.has(one)).map((one) => [one, together(one, project, context)] as const),
    );
    const failed = [...both].flatMap(([corner, texts]) => (texts ? [] : [corner]));
    if (failed.length === 0)
      return corners.map(
        (one) => both.get(one) ?? [...(names.get(one) ?? []), ...valueApart(one, project, context)],
      );
    for (const corner of failed) tight.add(corner);
  }
}

function placedMarks(
  by: readonly unknown[],
  corners: readonly Corner[],
  project: Project,
  context: DrawContext,
): Kept["marks"] {
  const marks = labelsOf(corners, project, context);
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
  const box = boundsOf(building.outline);
  const side = Math.min(box.maxX - box.minX, box.maxY - box.minY) / context.metresPerMm;
  const shapeOf = (i: number) => ({
    direction: directions[i] ?? [0, 1],
    inner: inner[i] ?? false,
    side,
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
  const labels = keptMarks(by, corners, context) ?? placedMarks(by, corners, project, context);
  const marks = corners.flatMap(({ at }, i): DrawingMark[] => [
    { kind: "symbol", at, symbol: "ring", size: cornerRing, style: "corner-ring" },
    ...(labels[i] ?? []),
  ]);
  return { id: "corners", marks };
}
