/** Notes: a person's words on the plan, where they were put, with a thin line to what they are about. */
import type { Note, Project } from "../document/schema";
import type { Results } from "../solve/results";
import { sizeOf, stacked } from "./beside";
import { type DrawContext, type LabelTexts, onPaper, placeLabel, textBox, textMargin } from "./context";
import type { Box } from "./labels";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { textWidth } from "./text-width";

/** Words are broken into lines no longer than this, mm. */
export const widestNote = 48;
/** Between the end of the leader and the words, mm. */
const gap = 0.9;
const lead = 1.22;
const dot = 1.1;

/** A note's words in lines: broken where the person broke them, and where they would get too long. */
export function noteLines(text: string): readonly string[] {
  return text.split(/\r?\n/).flatMap((line) => {
    const lines: string[] = [];
    let now = "";
    for (const word of line.split(" ")) {
      const longer = now === "" ? word : `${now} ${word}`;
      if (now !== "" && textWidth(longer, sizeOf("note")) > widestNote) {
        lines.push(now);
        now = word;
      } else now = longer;
    }
    return [...lines, now];
  });
}

/** On which side of its place the words stand: away from what they point to, as the plan is turned. */
function opensLeft({ at, pointsTo }: Pick<Note, "at" | "pointsTo">, turn: number): boolean {
  if (!pointsTo) return false;
  const [dx, dy] = [pointsTo[0] - at[0], pointsTo[1] - at[1]];
  return dx * Math.cos(turn) - dy * Math.sin(turn) > 0;
}

/** The words of a note, laid out about its place. */
export function noteTexts(project: Project, note: Omit<Note, "id">, flipped = false): LabelTexts {
  const left = opensLeft(note, project.drawing.turn) !== flipped;
  const off = note.pointsTo || flipped ? gap : 0;
  const lines = noteLines(note.text).map((text) => ({ text, style: "note" as const }));
  return stacked(note.at, lines, [left ? -off : off, 0], left ? "end" : "start", lead);
}

/** The paper that a note's words take, mm: one box a line. */
export function noteBoxes(project: Project, note: Note, metresPerMm: number): readonly Box[] {
  return noteTexts(project, note).map((text) => textBox(text, metresPerMm, textMargin, project.drawing.turn));
}

function leader({ at, pointsTo }: Omit<Note, "id">, context: DrawContext): DrawingMark[] {
  if (!pointsTo) return [];
  const points = [...at, ...pointsTo];
  context.labels.takeLine("notes", onPaper(points, context.metresPerMm), 0.3);
  return [
    { kind: "line", points, style: "note-leader" },
    { kind: "symbol", at: pointsTo, symbol: "dot", size: dot, style: "note-dot" },
  ];
}

/** One note. On paper its words may turn to the other side of their place, where the sheet ends. */
function noteMarks(project: Project, note: Omit<Note, "id">, context: DrawContext): DrawingMark[] {
  const usual = noteTexts(project, note);
  const choices = context.medium === "paper" ? [usual, noteTexts(project, note, true)] : [usual];
  const texts = placeLabel(context, "notes", choices, true);
  return [...leader(note, context), ...texts];
}

/** All notes. They stand where a person put them, so they take their paper before other texts look for theirs. */
export function drawNotes(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("notes");
  reserveLines(project, results, context);
  const marks = project.drawing.notes.flatMap((note) => noteMarks(project, note, context));
  return { id: "notes", marks };
}
