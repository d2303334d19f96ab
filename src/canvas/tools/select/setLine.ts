/** One edit for the places of a lot, a drive, a swale, a feature or a section line, so that one drag serves them all. */
import {
  drawingEdits,
  type Edit,
  type EditCommand,
  gradingEdits,
  type Point,
  type Project,
  siteEdits,
  surveyEdits,
  thingKindWord,
} from "../../../document";
import { type LineRef, linePoints, type ShapeKind } from "../../select/handles";

interface LineArgs {
  readonly line: LineRef;
  readonly points: readonly Point[];
  readonly what: string;
  /** The end of a drive was moved: the door it now ends at, or null. */
  readonly door?: string | null;
}

export const setLine: EditCommand<LineArgs> = {
  name: "line.set",
  run(project: Project, args: LineArgs): Edit {
    const points = args.points.map(([x, y]): Point => [x, y]);
    if (args.line.kind === "lot") {
      const edit = siteEdits.setLotOutline.run(project, { outline: points });
      return edit.ok ? { ...edit, label: args.what } : edit;
    }
    if (args.line.kind === "swale")
      return siteEdits.changeSwale.run(project, {
        id: args.line.id,
        patch: { line: points },
        what: args.what,
      });
    if (isShape(args.line))
      return gradingEdits.setShapePlaces.run(project, { thing: args.line, points, what: args.what });
    if (args.line.kind === "breakline")
      return surveyEdits.setBreaklinePlaces.run(project, { id: args.line.id, points, what: args.what });
    if (args.line.kind === "feature") {
      const edit = siteEdits.changeFeature.run(project, { id: args.line.id, patch: { points } });
      return edit.ok ? { ...edit, label: args.what } : edit;
    }
    if (args.line.kind === "section") {
      const [a, b] = points as [Point, Point];
      return drawingEdits.changeSection.run(project, {
        id: args.line.id,
        patch: { line: [a, b] },
        what: args.what,
      });
    }
    const patch = args.door === undefined ? { line: points } : { line: points, door: args.door };
    return siteEdits.changeDrive.run(project, { id: args.line.id, patch, what: args.what });
  },
};

function isShape(line: LineRef): line is { kind: ShapeKind; id: string } {
  return line.kind === "pad" || line.kind === "berm" || line.kind === "retaining-wall";
}

/** Points a line needs to stay one. */
export function leastPoints(project: Project, line: LineRef): number {
  return linePoints(project, line).closed ? 3 : 2;
}

export function lineWord(project: Project, line: LineRef): string {
  return `the ${thingKindWord(project, line)}`;
}
