/**
 * Paints drawing marks with the 2D context of a canvas. Marks that follow each other in one style share one
 * path; what lies off the screen, and what is finer than a pixel, is left out.
 */
import type { AreaMark, DrawingMark, LineMark, MarkLayer, SymbolMark, TextMark } from "../../drawing/marks";
import { type Style, type StyleName, styles } from "../../drawing/styles";
import { symbolShapes } from "../../drawing/symbols";
import { type Palette, typeface } from "../../look/tokens";
import { pxPerMm } from "../screen";
import type { View } from "../view/view";

export interface Painting {
  readonly context: CanvasRenderingContext2D;
  readonly view: View;
  readonly palette: Palette;
}

type Flat = ArrayLike<number>;
/** Metres to pixels, as the numbers a loop needs: px = a x + c y + e, py = b x + d y + f. */
interface Projection {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly cx: number;
  readonly cy: number;
  readonly e: number;
  readonly f: number;
}

function projection(view: View): Projection {
  const c = Math.cos(view.angle) * view.scale;
  const s = Math.sin(view.angle) * view.scale;
  return {
    a: c,
    b: -s,
    c: -s,
    d: -c,
    cx: view.centre[0],
    cy: view.centre[1],
    e: view.width / 2,
    f: view.height / 2,
  };
}

const px = (p: Projection, x: number, y: number): number => (x - p.cx) * p.a + (y - p.cy) * p.c + p.e;
const py = (p: Projection, x: number, y: number): number => (x - p.cx) * p.b + (y - p.cy) * p.d + p.f;

export function paintLayers(painting: Painting, layers: readonly MarkLayer[]): void {
  for (const layer of layers) paintMarks(painting, layer.marks);
}

