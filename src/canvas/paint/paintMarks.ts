/**
 * Paints drawing marks with the 2D context of a canvas. Marks that follow each other in one style share one
 * path; what lies off the screen, and what is finer than a pixel, is left out.
 */
import { asRead } from "../../drawing";
import type { AreaMark, DrawingMark, LineMark, SymbolMark, TextMark } from "../../drawing/marks";
import { type Style, styles } from "../../drawing/styles";
import { typeface } from "../../look/tokens";
import { pxPerMm } from "../screen";
import type { View } from "../view/view";
import { type Painting, strokePath } from "./painting";
import { paintSymbols } from "./paintSymbols";
import { type Flat, isOffScreen, type Projection, projection, px, py } from "./projection";

/** Paints marks in their order. */
export function paintMarks(painting: Painting, marks: readonly DrawingMark[]): void {
  const p = projection(painting.view);
  for (let i = 0; i < marks.length; ) {
    const end = sameRun(marks, i);
    const style: Style = styles[(marks[i] as DrawingMark).style];
    painting.context.globalAlpha = (style.opacity ?? 1) * (painting.strength ?? 1);
    const path = marks[i]?.kind === "line" ? keptPath(painting.view, p, marks, i, end) : null;
    if (path) strokePath(painting, style, path);
    else paintRun(painting, p, style, marks.slice(i, end));
    i = end;
  }
  painting.context.globalAlpha = 1;
}

/** Index after the marks that share the kind and style of mark i. Areas with a hatch stay single. */
function sameRun(marks: readonly DrawingMark[], i: number): number {
  const { kind, style } = marks[i] as DrawingMark;
  let end = i + 1;
  while (end < marks.length && marks[end]?.kind === kind && marks[end]?.style === style) end++;
  return end;
}

function paintRun(painting: Painting, p: Projection, style: Style, run: readonly DrawingMark[]): void {
  switch (run[0]?.kind) {
    case "line":
      paintLines(painting, p, style, run as LineMark[]);
      break;
    case "area":
      for (const mark of run as AreaMark[]) paintArea(painting, p, style, mark);
      break;
    case "symbol":
      paintSymbols(painting, p, style, run as SymbolMark[]);
      break;
    case "text":
      paintTexts(painting, p, style, run as TextMark[]);
      break;
  }
}

// ---- paths that stay --------------------------------------------------------------------------------------------

/** Paths of a list of marks in the view that it was last painted in, by the index of their first mark. */
interface KeptPaths {
  view: View;
  readonly paths: Map<number, Path2D | null>;
}

const keptPaths = new WeakMap<readonly DrawingMark[], KeptPaths>();

/** Tracing fewer places than this costs less than asking for a path, and is done anew. */
const longPath = 128;

/**
 * The path of a run of lines that was painted in this view before: contours stay while the floor moves over them. Null where
 * it is the first time, where the run is short, and where paths can't be kept.
 */
function keptPath(
  view: View,
  p: Projection,
  marks: readonly DrawingMark[],
  from: number,
  end: number,
): Path2D | null {
  if (typeof Path2D === "undefined") return null;
  const kept = keptPaths.get(marks);
  if (kept?.view !== view) {
    keptPaths.set(marks, { view, paths: new Map() });
    return null;
  }
  const known = kept.paths.get(from);
  if (known !== undefined) return known;
  const run = marks.slice(from, end) as LineMark[];
  const isLong = run.reduce((sum, { points }) => sum + points.length / 2, 0) >= longPath;
  const path = isLong ? new Path2D() : null;
  if (path) for (const mark of run) tracePath(path, view, p, mark.points, mark.closed ?? false);
  kept.paths.set(from, path);
  return path;
}

// ---- lines and areas ----------------------------------------------------------------------------------------

function paintLines(painting: Painting, p: Projection, style: Style, marks: readonly LineMark[]): void {
  const { context } = painting;
  context.beginPath();
  for (const mark of marks) tracePath(context, painting.view, p, mark.points, mark.closed ?? false);
  strokePath(painting, style);
}

function paintArea(painting: Painting, p: Projection, style: Style, mark: AreaMark): void {
  const { context, palette } = painting;
  context.beginPath();
  for (const ring of mark.rings) tracePath(context, painting.view, p, ring, true);
  if (style.fill) {
    context.fillStyle = palette[style.fill];
    context.fill("evenodd");
  }
  if (style.hatch) hatchPath(painting, p, style, mark);
  else if (style.stroke) strokePath(painting, style);
}

