/** A corner under the hand: its two walls move along and keep their directions; Shift moves the corner alone. */
import { buildingEdits, type Point, type Project } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import { distance } from "../../../geometry";
import { cornerName, wallEnds, wallName } from "../../select/places";
import { moveCorner, pullCorner } from "../../select/shape";
import type { Snap } from "../../snap/snap";
import { handStep, roundTo } from "../../snap/step";
import { type SnapDirection, snapTargets } from "../../snap/targets";
import { aim, aimCornerBetween } from "../aim";
import { alongPiece, floating, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";
import { skews } from "./pullingWall";

export function pullingCorner(
  context: ToolContext,
  corner: number,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const project = context.project();
  const outline = project.building?.outline ?? [];
  const targets = { ...snapTargets(project, ({ kind }) => kind === "building"), directions: [] };
  return startDrag(
    context,
    {
      name: "pullingCorner",
      hint: `Pulls corner ${cornerName(corner)}, right angles stay; hold Shift or Alt to move this corner alone`,
      cursor: "move",
      command: buildingEdits.setOutline,
      at(now) {
        const aimed = aim(context, now, { targets });
        if (now.free || skews(context, now)) {
          const alone = now.free ? null : straightWalls(context, outline, corner, now);
          const moved = moveCorner(outline, corner, alone?.at ?? now.at);
          return {
            args: { outline: moved, what: "move a corner" },
            marks: cornerMarks(project, moved, corner),
            snap: alone?.word ? alone : null,
          };
        }
        const to = aimed.word === null ? roundSides(context, outline, corner, now.at) : aimed.at;
        const pulled = pullCorner(outline, corner, to);
        if (!pulled) return null;
        const snap: Snap | null = aimed.word === null ? null : aimed;
        return {
          args: { outline: pulled, what: "pull a corner" },
          marks: cornerMarks(project, pulled, corner),
          snap,
        };
      },
    },
    pointer,
    home,
  );
}

/** Where a corner that moves alone was meant: its two walls are pulled straight, or along and square to the others. */
function straightWalls(
  context: ToolContext,
  outline: readonly Point[],
  corner: number,
  pointer: PlanPointer,
): Snap {
  const n = outline.length;
  const lot = snapTargets(context.project(), ({ kind }) => kind === "building");
  const own = outline.flatMap((a, wall): SnapDirection[] => {
    const b = outline[(wall + 1) % n];
    if (!b || wall === corner || (wall + 1) % n === corner) return [];
    return [{ angle: Math.atan2(b[1] - a[1], b[0] - a[0]), of: `wall ${wallName(outline, wall)}` }];
  });
  const [before, after] = [outline[(corner + n - 1) % n], outline[(corner + 1) % n]];
  const targets = { ...lot, directions: [...own, ...lot.directions] };
  if (!before || !after) return aim(context, pointer, { targets });
  return aimCornerBetween(context, pointer, [before, after], { targets });
}

/** The place near the pointer at which both walls of the corner have round lengths. */
function roundSides(context: ToolContext, outline: readonly Point[], corner: number, at: Point): Point {
  const n = outline.length;
  const [before, after] = [wallEnds(outline, (corner + n - 1) % n), wallEnds(outline, corner)];
  if (!before || !after) return at;
  const step = handStep(context.project().display.length, context.view().scale);
  const from = after[0];
  let [x, y] = from;
  // Each wall of the corner grows in its own direction, away from its far end.
  for (const far of [before[0], after[1]]) {
    const length = distance(far, from);
    if (length === 0) return at;
    const u: Point = [(from[0] - far[0]) / length, (from[1] - far[1]) / length];
    const grown = (at[0] - from[0]) * u[0] + (at[1] - from[1]) * u[1];
    const round = roundTo(length + grown, step) - length;
    x += u[0] * round;
    y += u[1] * round;
  }
  return [x, y];
}

function cornerMarks(project: Project, outline: readonly Point[], corner: number): DrawingMark[] {
  const n = outline.length;
  const sides = [corner, (corner + n - 1) % n].flatMap((wall): DrawingMark[] => {
    const ends = wallEnds(outline, wall);
    return ends ? [alongPiece(ends[0], ends[1], lengthWords(distance(ends[0], ends[1]), project))] : [];
  });
  const [a, b, c, d] = outline;
  const at = outline[corner];
  if (n !== 4 || !a || !b || !c || !d || !at) return sides;
  const [one, two] = [lengthWords(distance(a, c), project), lengthWords(distance(b, d), project)];
  const text = one === two ? `diagonals ${one}` : `diagonals ${one} and ${two}`;
  return [...sides, floating(at, text, [5, 5])];
}
