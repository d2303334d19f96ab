/** The title block: what sheet this is, of what, when, at which scale, in which units. */
import type { Project } from "../document/schema";
import { ellipsize, textWidth } from "../drawing/text-width";
import { inks } from "./inks";
import type { Rect } from "./papers";
import type { Pen } from "./pen";
import { wrap } from "./text";

export interface Title {
  readonly project: string;
  readonly place: string;
  readonly sheet: string;
  readonly note: string;
  /** What is on further sheets; empty when there is none. */
  readonly next: string;
  /** Label and value. */
  readonly fields: readonly (readonly [string, string])[];
}

const unitWords: Readonly<Record<Project["display"]["length"], string>> = {
  "ft-in": "feet, inches",
  in: "inches",
  ft: "decimal feet",
  m: "metres",
  cm: "centimetres",
  mm: "millimetres",
};

export interface TitleFacts {
  readonly scale: string;
  readonly paper: string;
  readonly date: string;
  readonly page: number;
  readonly pages: number;
  readonly heightsFrom: string;
}

/** Gathers the title block's words. */
export function titleFor(
  project: Project,
  facts: TitleFacts,
  notes: { readonly note: string; readonly next: string },
): Title {
  const { owner, place, drawnBy, revision } = project.title;
  return {
    project: project.name,
    place: [owner, place].filter((part) => part !== "").join(" · "),
    sheet: "Site plan",
    ...notes,
    fields: [
      [`scale on ${facts.paper}`, facts.scale],
      ["drawn", facts.date],
      ["sheet", `${facts.page} of ${facts.pages}`],
      ["lengths", unitWords[project.display.length]],
      ["heights from", facts.heightsFrom],
      drawnBy === "" ? ["revision", revision] : ["revision, by", `${revision}, ${drawnBy}`],
    ],
  };
}

/** Shrinks a size until the text fits, down to a least size; then the text is cut short. */
function fitted(text: string, width: number, size: number, least: number): { text: string; size: number } {
  const needed = textWidth(text, 1, 600);
  const fit = Math.max(least, Math.min(size, needed > 0 ? width / needed : size));
  return { text: ellipsize(text, width, fit, 600), size: fit };
}

function drawFields(pen: Pen, title: Title, rect: Rect, columns: number): void {
  const rows = Math.ceil(title.fields.length / columns);
  const width = rect.width / columns;
  const height = rect.height / rows;
  for (const [i, [label, value]] of title.fields.entries()) {
    const x = rect.x + (i % columns) * width;
    const y = rect.y + Math.floor(i / columns) * height;
    const room = width - 1.5;
    pen.text(ellipsize(label, room, 2.35), x, y + 2.6, { size: 2.35, colour: inks.soft });
    const shown = fitted(value, room, 3.2, 2.4);
    pen.text(shown.text, x, y + 6.2, { size: shown.size, weight: 600, colour: inks.ink });
  }
}

/** In the corner of the first page. */
export function drawTitle(pen: Pen, title: Title, rect: Rect): void {
  const x = rect.x + 4;
  const width = rect.width - 8;
  const name = fitted(title.project, width - 23, 5.2, 3);
  pen.text(name.text, x, rect.y + 6.4, { size: name.size, weight: 600, colour: inks.ink });
  pen.text(title.sheet, x + width, rect.y + 6.4, { size: 3.6, colour: inks.ink, anchor: "end" });
  if (title.place) {
    pen.text(ellipsize(title.place, width, 2.8), x, rect.y + 10.2, { size: 2.8, colour: inks.ink });
  }
  pen.line([x, rect.y + 12, x + width, rect.y + 12], { colour: inks.rule, width: 0.18 });
  drawFields(pen, title, { x, y: rect.y + 12.6, width, height: 14.6 }, 3);
  drawNotes(pen, title, { x, y: rect.y + 27.4, width, height: rect.height - 28.2 });
}

/** Largest and smallest type of the notes, mm, and their line pitch over it. */
const noteSizes = [2.35, 2.3, 2.25, 2.2] as const;
const notePitch = 1.23;
const noteGap = 0.4;

/** What is on the next sheet and what this one isn't, in the largest type that shows both whole. */
function drawNotes(pen: Pen, { next, note }: Title, { x, y: top, width, height }: Rect): void {
  const notes = [
    { text: next, strong: true, colour: inks.ink },
    { text: note, strong: false, colour: inks.soft },
  ].filter(({ text }) => text !== "");
  const set = (size: number) => notes.map((one) => ({ ...one, lines: wrap([one], width, size) }));
  const heightOf = (size: number) =>
    set(size).reduce((sum, { lines }) => sum + lines.length * notePitch * size + noteGap, 0);
  const least = noteSizes[noteSizes.length - 1] as number;
  const size = noteSizes.find((one) => heightOf(one) <= height) ?? least;
  let y = top;
  for (const { lines, strong, colour } of set(size)) {
    for (const { words } of lines) {
      y += notePitch * size;
      const text = words.map((word) => word.text).join(" ");
      pen.text(text, x, y - 0.3, { size, weight: strong ? 600 : 400, colour });
    }
    y += noteGap;
  }
}

/** Along the foot of a further page. */
export function drawTitleStrip(pen: Pen, title: Title, rect: Rect): void {
  const x = rect.x + 4;
  const third = rect.width * 0.32;
  const name = fitted(title.project, third - 6, 4.6, 2.8);
  pen.text(name.text, x, rect.y + 5.4, { size: name.size, weight: 600, colour: inks.ink });
  const under = [title.sheet, title.place].filter((part) => part !== "").join(" · ");
  pen.text(ellipsize(under, third - 6, 2.6), x, rect.y + 9.4, { size: 2.6, colour: inks.soft });
  const fields = { x: rect.x + third, y: rect.y + 1.8, width: rect.width - third - 4, height: 8 };
  drawFields(pen, title, fields, title.fields.length);
}
