/** Tables of points (comma, semicolon, tab or space between cells; a file or pasted cells) → points and lines. */
import { lineOf, PointGatherer } from "./growing";
import { type IncomingLine, type IncomingUnits, type ReadResult, received, refused } from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { saysMark } from "./kinds";
import { localPlane } from "./localPlane";
import { type ColumnUse, cellsOf, isBlank, numberIn, type TableForm, unitOfHeads } from "./tableForm";
import { shown } from "./text";
import type { FileUnit } from "./units";

export interface TableMapping {
  readonly form: TableForm;
  readonly uses: readonly ColumnUse[];
}

const ROWS_PER_STEP = 20_000;
const FAULTS_SHOWN = 8;

/**
 * Reads a whole table. Rows whose place can't be read are passed over and told; where that is most of them the file is
 * refused. A blank height is none (NaN). Latitudes and longitudes come out in metres on a plane round their middle.
 */
export async function readTableFile(
  file: string,
  text: string,
  mapping: TableMapping,
  job: Job = {},
): Promise<ReadResult> {
  const wrong = mappingFault(mapping.uses);
  if (wrong) return refused(`${file}: ${wrong}`);
  const rows = new Rows(mapping);
  let line = 0;
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let header = mapping.form.header;
  const lineEnd = text.includes("\n") ? "\n" : "\r";
  while (at < text.length) {
    const found = text.indexOf(lineEnd, at);
    const end = found < 0 ? text.length : found;
    const row = text.charCodeAt(end - 1) === 13 && end > at ? text.slice(at, end - 1) : text.slice(at, end);
    line++;
    at = end + 1;
    if (!isBlank(row)) {
      if (header) {
        header = false;
        rows.head(row);
      } else rows.take(row, line);
    }
    if (line % ROWS_PER_STEP === 0 && !(await goesOn(job, at / text.length))) return stopped;
  }
  return rows.result(file);
}

/** What the columns lack, in words; null where a place can be read. */
export function mappingFault(uses: readonly ColumnUse[]): string | null {
  const twice = uses.find((use, i) => use !== "skip" && uses.indexOf(use) !== i);
  if (twice) return `two columns are taken as ${twice}. Choose one.`;
  const has = (use: ColumnUse) => uses.includes(use);
  if (has("latitude") !== has("longitude"))
    return "latitude and longitude go together. Choose a column for each.";
  if (has("latitude") && (has("x") || has("y")))
    return "choose either easting and northing or latitude and longitude, not both.";
  if (!has("latitude") && !(has("x") && has("y")))
    return "no place can be read: choose a column for easting (x) and one for northing (y).";
  return null;
}

class Rows {
  private readonly points = new PointGatherer();
  private readonly marks = new PointGatherer();
  private readonly lines = new Map<string, [number, number, number][]>();
  private readonly faults: string[] = [];
  private unit: FileUnit | null = null;
  private bad = 0;
  private read = 0;
  private readonly at: Readonly<Record<ColumnUse, number>>;
  private readonly geographic: boolean;

  constructor(private readonly mapping: TableMapping) {
    const place = (use: ColumnUse) => mapping.uses.indexOf(use);
    this.geographic = place("latitude") >= 0;
    this.at = {
      name: place("name"),
      x: place(this.geographic ? "longitude" : "x"),
      y: place(this.geographic ? "latitude" : "y"),
      z: place("z"),
      latitude: -1,
      longitude: -1,
      line: place("line"),
      kind: place("kind"),
      skip: -1,
    };
  }

  /** The row that names the columns may name their unit. */
  head(row: string): void {
    const cells = cellsOf(row, this.mapping.form.separator);
    const { x, y, z } = this.at;
    // Degrees say nothing of the heights beside them.
    const measured = this.geographic ? [z] : [x, y, z];
    this.unit = unitOfHeads(measured.flatMap((column) => (column < 0 ? [] : (cells[column] ?? ""))));
  }

  take(row: string, line: number): void {
    const { separator, decimal } = this.mapping.form;
    const cells = cellsOf(row, separator);
    const number = (use: ColumnUse) => numberIn(cells[this.at[use]] ?? "", decimal);
    const x = number("x");
    const y = number("y");
    const height = this.at.z < 0 ? "" : (cells[this.at.z] ?? "");
    const z = height === "" ? Number.NaN : numberIn(height, decimal);
    const heightBad = height !== "" && Number.isNaN(z);
    const outside = this.geographic && (Math.abs(y) > 90 || Math.abs(x) > 180);
    if (Number.isNaN(x) || Number.isNaN(y) || heightBad || outside) {
      const use = Number.isNaN(x) || (outside && Math.abs(x) > 180) ? "x" : heightBad ? "z" : "y";
      const expected = outside ? "degrees within their range" : "a number";
      this.fault(
        `line ${line}, column ${this.at[use] + 1}: found ${shown(cells[this.at[use]] ?? "")}, expected ${expected}.`,
      );
      return;
    }
    this.read++;
    const thread = this.at.line < 0 ? "" : (cells[this.at.line] ?? "");
    const kind = this.at.kind < 0 ? "" : (cells[this.at.kind] ?? "");
    const list = saysMark(kind) ? this.marks : this.points;
    if (thread === "") list.add(this.at.name < 0 ? "" : (cells[this.at.name] ?? ""), x, y, z);
    else this.corner(thread, [x, y, z]);
  }

  result(file: string): ReadResult {
    if (this.read === 0 && this.bad === 0) return refused(`${file} holds no rows of points.`);
    const told = this.faults.map((fault) => `${file}, ${fault}`);
    const rest = this.bad - told.length;
    if (rest > 0) told.push(`… and ${rest} more like these.`);
    if (this.bad > this.read)
      return refused(
        [
          `${file}: ${this.bad} of ${this.bad + this.read} rows can't be read. Look at what each column is taken as.`,
          ...told,
        ].join("\n"),
      );
    const warnings =
      this.bad === 0
        ? []
        : [`${file}: ${this.bad} of ${this.bad + this.read} rows were passed over.`, ...told];
    const lines = [...this.lines].flatMap(([name, corners]): IncomingLine[] => {
      const line = lineOf(name, corners);
      if (line === null)
        warnings.push(`${file}: the line ${shown(name)} has only one place and was passed over.`);
      return line ? [line] : [];
    });
    const points = this.points.done();
    const marks = this.marks.done();
    const units: IncomingUnits = this.unit === null ? { known: false } : { known: true, unit: this.unit };
    if (!this.geographic) {
      return received(file, { kind: "table", units, points, marks, lines, warnings });
    }
    return received(file, { kind: "table", ...localPlane(points, lines, marks), units, warnings });
  }

  private corner(name: string, corner: [number, number, number]): void {
    const corners = this.lines.get(name);
    if (corners) corners.push(corner);
    else this.lines.set(name, [corner]);
  }

  private fault(text: string): void {
    this.bad++;
    if (this.faults.length < FAULTS_SHOWN) this.faults.push(text);
  }
}
