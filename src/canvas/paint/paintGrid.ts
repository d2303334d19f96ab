/** Paints the grid: two paths, thin and less thin, behind everything. */
import type { LengthNotation } from "../../units";
import { gridLines, gridStep, isTooFine } from "../view/grid";
import { seenBounds } from "../view/view";
import type { Painting } from "./painting";
import { projection, px, py } from "./projection";

export function paintGrid(
  { context, view, palette }: Painting,
  notation: LengthNotation,
  strength: number,
): void {
  const { step, heavyEvery } = gridStep(notation, view.scale);
  const seen = seenBounds(view);
  if (isTooFine(step, seen)) return;
  const p = projection(view);
  const line = (x0: number, y0: number, x1: number, y1: number) => {
    context.moveTo(px(p, x0, y0), py(p, x0, y0));
    context.lineTo(px(p, x1, y1), py(p, x1, y1));
  };
  const trace = (heavy: boolean) => {
    context.beginPath();
    const [i0, i1] = gridLines(step, seen.minX, seen.maxX);
    for (let i = i0; i <= i1; i++)
      if ((i % heavyEvery === 0) === heavy) line(i * step, seen.minY, i * step, seen.maxY);
    const [j0, j1] = gridLines(step, seen.minY, seen.maxY);
    for (let j = j0; j <= j1; j++)
      if ((j % heavyEvery === 0) === heavy) line(seen.minX, j * step, seen.maxX, j * step);
  };
  context.save();
  context.setLineDash([]);
  context.strokeStyle = palette.rule;
  for (const heavy of [false, true]) {
    context.globalAlpha = strength * (heavy ? 1 : 0.6);
    context.lineWidth = heavy ? 1.2 : 0.75;
    trace(heavy);
    context.stroke();
  }
  context.restore();
}
