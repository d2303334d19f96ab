/**
 * DXF drawings (text form) → points, lines and faces: POINT, LINE, LWPOLYLINE, POLYLINE with its vertices (also a
 * polyface or mesh's outline as lines), 3DFACE. Other things are counted and told.
 *
 * Units   $INSUNITS of the header where it says one.
 * Source  the format's published group codes.
 */
import { FaceGatherer, lineOf, PointGatherer } from "./growing";
import { type IncomingLine, type IncomingUnits, type ReadResult, received, refused } from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { lineKind, saysMark } from "./kinds";
import { shown } from "./text";
import type { FileUnit } from "./units";

const insertionUnits: Readonly<Record<string, FileUnit>> = {
  "1": "in",
  "2": "ft",
  "4": "mm",
  "5": "cm",
  "6": "m",
  "7": "km",
  "10": "yd",
  "21": "ft-us",
};

const TAGS_PER_STEP = 200_000;

/** One thing of the drawing: its kind and its tags. */
interface Entity {
  readonly kind: string;
  readonly tags: [number, string][];
}

type Corner = [number, number, number];

/** Drawings older than 2007 are in the code page that they name; those since are UTF-8. */
export function dxfText(bytes: Uint8Array): string {
  const head = new TextDecoder("windows-1252").decode(bytes.subarray(0, 20_000));
  const version = /\$ACADVER\s+1\s+AC(\d+)/.exec(head)?.[1];
  if (version !== undefined && Number(version) < 1021) {
    const page = /\$DWGCODEPAGE\s+3\s+ANSI_(\d+)/i.exec(head)?.[1] ?? "1252";
    const label =
      { "932": "shift_jis", "936": "gbk", "949": "euc-kr", "950": "big5" }[page] ?? `windows-${page}`;
    try {
      return new TextDecoder(label).decode(bytes);
    } catch {
      return new TextDecoder("windows-1252").decode(bytes);
    }
  }
  return new TextDecoder("utf-8").decode(bytes);
}

export async function readDxf(file: string, text: string, job: Job = {}): Promise<ReadResult> {
  const lines = text.split(/\r\n|\r|\n/);
  const drawing = new Drawing();
  let count = 0;
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number((lines[i] as string).trim());
    if ((lines[i] as string).trim() === "" || !Number.isInteger(code)) {
      if (i === 0 || lines.slice(i).every((line) => line.trim() === "")) break;
      return refused(
        `${file}, line ${i + 1}: found ${shown((lines[i] as string).trim())}, expected the number of a group. Is the file whole?`,
      );
    }
    drawing.take(code, (lines[i + 1] as string).trim());
    if (++count % TAGS_PER_STEP === 0 && !(await goesOn(job, i / lines.length))) return stopped;
  }
  if (!drawing.sections) return refused(`${file} is no drawing in the text form of DXF: it has no sections.`);
  const warnings = drawing.finish();
  if (!drawing.ended) warnings.unshift(`${file} breaks off before its end: what comes after is missing.`);
  return received(file, {
    kind: "dxf",
    units: drawing.units,
    points: drawing.points.done(),
    marks: drawing.marks.done(),
    lines: drawing.lines,
    faces: drawing.faces.done(),
    warnings: warnings.map((warning) => (warning.startsWith(file) ? warning : `${file}: ${warning}`)),
  });
}

class Drawing {
  readonly points = new PointGatherer();
  readonly marks = new PointGatherer();
  readonly faces = new FaceGatherer();
  readonly lines: IncomingLine[] = [];
  units: IncomingUnits = { known: false };
  sections = false;
  ended = false;
  private section = "";
  private variable = "";
  private entity: Entity | null = null;
  private polyline: { head: Entity; vertices: Entity[] } | null = null;
  private readonly passed = new Map<string, number>();
  private shapeless = 0;

  take(code: number, value: string): void {
    if (code === 0) this.start(value);
    else if (this.section === "" && code === 2) {
      this.section = value;
      this.sections = true;
    } else if (this.section === "HEADER") this.header(code, value);
    else this.entity?.tags.push([code, value]);
  }

  finish(): string[] {
    this.close();
    this.closePolyline();
    const told: string[] = [];
    if (this.passed.size > 0) {
      const list = [...this.passed].map(([kind, count]) => `${count} ${kind}`).join(", ");
      told.push(`passed over what isn't ground: ${list}.`);
    }
    if (this.shapeless > 0)
      told.push(`${this.shapeless} things have no place that can be read and were passed over.`);
    return told;
  }

  private header(code: number, value: string): void {
    if (code === 9) this.variable = value;
    else if (code === 70 && this.variable === "$INSUNITS") {
      const unit = insertionUnits[value];
      if (unit) this.units = { known: true, unit };
    }
  }

