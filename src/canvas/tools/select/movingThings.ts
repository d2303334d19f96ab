/**
 * Selected things under the hand, as one stiff piece: they move along the plan's axes, the walls' and the lot's
 * directions, in round steps. Held by one of their own places, that place snaps. With Alt a copy moves instead.
 */
import { arrangeEdits, type EditCommand, type Point, type Project, thingShape } from "../../../document";
import { distance } from "../../../geometry";
import type { Selected } from "../../../store/state";
import { includesThing } from "../../select/hit";
import { type SnapTargets, snapDirections, snapTargets } from "../../snap/targets";
import { aim, snapPixels, withTyped } from "../aim";
import { floating, lengthWords } from "../liveMarks";
import type { PlanPointer, ToolContext, ToolStart, ToolState } from "../tool";
import { startDrag } from "./dragging";
import { thingWord } from "./thingWord";

interface MoveArgs {
  readonly things: readonly Selected[];
  readonly by: Point;
}

export function movingThings(
  context: ToolContext,
  things: readonly Selected[],
  start: PlanPointer,
  pointer: PlanPointer,
  home: ToolStart,
): ToolState {
  const project = context.project();
  const held = heldPlace(context, things, start);
  const from = held ?? start.at;
  // Held anywhere else, the place under the hand means nothing, so only directions count.
  const targets: SnapTargets = held
    ? snapTargets(project, (thing) => includesThing(things, thing))
    : { points: [], edges: [], circles: [], directions: snapDirections(project) };
  const copies = start.copies;
  const command: EditCommand<MoveArgs> = copies ? arrangeEdits.duplicateThings : arrangeEdits.moveThings;
  return startDrag(
    context,
    {
      name: copies ? "copyingThings" : "movingThings",
      hint: `${copies ? "Places a copy of" : "Moves"} ${whatWords(context.project(), things)}; type a distance, Tab, a bearing (clockwise from north); hold Shift to move freely`,
      cursor: "move",
      fields: [
        { name: "length", kind: "length" },
        { name: "bearing", kind: "bearing" },
      ],
      command,
      at(now, typed) {
        const aimed = withTyped(aim(context, now, { from, targets }), from, typed, project.lot.north);
        const by: Point = [aimed.at[0] - from[0], aimed.at[1] - from[1]];
        const size = lengthWords(distance(from, aimed.at), project);
        return {
          args: { things, by },
          marks: [
            { kind: "line", points: [...from, ...aimed.at], style: "preview" },
            floating(aimed.at, `${copies ? "copy" : "moved"} ${size}${shotWords(things, copies)}`),
          ],
          snap: aimed,
        };
      },
      dropped(before, after) {
        if (copies) context.select(arrangeEdits.copiedThings(before, after));
      },
    },
    pointer,
    home,
  );
}

function whatWords(project: Project, things: readonly Selected[]): string {
  const [only] = things;
  return only && things.length === 1 ? `the ${thingWord(project, only)}` : `${things.length} things`;
}

/** Ground that was read is never moved in silence. */
function shotWords(things: readonly Selected[], copies: boolean): string {
  const shots = things.filter(({ kind }) => kind === "shot").length;
  if (shots === 0 || copies || things.length === 1) return "";
  return `, ${shots === 1 ? "one shot" : `${shots} shots`} with them`;
}

/** The place of the things that they are held by; null where the hand is on none. */
function heldPlace(context: ToolContext, things: readonly Selected[], start: PlanPointer): Point | null {
  const reach = (start.touch ? snapPixels.touch : snapPixels.mouse) / context.view().scale;
  let best: Point | null = null;
  let bestDistance = reach;
  for (const thing of things) {
    for (const at of thingShape(context.project(), thing)?.points ?? []) {
      const off = distance(at, start.at);
      if (off < bestDistance) [best, bestDistance] = [at, off];
    }
  }
  return best;
}
