/** The columns of the level book: what each shows, and how a shot is put into words. */
import type { Place, Project, Shot } from "../../document";
import { cornerName } from "../../grading";
import type { LevelledPoint } from "../../solve/results";
import { aboveMark } from "../../survey";
import type { Notation } from "../notation";

export const columnIds = [
  "setup",
  "name",
  "reading",
  "kind",
  "of",
  "place",
  "height",
  "note",
  "aside",
] as const;
export type ColumnId = (typeof columnIds)[number];

export interface Column {
  readonly id: ColumnId;
  readonly title: string;
  /** Share of the table's width; px where it is narrowest. */
  readonly width: number;
  readonly entry: "text" | "choice" | "toggle" | "none";
  /** What may be typed here, for the line below the table. */
  readonly hint: string;
}

export const columns: readonly Column[] = [
  {
    id: "setup",
    title: "set-up",
    width: 88,
    entry: "choice",
    hint: "Which stand of the laser it was read from.",
  },
  { id: "name", title: "name", width: 90, entry: "text", hint: "What you call it: NE stake, road edge, 12." },
  {
    id: "reading",
    title: "reading",
    width: 108,
    entry: "text",
    hint: "As the tape or rod reads, from the ground up to the beam.",
  },
  {
    id: "kind",
    title: "kind",
    width: 70,
    entry: "choice",
    hint: "Ground; mark ties the set-up to a mark; turning is a hard point read from two set-ups; check is a second look.",
  },
  { id: "of", title: "on", width: 99, entry: "choice", hint: "The mark or the earlier point that was read." },
  {
    id: "place",
    title: "place",
    width: 104,
    entry: "text",
    hint: "A corner such as A, or east and north such as 12', 34'6\".",
  },
  {
    id: "height",
    title: "from the mark",
    width: 106,
    entry: "none",
    hint: "Computed: height above or below the reference mark.",
  },
  { id: "note", title: "note", width: 58, entry: "text", hint: "Anything worth remembering." },
  {
    id: "aside",
    title: "aside",
    width: 50,
    entry: "toggle",
    hint: "Set aside: kept here, left out of every computation. Space or a click on the box switches it.",
  },
];

/** Width of a column as a share of the table. */
export function columnShare({ width }: Column): string {
  const total = columns.reduce((sum, column) => sum + column.width, 0);
  return `${((100 * width) / total).toFixed(2)}%`;
}

export const kindWords: Readonly<Record<Shot["kind"], string>> = {
  ground: "ground",
  mark: "mark",
  turning: "turning",
  check: "check",
};

/** What a cell shows; the same text is the start of an edit by F2. */
export function cellText(
  id: ColumnId,
  shot: Shot,
  project: Project,
  notation: Notation,
  point?: LevelledPoint,
): string {
  switch (id) {
    case "setup":
      return project.survey.setups.find((setup) => setup.id === shot.setup)?.name ?? "";
    case "name":
      return shot.name;
    case "reading":
      return shot.reading?.text ?? "";
    case "kind":
      return kindWords[shot.kind];
    case "of":
      return nameOf(shot.of, project);
    case "place":
      return placeText(shot.place, notation);
    case "height": {
      const above = aboveMark(point?.height ?? null, project.survey.marks);
      return above === null ? "" : notation.aboveBelow(above);
    }
    case "note":
      return shot.note;
    case "aside":
      return shot.aside ? "aside" : "";
  }
}

/** Name of a mark or of an earlier shot. */
export function nameOf(id: string | null, { survey }: Project): string {
  if (id === null) return "";
  const mark = survey.marks.find((each) => each.id === id);
  if (mark) return mark.name;
  const index = survey.shots.findIndex((each) => each.id === id);
  return index < 0 ? "?" : survey.shots[index]?.name || `row ${index + 1}`;
}

/** How a place was measured in, for those that aren't typed as a corner or two numbers. */
const MEASURED = {
  none: "",
  wall: "off a wall",
  tapes: "two tapes",
  baseline: "off a baseline",
  polar: "angle and distance",
} as const;

export function placeText(place: Place, notation: Notation): string {
  if (place.kind === "corner") return `corner ${cornerName(place.corner)}`;
  if (place.kind === "stake") return `stake ${place.row + 1}, ${place.column + 1}`;
  if (place.kind === "at") return `${notation.length(place.x)}, ${notation.length(place.y)}`;
  return MEASURED[place.kind];
}

export interface Option {
  readonly value: string;
  readonly words: string;
}

export const newSetup = "new";

/** What a choice cell offers. */
export function optionsOf(id: ColumnId, shot: Shot, { survey }: Project): readonly Option[] {
  if (id === "setup")
    return [
      ...survey.setups.map((setup) => ({ value: setup.id, words: setup.name })),
      { value: newSetup, words: "a new set-up" },
    ];
  if (id === "kind") return Object.entries(kindWords).map(([value, words]) => ({ value, words }));
  if (id !== "of") return [];
  const none = { value: "", words: "–" };
  if (shot.kind === "ground") return [none];
  const marks = survey.marks.map((mark) => ({ value: mark.id, words: mark.name }));
  if (shot.kind === "mark") return marks;
  const here = survey.shots.findIndex((each) => each.id === shot.id);
  const offered = survey.shots.flatMap((each, index) => {
    const known =
      shot.kind === "turning"
        ? each.setup !== shot.setup && (each.kind === "ground" || each.kind === "turning")
        : index < here && (each.kind === "turning" || each.kind === "ground");
    return known ? [{ value: each.id, words: each.name || `row ${index + 1}` }] : [];
  });
  return shot.kind === "turning" ? [none, ...offered] : [none, ...marks, ...offered];
}

export function choiceOf(id: ColumnId, shot: Shot): string {
  if (id === "setup") return shot.setup;
  return id === "kind" ? shot.kind : (shot.of ?? "");
}
