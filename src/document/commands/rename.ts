/** Gives any thing another name; a note's name is its words. */
import type { Project } from "../schema";
import type { Thing } from "../thing";
import { hasThing, kindWord, thingKindWord } from "../things";
import { changeBreakline } from "./breaklines";
import { changeBuilding, changeDoor } from "./building";
import { command, type Edit, refuse } from "./command";
import { changeNote, changeSection, changeUnderlay } from "./drawing";
import { renameShape } from "./grading";
import { changePit } from "./pits";
import { changeDrive, changeFeature, changeSwale } from "./site";
import { changeMark, changeShot } from "./survey";
import { changeWindow } from "./windows";

/** Has the thing a name of its own? */
export function canRename(thing: Thing): boolean {
  return thing.kind !== "lot" && thing.kind !== "dimension";
}

export const renameThing = command("thing.rename", (project, args: { thing: Thing; name: string }): Edit => {
  const { thing } = args;
  const name = args.name.trim();
  if (!canRename(thing)) return refuse(`A ${kindWord(thing.kind)} has no name of its own.`);
  if (!hasThing(project, thing)) return refuse(`That ${kindWord(thing.kind)} is gone.`);
  // A shot or a feature may go without a name: its number or its kind says enough.
  if (name === "" && thing.kind !== "shot" && thing.kind !== "feature")
    return refuse(`A ${kindWord(thing.kind)} needs a name.`);
  const edit = renamed(project, thing, name);
  return edit.ok
    ? { ok: true, project: edit.project, label: `rename ${thingKindWord(project, thing)}` }
    : edit;
});

function renamed(project: Project, thing: Thing, name: string): Edit {
  const patch = { name };
  switch (thing.kind) {
    case "building":
      return changeBuilding.run(project, { patch });
    case "door":
      return changeDoor.run(project, { id: thing.id, patch });
    case "window":
      return changeWindow.run(project, { id: thing.id, patch });
    case "drive":
      return changeDrive.run(project, { id: thing.id, patch });
    case "swale":
      return changeSwale.run(project, { id: thing.id, patch });
    case "pad":
    case "berm":
    case "retaining-wall":
    case "grade-point":
      return renameShape(project, thing, name);
    case "breakline":
      return changeBreakline.run(project, { id: thing.id, patch });
    case "pit":
      return changePit.run(project, { id: thing.id, patch });
    case "feature":
      return changeFeature.run(project, { id: thing.id, patch });
    case "mark":
      return changeMark.run(project, { id: thing.id, patch });
    case "shot":
      return changeShot.run(project, { id: thing.id, patch });
    case "section":
      return changeSection.run(project, { id: thing.id, patch });
    case "underlay":
      return changeUnderlay.run(project, { id: thing.id, patch });
    case "note":
      return changeNote.run(project, { id: thing.id, patch: { text: name } });
    default:
      return refuse("It has no name of its own.");
  }
}
