/** Symbols of one style, all in one path. */
import type { SymbolMark } from "../../drawing/marks";
import type { Style } from "../../drawing/styles";
import { symbolShapes } from "../../drawing/symbols";
import { type Painting, strokePath } from "./painting";
import { type Projection, px, py, rim } from "./projection";

export function paintSymbols(
  painting: Painting,
  p: Projection,
  style: Style,
  marks: readonly SymbolMark[],
): void {
  const { context, view, palette, mm } = painting;
  const shrink = crowdedSize(p, marks, mm.signs);
  let filled = false;
  context.beginPath();
  for (const mark of marks) {
    const x = px(p, mark.at[0], mark.at[1]);
    const y = py(p, mark.at[0], mark.at[1]);
    if (x < -rim || y < -rim || x > view.width + rim || y > view.height + rim) continue;
    const shape = symbolShapes[mark.symbol];
    filled ||= shape.filled;
    traceSymbol(
      context,
      shape,
      x,
      y,
      mark.size * mm.signs * shrink,
      mark.angle === undefined ? 0 : mark.angle + view.angle,
    );
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
function crowdedSize(p: Projection, marks: readonly SymbolMark[], pxPerMm: number): number {
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
