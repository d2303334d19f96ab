/** One edit for the places of a lot, a drive or a swale, so that one drag serves all three. */
import { type Edit, type EditCommand, type Point, type Project, siteEdits } from "../../../document";
import type { LineRef } from "../../select/handles";

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
    const patch = args.door === undefined ? { line: points } : { line: points, door: args.door };
    return siteEdits.changeDrive.run(project, { id: args.line.id, patch, what: args.what });
  },
};

/** Points a line needs to stay one. */
export function leastPoints(line: LineRef): number {
  return line.kind === "lot" ? 3 : 2;
}

export function lineWord(line: LineRef): string {
  return line.kind === "lot" ? "the lot" : `the ${line.kind}`;
}