/** Paints marks in their order. */
export function paintMarks(painting: Painting, marks: readonly DrawingMark[]): void {
  const p = projection(painting.view);
  for (let i = 0; i < marks.length; ) {
    const end = sameRun(marks, i);
    const run = marks.slice(i, end);
    const style: Style = styles[(marks[i] as DrawingMark).style];
    painting.context.globalAlpha = style.opacity ?? 1;
    paintRun(painting, p, style, run);
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

function strokePath({ context, palette }: Painting, style: Style): void {
  if (!style.stroke) return;
  context.strokeStyle = palette[style.stroke];
  // Thinner than three quarters of a pixel looks grey and broken on a screen.
  context.lineWidth = Math.max(0.75, (style.width ?? 0.25) * pxPerMm);
  context.setLineDash((style.dash ?? []).map((mm) => mm * pxPerMm));
  context.lineJoin = "round";
  context.lineCap = "butt";
  context.stroke();
  if (style.dash) context.setLineDash([]);
}

/** Adds a run of places to the path, unless its box is off the screen. */
function tracePath(
  context: CanvasRenderingContext2D,
  view: View,
  p: Projection,
  points: Flat,
  closed: boolean,
): void {
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

/** World boxes of long runs, so that culling them costs nothing the second time. */
const boxes = new WeakMap<object, readonly [number, number, number, number]>();
const longRun = 64;

function boxOf(points: Flat): readonly [number, number, number, number] {
  const known = points.length >= longRun ? boxes.get(points) : undefined;
  if (known) return known;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i] as number;
    const y = points[i + 1] as number;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  const box = [minX, minY, maxX, maxY] as const;
  if (points.length >= longRun) boxes.set(points, box);
  return box;
}

/** Wider than any line or symbol, px. */
const rim = 24;

function isOffScreen(view: View, p: Projection, points: Flat): boolean {
  const [minX, minY, maxX, maxY] = boxOf(points);
  const mx = (minX + maxX) / 2;
  const my = (minY + maxY) / 2;
  const halfX = ((maxX - minX) * Math.abs(p.a) + (maxY - minY) * Math.abs(p.c)) / 2 + rim;
  const halfY = ((maxX - minX) * Math.abs(p.b) + (maxY - minY) * Math.abs(p.d)) / 2 + rim;
  const x = px(p, mx, my);
  const y = py(p, mx, my);
  return x + halfX < 0 || y + halfY < 0 || x - halfX > view.width || y - halfY > view.height;
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

// ---- symbols ------------------------------------------------------------------------------------------------

function paintSymbols(painting: Painting, p: Projection, style: Style, marks: readonly SymbolMark[]): void {
  const { context, view, palette } = painting;
  const shrink = crowdedSize(p, marks);
  let filled = false;
  context.beginPath();
  for (const mark of marks) {
    const x = px(p, mark.at[0], mark.at[1]);
    const y = py(p, mark.at[0], mark.at[1]);
    if (x < -rim || y < -rim || x > view.width + rim || y > view.height + rim) continue;
    const shape = symbolShapes[mark.symbol];
    filled ||= shape.filled;
    traceSymbol(context, shape, x, y, mark.size * pxPerMm * shrink, (mark.angle ?? 0) + view.angle);
  }
  if (filled && style.fill) {
    context.fillStyle = palette[style.fill];
    context.fill();
  }
  strokePath(painting, style);
}

/** So many symbols are one cloud of points; fewer are single things and keep their size. */
const cloud = 300;
/** Symbols of a cloud never shrink to less than this share. */
const smallest = 0.22;

/** Share of their size at which the symbols of a cloud don't cover each other: from their mean spacing. */
function crowdedSize(p: Projection, marks: readonly SymbolMark[]): number {
  if (marks.length < cloud) return 1;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { at } of marks) {
    if (at[0] < minX) minX = at[0];
    if (at[0] > maxX) maxX = at[0];
    if (at[1] < minY) minY = at[1];
    if (at[1] > maxY) maxY = at[1];
  }
  const area = (maxX - minX) * (maxY - minY) * (p.a * p.a + p.b * p.b);
  const spacing = Math.sqrt(area / marks.length);
  const size = (marks[0] as SymbolMark).size * pxPerMm;
  return Math.min(1, Math.max(smallest, spacing / (size * 1.4)));
}

function traceSymbol(
  context: CanvasRenderingContext2D,
  shape: (typeof symbolShapes)[SymbolMark["symbol"]],
  x: number,
  y: number,
  size: number,
  angle: number,
): void {
  const c = Math.cos(angle) * size;
  const s = Math.sin(angle) * size;
  for (const stroke of shape.strokes) {
    for (let i = 0; i + 1 < stroke.length; i += 2) {
      const u = stroke[i] as number;
      const v = stroke[i + 1] as number;
      const sx = x + u * c - v * s;
      const sy = y - (u * s + v * c);
      if (i === 0) context.moveTo(sx, sy);
      else context.lineTo(sx, sy);
    }
    if (shape.closed) context.closePath();
  }
}

// ---- text ---------------------------------------------------------------------------------------------------

const anchors = { start: "left", middle: "center", end: "right" } as const;

export function fontOf(style: Style): string {
  const size = ((style.size ?? 2.6) * pxPerMm).toFixed(2);
  return `${style.italic ? "italic " : ""}${style.weight ?? 400} ${size}px ${typeface}`;
}

function paintTexts(painting: Painting, p: Projection, style: Style, marks: readonly TextMark[]): void {
  const { context, palette } = painting;
  context.font = fontOf(style);
  context.textBaseline = "alphabetic";
  context.fillStyle = palette[style.fill ?? "ink"];
  context.strokeStyle = palette.sheet;
  context.lineWidth = 3.5;
  context.lineJoin = "round";
  for (const mark of marks) paintText(painting, p, mark);
}

function paintText({ context, view }: Painting, p: Projection, mark: TextMark): void {
  const x = px(p, mark.at[0], mark.at[1]);
  const y = py(p, mark.at[0], mark.at[1]);
  const room = 200;
  if (x < -room || y < -room || x > view.width + room || y > view.height + room) return;
  const angle = (mark.angle ?? 0) + view.angle;
  const right = (mark.shift?.[0] ?? 0) * pxPerMm;
  const up = (mark.shift?.[1] ?? 0) * pxPerMm;
  context.textAlign = anchors[mark.anchor ?? "start"];
  if (angle === 0) {
    if (mark.halo) context.strokeText(mark.text, x + right, y - up);
    context.fillText(mark.text, x + right, y - up);
    return;
  }
  context.save();
  context.translate(x, y);
  context.rotate(-angle);
  if (mark.halo) context.strokeText(mark.text, right, -up);
  context.fillText(mark.text, right, -up);
  context.restore();
}

export type { StyleName };
