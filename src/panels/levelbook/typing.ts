/** From what was typed in a cell to an edit of the project; a refusal carries the message for the cell. */
import { type Edit, type Place, type Project, type Shot, surveyEdits } from "../../document";
import { halfWidth, parseLength } from "../../units";
import { type ColumnId, choiceOf, newSetup, optionsOf } from "./columns";

export type PlaceRead =
  | { readonly ok: true; readonly place: Place }
  | { readonly ok: false; readonly message: string };

const placeForms = "Write a corner such as A, or east and north such as 12', 34'6\".";

/** Reads "A", "corner B", "12', 34'", "3.5; 8,25", or nothing. */
export function readPlace(text: string, { building, display }: Project): PlaceRead {
  const typed = halfWidth(text).trim();
  if (typed === "") return { ok: true, place: { kind: "none" } };
  const corner = /^(?:corner\s+)?([a-z]{1,2})$/i.exec(typed)?.[1];
  if (corner) return readCorner(corner.toUpperCase(), building?.outline.length ?? 0);
  const parts = splitPair(typed);
  if (!parts) return { ok: false, message: `Can't read "${typed}" as a place. ${placeForms}` };
  const [x, y] = parts.map((part) => parseLength(part, display.length));
  if (!x?.ok) return { ok: false, message: `East: ${x?.message ?? placeForms}` };
  if (!y?.ok) return { ok: false, message: `North: ${y?.message ?? placeForms}` };
  return { ok: true, place: { kind: "at", x: x.m, y: y.m } };
}

function readCorner(name: string, corners: number): PlaceRead {
  const index = [...name].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  if (index < corners) return { ok: true, place: { kind: "corner", corner: index } };
  const last = String.fromCharCode(64 + Math.min(26, corners));
  const message =
    corners === 0
      ? `There is no building yet, so no corner ${name}. ${placeForms}`
      : `The building has corners A to ${last}, no ${name}.`;
  return { ok: false, message };
}

/** Two lengths, kept apart by a semicolon, a tab, a comma before a space, a single comma, or plain spaces. */
function splitPair(typed: string): readonly [string, string] | null {
  for (const between of [/\s*[;\t]\s*/, /\s*,\s+/, /,/, /\s+/]) {
    const [x, y, ...rest] = typed.split(between);
    if (x && y && rest.length === 0) return [x, y];
  }
  return null;
}

/** The edit that a typed text makes of a shot's cell. */
export function editCell(project: Project, shot: Shot, column: ColumnId, text: string): Edit {
  switch (column) {
    case "reading":
      return surveyEdits.setReading.run(project, { id: shot.id, text });
    case "name":
      return surveyEdits.changeShot.run(project, {
        id: shot.id,
        patch: { name: text.trim() },
        what: "name shot",
      });
    case "note":
      return surveyEdits.changeShot.run(project, {
        id: shot.id,
        patch: { note: text.trim() },
        what: "change note",
      });
    case "place": {
      const read = readPlace(text, project);
      if (!read.ok) return { ok: false, why: read.message };
      return surveyEdits.placeShot.run(project, { id: shot.id, place: read.place });
    }
    case "aside":
      return surveyEdits.changeShot.run(project, {
        id: shot.id,
        patch: { aside: !shot.aside },
        what: shot.aside ? "take shot back in" : "set shot aside",
      });
    case "height":
      return { ok: false, why: "This is computed from the reading." };
    default:
      return editByWords(project, shot, column, text);
  }
}

/** A choice typed by its beginning. */
function editByWords(project: Project, shot: Shot, column: ColumnId, text: string): Edit {
  const options = optionsOf(column, shot, project);
  const typed = text.trim().toLowerCase();
  const found =
    options.find((option) => option.words.toLowerCase() === typed) ??
    options.find((option) => typed !== "" && option.words.toLowerCase().startsWith(typed));
  if (typed === "" && column === "of") return chooseCell(project, shot, column, "");
  if (found) return chooseCell(project, shot, column, found.value);
  return { ok: false, why: `Expected one of: ${options.map(({ words }) => words).join(", ")}.` };
}

/** The edit that a choice makes. A kind brings what it is read on with it. */
export function chooseCell(project: Project, shot: Shot, column: ColumnId, value: string): Edit {
  const change = (patch: Partial<Omit<Shot, "id" | "reading">>, what: string) =>
    surveyEdits.changeShot.run(project, { id: shot.id, patch, what });
  if (column === "setup") return chooseSetup(project, shot, value);
  if (column === "of") return change({ of: value === "" ? null : value }, "change what was read");
  const kind = value as Shot["kind"];
  const firstMark = project.survey.marks[0]?.id ?? null;
  if (kind === "mark" && firstMark === null)
    return { ok: false, why: "There is no mark yet. Add one in the panel on the right." };
  const of = kind === "mark" || kind === "check" ? (shot.of ?? firstMark) : null;
  return change({ kind, of }, "change kind of shot");
}

function chooseSetup(project: Project, shot: Shot, value: string): Edit {
  if (value !== newSetup)
    return surveyEdits.changeShot.run(project, {
      id: shot.id,
      patch: { setup: value },
      what: "move shot to a set-up",
    });
  const added = surveyEdits.addSetup.run(project, {});
  if (!added.ok || added.made === undefined) return added;
  return surveyEdits.changeShot.run(added.project, {
    id: shot.id,
    patch: { setup: added.made },
    what: "add a set-up",
  });
}

/** What is typed on a cell of choices so far, and when its last letter came, ms. */
export interface TypedWord {
  readonly text: string;
  readonly when: number;
}

/** After so long a letter that leads on to nothing begins a new word, ms. */
const pause = 1500;

/**
 * The word after one more letter: it grows while an option begins with it; one letter again and again stays one letter and
 * goes from option to option; else it begins anew after a pause, and is left alone before, as a slip.
 */
export function typedOn(
  before: TypedWord | null,
  letter: string,
  options: readonly { readonly words: string }[],
  when: number,
): TypedWord {
  const text = (before?.text ?? "") + letter.toLowerCase();
  if (options.some(({ words }) => words.toLowerCase().startsWith(text))) return { text, when };
  const again = new Set(text).size === 1;
  if (before === null || again || when - before.when > pause) return { text: letter.toLowerCase(), when };
  return { text: before.text, when };
}

/** The choice that a word picks: for one letter the next that begins with it, for more the first. */
export function choiceByWord(project: Project, shot: Shot, column: ColumnId, word: string): string | null {
  const options = optionsOf(column, shot, project);
  const present = options.findIndex(({ value }) => value === choiceOf(column, shot));
  const turned =
    word.length === 1 ? [...options.slice(present + 1), ...options.slice(0, present + 1)] : options;
  return turned.find(({ words }) => words.toLowerCase().startsWith(word.toLowerCase()))?.value ?? null;
}
