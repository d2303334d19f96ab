/** Which corners the tapes say to move, and which way: an arrow of one size at each, with how far; the panel tells it along the sides. */
import type { Project } from "../document/schema";
import { LEAST_MOVE } from "../plot";
import type { Results } from "../solve/results";
import { besidePoint } from "./beside";
import { type DrawContext, placeLabel } from "./context";
import type { DrawingMark, MarkLayer, XY } from "./marks";
import { reserveLines } from "./reserve";
import { lengthText } from "./words";

const group = "squaring";
/** Length of the arrow, and from the corner to its tail, mm. */
const arrow = 6;
const gap = 2;

/** Only on screen: the arrows say what is to be mended on the ground, the sheet says what is to be built. */
export function drawSquaring(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  const { moves } = results.plot;
  if (context.medium === "paper" || moves.length === 0) return { id: "squaring", marks: [] };
  reserveLines(project, results, context);
  const marks = moves.flatMap((move): DrawingMark[] => {
    const { at, way } = move;
    if (move.distance < LEAST_MOVE) return [];
    const angle = Math.atan2(way[1], way[0]);
    const out = (gap + arrow / 2) * context.metresPerMm;
    const middle: XY = [at[0] + out * Math.cos(angle), at[1] + out * Math.sin(angle)];
    const text = lengthText(move.distance, project.display);
    const label = placeLabel(context, group, besidePoint(middle, text, "move-label", arrow), "over-lines");
    return [{ kind: "symbol", at: middle, symbol: "arrow", size: arrow, angle, style: "move" }, ...label];
  });
  return { id: "squaring", marks };
}