  private start(kind: string): void {
    this.close();
    if (kind === "EOF") this.ended = true;
    if (kind === "SECTION" || kind === "ENDSEC") {
      this.closePolyline();
      this.section = "";
    } else if (this.section === "ENTITIES") this.entity = { kind, tags: [] };
  }

  private close(): void {
    const entity = this.entity;
    this.entity = null;
    if (entity === null) return;
    if (entity.kind === "VERTEX") this.polyline?.vertices.push(entity);
    else if (entity.kind === "SEQEND") this.closePolyline();
    else {
      this.closePolyline();
      if (entity.kind === "POLYLINE") this.polyline = { head: entity, vertices: [] };
      else this.draw(entity);
    }
  }

  private draw(entity: Entity): void {
    const layer = word(entity, 8);
    switch (entity.kind) {
      case "POINT": {
        const [x, y, z] = corner(entity, 0);
        if (Number.isNaN(x + y)) this.shapeless++;
        else (saysMark(layer) ? this.marks : this.points).add(ownName(entity), x, y, z);
        return;
      }
      case "LINE":
        this.line(layer, [corner(entity, 0), corner(entity, 1)], false);
        return;
      case "LWPOLYLINE":
        this.light(layer, entity);
        return;
      case "3DFACE":
        this.face([0, 1, 2, 3].map((i) => corner(entity, i)));
        return;
      default:
        this.passed.set(entity.kind, (this.passed.get(entity.kind) ?? 0) + 1);
    }
  }

  /** A polyline in the plan: one height for all of it. */
  private light(layer: string, entity: Entity): void {
    const height = entity.tags.some(([code]) => code === 38) ? number(entity, 38) : 0;
    const corners: Corner[] = [];
    for (const [code, value] of entity.tags) {
      if (code === 10) corners.push([finite(value), Number.NaN, height]);
      else if (code === 20 && corners.length > 0) (corners.at(-1) as Corner)[1] = finite(value);
    }
    this.line(layer, corners, (number(entity, 70) & 1) === 1);
  }

  private closePolyline(): void {
    if (this.polyline === null) return;
    const { head, vertices } = this.polyline;
    this.polyline = null;
    const flags = number(head, 70) || 0;
    if ((flags & 64) !== 0) {
      this.polyface(vertices);
      return;
    }
    const flat = (flags & 8) === 0 ? number(head, 30) || 0 : null;
    const corners = vertices.map((vertex): Corner => {
      const [x, y, z] = corner(vertex, 0);
      return [x, y, flat ?? (ownName(vertex) === "no height" ? Number.NaN : z)];
    });
    this.line(word(head, 8), corners, (flags & 1) === 1, ownName(head));
  }

  /** Vertices with bit 64 are places; the others name up to four of them, counted from 1, as a face. */
  private polyface(vertices: readonly Entity[]): void {
    const places = vertices
      .filter((vertex) => (number(vertex, 70) & 64) !== 0)
      .map((vertex) => corner(vertex, 0));
    for (const vertex of vertices) {
      if ((number(vertex, 70) & 64) !== 0) continue;
      const named = [71, 72, 73, 74].map((code) => places[Math.abs(number(vertex, code)) - 1]);
      this.face(named.filter((at) => at !== undefined));
    }
  }

  private line(layer: string, corners: readonly Corner[], closed: boolean, own = ""): void {
    const line = corners.some(([x, y]) => Number.isNaN(x + y))
      ? null
      : lineOf(layer, corners, closed, lineKind(own, layer));
    if (line) this.lines.push(line);
    else this.shapeless++;
  }

  private face(corners: readonly Corner[]): void {
    const [a, b, c, d] = corners;
    if (!a || !b || !c || [a, b, c].some((at) => at.some(Number.isNaN))) {
      this.shapeless++;
      return;
    }
    this.faces.add(a, b, c);
    if (d && !d.some(Number.isNaN)) this.faces.add(a, c, d);
  }
}

function finite(value: string): number {
  const read = value === "" ? Number.NaN : Number(value);
  return Number.isFinite(read) ? read : Number.NaN;
}

function word(entity: Entity, code: number): string {
  return entity.tags.find(([tag]) => tag === code)?.[1] ?? "";
}

/** A point's name, or that a corner has no height, stands in extended data of this program's own. */
function ownName({ tags }: Entity): string {
  const own = tags.findIndex(([code, value]) => code === 1001 && value === "DRYSILL");
  const next = own < 0 ? undefined : tags[own + 1];
  return next?.[0] === 1000 ? next[1] : "";
}

function number(entity: Entity, code: number): number {
  const found = entity.tags.find(([tag]) => tag === code);
  return found ? finite(found[1]) : Number.NaN;
}

/** Corner i of an entity; a height that isn't given is 0, as the format has it. */
function corner(entity: Entity, i: number): Corner {
  const z = entity.tags.find(([tag]) => tag === 30 + i);
  return [number(entity, 10 + i), number(entity, 20 + i), z ? finite(z[1]) : 0];
}
