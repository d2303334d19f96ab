/** Paints drawing marks with a pen, at a true scale. */
import { asRead } from "../drawing";
import type { AreaMark, DrawingMark, LineMark, SymbolMark, TextMark, XY } from "../drawing/marks";
import { type Style, styles } from "../drawing/styles";
import { symbolShapes } from "../drawing/symbols";
import { tint } from "./inks";
import type { Rect } from "./papers";
import type { Pen, Stroke } from "./pen";

/** How plan metres come to lie on the page. */
export interface Projection {
  readonly mmPerMetre: number;
  /** Plan place that lies at the page place (mm from the top left). */
  readonly plan: XY;
  readonly page: XY;
  /** The plan lies turned by this on the page, radians counter-clockwise. */
  readonly turn: number;
}

/** Page place of a plan place, mm. */
export function onPage(projection: Projection, x: number, y: number): [number, number] {
  const { mmPerMetre, plan, page, turn } = projection;
  const [c, s] = [Math.cos(turn) * mmPerMetre, Math.sin(turn) * mmPerMetre];
  const [dx, dy] = [x - plan[0], y - plan[1]];
  return [page[0] + dx * c - dy * s, page[1] - (dx * s + dy * c)];
}

/** Puts the middle of the bounds (of the plan as it is turned) on the middle of a rectangle. */
export function centred(
  bounds: { minX: number; minY: number; maxX: number; maxY: number },
  rect: Rect,
  ratio: number,
  turn = 0,
): Projection {
  const [u, v] = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return {
    mmPerMetre: 1000 / ratio,
    plan: [u * c + v * s, v * c - u * s],
    page: [rect.x + rect.width / 2, rect.y + rect.height / 2],
    turn,
  };
}

function placed(points: ArrayLike<number>, projection: Projection): number[] {
  const out: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    out.push(...onPage(projection, points[i] ?? 0, points[i + 1] ?? 0));
  }
  return out;
}

function strokeOf(style: Style): Stroke | undefined {
  if (!style.stroke || style.width === undefined) return undefined;
  const stroke = { colour: tint(style.stroke, style.opacity ?? 1), width: style.width };
  return style.dash ? { ...stroke, dash: style.dash } : stroke;
}

function paintLine(pen: Pen, mark: LineMark, projection: Projection): void {
  const stroke = strokeOf(styles[mark.style]);
  if (stroke) pen.line(placed(mark.points, projection), stroke, mark.closed);
}

/** Parallel lines over an upright rectangle; their phase is fixed to the page, so that neighbours join. */
export function hatchLines(
  box: { minX: number; minY: number; maxX: number; maxY: number },
  angle: number,
  spacing: number,
): [number, number, number, number][] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const corners = [
    [box.minX, box.minY],
    [box.maxX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
  ] as const;
  const across = corners.map(([x, y]) => -s * x + c * y);
  const alongs = corners.map(([x, y]) => c * x + s * y);
  const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
  const lines: [number, number, number, number][] = [];
  const last = Math.floor(Math.max(...across) / spacing);
  for (let k = Math.ceil(Math.min(...across) / spacing); k <= last; k++) {
    const d = k * spacing;
    lines.push([c * from - s * d, s * from + c * d, c * to - s * d, s * to + c * d]);
  }
  return lines;
}

function boxOf(rings: readonly (readonly number[])[]) {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      box.minX = Math.min(box.minX, ring[i] ?? 0);
      box.maxX = Math.max(box.maxX, ring[i] ?? 0);
      box.minY = Math.min(box.minY, ring[i + 1] ?? 0);
      box.maxY = Math.max(box.maxY, ring[i + 1] ?? 0);
    }
  }
  return box;
}

/** Fills, strokes or hatches rings already on the page. */
export function paintRings(pen: Pen, rings: readonly (readonly number[])[], style: Style): void {
  const drawn = rings.filter((ring) => ring.length >= 6);
  if (drawn.length === 0) return;
  const stroke = strokeOf(style);
  if (style.hatch && stroke) {
    // The page's y runs down, the style's angle is seen with y up.
    const lines = hatchLines(boxOf(drawn), (-style.hatch.angle * Math.PI) / 180, style.hatch.spacing);
    pen.clipped(drawn, () => pen.segments(lines, stroke));
    return;
  }
  if (style.fill) pen.area(drawn, tint(style.fill, style.opacity ?? 1), stroke);
  else if (stroke) for (const ring of drawn) pen.line(ring, stroke, true);
}

function paintArea(pen: Pen, mark: AreaMark, projection: Projection): void {
  paintRings(
    pen,
    mark.rings.map((ring) => placed(ring, projection)),
    styles[mark.style],
  );
}

/** Draws a symbol about a page place. */
export function paintSymbol(pen: Pen, mark: Omit<SymbolMark, "at">, [x, y]: XY): void {
  const style: Style = styles[mark.style];
  const shape = symbolShapes[mark.symbol];
  const c = Math.cos(mark.angle ?? 0) * mark.size;
  const s = Math.sin(mark.angle ?? 0) * mark.size;
  const stroke = strokeOf(style);
  for (const run of shape.strokes) {
    const points: number[] = [];
    for (let i = 0; i + 1 < run.length; i += 2) {
      const [u, v] = [run[i] ?? 0, run[i + 1] ?? 0];
      points.push(x + u * c - v * s, y - (u * s + v * c));
    }
    if (shape.filled && style.fill) pen.area([points], tint(style.fill, style.opacity ?? 1), stroke);
    else if (stroke) pen.line(points, stroke, shape.closed);
  }
}

/** Paper cleared round the letters of a text, mm: their shape alone, so that a wall or ring beside them stays whole. */
const halo = 0.45;

function paintText(pen: Pen, written: TextMark, projection: Projection): void {
  const mark = asRead(written, projection.turn);
  const { size = 2.6, weight = 400, fill = "ink" } = styles[mark.style];
  const angle = mark.angle === undefined ? 0 : -(mark.angle + projection.turn);
  const [right, up] = mark.shift ?? [0, 0];
  const [px, py] = onPage(projection, mark.at[0], mark.at[1]);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const x = px + right * c + up * s;
  const y = py + right * s - up * c;
  const anchor = mark.anchor ?? "start";
  const look = { size, weight, colour: tint(fill, 1), anchor, angle };
  pen.text(mark.text, x, y, mark.halo ? { ...look, halo } : look);
}

/** A symbol with a direction turns with the plan. */
function asSeen(mark: SymbolMark, { turn }: Projection): SymbolMark {
  return mark.angle === undefined ? mark : { ...mark, angle: mark.angle + turn };
}

/** Paints one mark. Texts with a halo clear the paper behind them first. */
export function paintMark(pen: Pen, mark: DrawingMark, projection: Projection): void {
  if (mark.kind === "line") paintLine(pen, mark, projection);
  else if (mark.kind === "area") paintArea(pen, mark, projection);
  else if (mark.kind === "symbol")
    paintSymbol(pen, asSeen(mark, projection), onPage(projection, mark.at[0], mark.at[1]));
  else paintText(pen, mark, projection);
}
