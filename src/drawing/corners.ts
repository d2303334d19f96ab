/**
 * The corners: a ring, the name, and on screen how far the wall stands out of the ground as it is. On paper, where that
 * could be taken for the wall to leave showing, what to fill or cut there.
 */
import type { Project } from "../document/schema";
import type { CornerResult, Results } from "../solve/results";
import { sizeOf, stacked } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, seenWay } from "./context";
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
const reaches = [0, 2, 4, 7, 10];

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

/** The same label with its value as wide as it may get. */
function widened(texts: LabelTexts, room: number): LabelTexts {
  return texts.map((text): TextMark => {
    if (text.style !== "corner-value") return text;
    let wide = text.text;
    while (textWidth(wide, sizeOf("corner-value"), 600) < room) wide += "0";
    return { ...text, text: wide };
  });
}

function cornerLabel(
  corner: CornerResult,
  { direction, inner }: { readonly direction: XY; readonly inner: boolean },
  project: Project,
  context: DrawContext,
): LabelTexts {
  const at: XY = [corner.x, corner.y];
  const { display } = project;
  const paper = context.medium === "paper";
  const value = paper ? workInWords(corner, display) : outText(corner.wallAboveGround, display);
  const style = sizeOf("corner-value");
  const room = Math.max(textWidth(value, style, 600), textWidth("2′ 10⅝″ out", style, 600));
  const out = Math.atan2(direction[1], direction[0]);
  const around = (start: number, reach: number) =>
    turns.map((turn) => {
      const angle = start + turn;
      return labelAt(at, seenWay(angle, context.turn), reach, { name: corner.name, value });
    });
  // Between the two walls of an inner corner a label would drift off to another's ring: it may stand inside instead.
  const places = inner ? [around(out, 0), around(out + Math.PI, 0), around(out + Math.PI, 2)] : [];
  const candidates = [...places, ...reaches.map((reach) => around(out, reach))].flat();
  const wide = candidates.map((texts) => widened(texts, room));
  const chosen = placeLabel(context, "corners", wide, true);
  return candidates[wide.indexOf(chosen)] ?? [];
}

/** Rings with names and "10¾″ out", on paper "1′ 1″ of fill", at the corners. Cheap: redrawn on every frame of a floor drag. */
export function drawCorners(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("corners");
  const { building } = project;
  if (!building) return { id: "corners", marks: [] };
  const directions = cornerDirections(building.outline);
  const inner = innerCorners(building.outline);
  reserveLines(project, results, context);
  const marks = results.corners.flatMap((corner, i): DrawingMark[] => [
    { kind: "symbol", at: [corner.x, corner.y], symbol: "ring", size: cornerRing, style: "corner-ring" },
    ...cornerLabel(
      corner,
      { direction: directions[i] ?? [0, 1], inner: inner[i] ?? false },
      project,
      context,
    ),
  ]);
  return { id: "corners", marks };
}
