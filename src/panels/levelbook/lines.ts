/** The lines of the table: shots in their order, with a heading wherever another set-up begins, one without rows yet too. */
import { type Setup, type Shot, setupForNext } from "../../document";

export type Line =
  | { readonly kind: "setup"; readonly setup: string /** Row that follows. */; readonly before: number }
  | { readonly kind: "shot"; readonly row: number }
  /** The empty row at the end, where the next shot is typed. */
  | { readonly kind: "new"; readonly row: number };

export function linesOf(shots: readonly Shot[], setups: readonly Setup[]): readonly Line[] {
  const lines: Line[] = [];
  let last: string | null = null;
  shots.forEach((shot, row) => {
    if (shot.setup !== last) lines.push({ kind: "setup", setup: shot.setup, before: row });
    last = shot.setup;
    lines.push({ kind: "shot", row });
  });
  const next = setupForNext({ setups, shots });
  if (next !== null && next !== last) lines.push({ kind: "setup", setup: next, before: shots.length });
  lines.push({ kind: "new", row: shots.length });
  return lines;
}

/** The rows in another order than they were read in: no headings, a set-up's rows no longer stand together. */
export function plainLines(shots: number): readonly Line[] {
  const rows = Array.from({ length: shots }, (_, row): Line => ({ kind: "shot", row }));
  return [...rows, { kind: "new", row: shots }];
}

/** Line on which a row stands. */
export function lineOfRow(lines: readonly Line[], row: number): number {
  // Headings only add lines, so the search can start at the row itself.
  for (let line = row; line < lines.length; line++) {
    const each = lines[line];
    if (each && each.kind !== "setup" && each.row === row) return line;
  }
  return lines.length - 1;
}