/** Adds a run of places to the path, unless its box is off the screen. */
function tracePath(context: CanvasPath, view: View, p: Projection, points: Flat, closed: boolean): void {
  if (points.length < 4 || isOffScreen(view, p, points)) return;
  let lastX = px(p, points[0] as number, points[1] as number);
  let lastY = py(p, points[0] as number, points[1] as number);
  context.moveTo(lastX, lastY);
  const last = points.length - 2;
  for (let i = 2; i <= last; i += 2) {
    const x = px(p, points[i] as number, points[i + 1] as number);
    const y = py(p, points[i] as number, points[i + 1] as number);
    if (i < last && Math.abs(x - lastX) + Math.abs(y - lastY) < 0.7) continue;
    context.lineTo(x, y);
    lastX = x;
    lastY = y;
  }
  if (closed) context.closePath();
}

/** Parallel lines inside the path that was just traced. They hang on the plan, so they pan along with it. */
function hatchPath(painting: Painting, p: Projection, style: Style, mark: AreaMark): void {
  const { context, view } = painting;
  const { hatch } = style;
  if (!hatch) return;
  const box = screenBox(view, p, mark);
  if (!box) return;
  const spacing = hatch.spacing * pxPerMm;
  const angle = -((hatch.angle * Math.PI) / 180 + view.angle);
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const [x0, y0, x1, y1] = box;
  const across = [x0, x1].flatMap((x) => [y0, y1].map((y) => -x * uy + y * ux));
  const along = [x0, x1].flatMap((x) => [y0, y1].map((y) => x * ux + y * uy));
  const phase = -px(p, 0, 0) * uy + py(p, 0, 0) * ux;
  const first = Math.ceil((Math.min(...across) - phase) / spacing);
  const last = Math.floor((Math.max(...across) - phase) / spacing);
  const [from, to] = [Math.min(...along), Math.max(...along)];
  context.save();
  context.clip("evenodd");
  context.beginPath();
  for (let k = first; k <= last; k++) {
    const n = phase + k * spacing;
    context.moveTo(ux * from - uy * n, uy * from + ux * n);
    context.lineTo(ux * to - uy * n, uy * to + ux * n);
  }
  strokePath(painting, style);
  context.restore();
}

/** Part of the screen that an area covers, or null. */
function screenBox(view: View, p: Projection, mark: AreaMark): [number, number, number, number] | null {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of mark.rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const x = px(p, ring[i] as number, ring[i + 1] as number);
      const y = py(p, ring[i] as number, ring[i + 1] as number);
      x0 = Math.min(x0, x);
      x1 = Math.max(x1, x);
      y0 = Math.min(y0, y);
      y1 = Math.max(y1, y);
    }
  }
  x0 = Math.max(0, x0);
  y0 = Math.max(0, y0);
  x1 = Math.min(view.width, x1);
  y1 = Math.min(view.height, y1);
  return x0 < x1 && y0 < y1 ? [x0, y0, x1, y1] : null;
}

// ---- text ---------------------------------------------------------------------------------------------------

const anchors = { start: "left", middle: "center", end: "right" } as const;

/** `pxPerMm` is that of words. */
export function fontOf(style: Style, pxPerMm: number): string {
  const size = ((style.size ?? 2.6) * pxPerMm).toFixed(2);
  return `${style.italic ? "italic " : ""}${style.weight ?? 400} ${size}px ${typeface}`;
}

function paintTexts(painting: Painting, p: Projection, style: Style, marks: readonly TextMark[]): void {
  const { context, palette, mm } = painting;
  context.globalAlpha *= painting.textStrength ?? 1;
  context.font = fontOf(style, mm.words);
  context.textBaseline = "alphabetic";
  context.fillStyle = palette[style.fill ?? "ink"];
  context.strokeStyle = palette.sheet;
  context.lineWidth = 3.5;
  context.lineJoin = "round";
  for (const mark of marks) paintText(painting, p, mark);
}

function paintText({ context, view, mm }: Painting, p: Projection, written: TextMark): void {
  const mark = asRead(written, view.angle);
  const x = px(p, mark.at[0], mark.at[1]);
  const y = py(p, mark.at[0], mark.at[1]);
  const room = 300;
  if (x < -room || y < -room || x > view.width + room || y > view.height + room) return;
  const angle = mark.angle === undefined ? 0 : mark.angle + view.angle;
  const right = (mark.shift?.[0] ?? 0) * mm.words;
  const up = (mark.shift?.[1] ?? 0) * mm.words;
  context.textAlign = anchors[mark.anchor ?? "start"];
  if (angle === 0) {
    if (mark.halo) context.strokeText(mark.text, x + right, y - up);
    context.fillText(mark.text, x + right, y - up);
    return;
  }
  context.save();
  // Else a slanted text keeps the whole pixels of a level one, and its spaces close.
  context.textRendering = "geometricPrecision";
  context.translate(x, y);
  context.rotate(-angle);
  if (mark.halo) context.strokeText(mark.text, right, -up);
  context.fillText(mark.text, right, -up);
  context.restore();
}
