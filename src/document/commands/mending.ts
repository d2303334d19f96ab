/** Edits that mend what a person is asked about: a shot, the foundation, the side slopes. */
import { formatLength, parseLength, roundingFor } from "../../units";
import type { ApronSide, Foundation, Grading, Measure, Point, Project, Shot } from "../schema";
import { command, done, type Edit, refuse, replaced } from "./command";
import { changeFoundation } from "./foundation";
import { addRetainingWall, changeApronSide } from "./grading";
import { lookAgain, removeBump, reportBump } from "./instruments";
import { changeDrainage, changeSlopes, type DrainageChange } from "./site";

/** One edit of a one-click mend, by the name of its command. */
export type FixEdit =
  | { readonly command: "survey.correctReading"; readonly args: { readonly id: string; readonly m: number } }
  | { readonly command: "survey.acceptShot"; readonly args: { readonly id: string } }
  | { readonly command: "survey.setAside"; readonly args: { readonly id: string; readonly aside: boolean } }
  | {
      readonly command: "survey.reportBump";
      readonly args: { readonly check: string; readonly from: string | null };
    }
  | {
      readonly command: "survey.removeBump";
      readonly args: { readonly setup: string; readonly check: string };
    }
  | { readonly command: "survey.lookAgain"; readonly args: { readonly shots: readonly string[] } }
  | {
      readonly command: "building.changeFoundation";
      readonly args: { readonly patch: Partial<Foundation> };
    }
  | {
      readonly command: "grading.changeSlopes";
      readonly args: { readonly patch: Partial<Grading["slopes"]> };
    }
  | {
      readonly command: "grading.changeSide";
      readonly args: { readonly wall: number; readonly patch: Partial<Omit<ApronSide, "wall">> };
    }
  | { readonly command: "drainage.change"; readonly args: DrainageChange }
  | { readonly command: "retainingWall.add"; readonly args: { readonly line: readonly Point[] } };

function withShot(project: Project, id: string, change: (shot: Shot) => Shot, label: string): Edit {
  const shots = replaced(project.survey.shots, id, change);
  return shots
    ? done({ ...project, survey: { ...project.survey, shots } }, label)
    : refuse("That shot is gone.");
}

/** Puts a reading of so many metres, written as the readings' column writes it. */
export const correctReading = command("survey.correctReading", (project, args: { id: string; m: number }) =>
  withShot(
    project,
    args.id,
    (shot) => ({ ...shot, reading: written(args.m, project), accepted: false }),
    "mend a reading",
  ),
);

export const acceptShot = command("survey.acceptShot", (project, args: { id: string }) =>
  withShot(project, args.id, (shot) => ({ ...shot, accepted: true }), "accept a shot"),
);

export const setAside = command("survey.setAside", (project, args: { id: string; aside: boolean }) =>
  withShot(
    project,
    args.id,
    (shot) => ({ ...shot, aside: args.aside }),
    args.aside ? "set a shot aside" : "take a shot back",
  ),
);

/** All edits of a mend as one; refused as a whole where one of them is. */
export function applyFix(
  project: Project,
  fix: { readonly words: string; readonly edits: readonly FixEdit[] },
): Edit {
  let now = project;
  for (const edit of fix.edits) {
    const next = runFix(now, edit);
    if (!next.ok) return next;
    now = next.project;
  }
  return done(now, fix.words.charAt(0).toLowerCase() + fix.words.slice(1));
}

function runFix(project: Project, edit: FixEdit): Edit {
  switch (edit.command) {
    case "survey.correctReading":
      return correctReading.run(project, edit.args);
    case "survey.acceptShot":
      return acceptShot.run(project, edit.args);
    case "survey.setAside":
      return setAside.run(project, edit.args);
    case "survey.reportBump":
      return reportBump.run(project, edit.args);
    case "survey.removeBump":
      return removeBump.run(project, edit.args);
    case "survey.lookAgain":
      return lookAgain.run(project, edit.args);
    case "building.changeFoundation":
      return changeFoundation.run(project, edit.args);
    case "grading.changeSlopes":
      return changeSlopes.run(project, edit.args);
    case "grading.changeSide":
      return changeApronSide.run(project, edit.args);
    case "drainage.change":
      return changeDrainage.run(project, edit.args);
    case "retainingWall.add":
      return addRetainingWall.run(project, edit.args);
  }
}

/** The text says what the value is: where the column's rounding is coarser, the rounded value stands. */
function written(m: number, project: Project): Measure {
  const notation = project.display.reading;
  const text = formatLength(m, notation, Math.max(roundingFor(notation, project.display), finest(notation)));
  const parsed = parseLength(text, notation);
  return { text, m: parsed.ok ? parsed.m : m };
}

/** Readings are written as finely as rods are read: 1/16 in, 0.01 ft, 1 mm. */
function finest(notation: Project["display"]["reading"]): number {
  return { "ft-in": 16, in: 16, ft: 2, m: 3, cm: 1, mm: 0 }[notation];
}
