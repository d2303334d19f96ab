/**
 * LandXML (1.0 to 2.0) → named points, surfaces' triangles, their breaklines and contours. Read as a stream by a strict
 * XML reader: a file that is cut off or malformed is refused with the line where it breaks.
 *
 * Axes    the format gives northing first: "north east height".
 * Units   `Units`; `foot` is the international one, `USSurveyFoot` the other.
 * Source  the element pages of schema 1.2 (landxml.org, LandXML-1.2Doc_*): `P` and `CgPoint` may name another point by
 *         `pntRef` instead of coordinates, `F` holds 3 (TIN) or 4 (grid) ids, `RetWall` is a line of `RetWallPnt`.
 */
import { SaxesParser } from "saxes";
import { lineOf, Numbers, PointGatherer } from "./growing";
import {
  type IncomingFaces,
  type IncomingLine,
  type IncomingUnits,
  type ReadResult,
  received,
  refused,
} from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { lineKind, saysMark } from "./kinds";
import type { FileUnit } from "./units";

const units: Readonly<Record<string, FileUnit>> = {
  meter: "m",
  centimeter: "cm",
  millimeter: "mm",
  kilometer: "km",
  foot: "ft",
  USSurveyFoot: "ft-us",
  inch: "in",
  yard: "yd",
};

/** What is told when it is passed over. A plan feature is read where it is a list of places, not where it is lines and curves. */
const notRead: Readonly<Record<string, string>> = {
  Alignment: "alignments",
  Parcel: "parcels",
  PlanFeature: "plan features",
  PipeNetwork: "pipe networks",
};

const CHARACTERS_PER_STEP = 1 << 20;

export async function readLandXml(file: string, text: string, job: Job = {}): Promise<ReadResult> {
  const reader = new Reader();
  const parser = new SaxesParser({ fileName: file });
  let fault: string | null = null;
  parser.on("error", (error) => {
    fault ??= `${file}, line ${parser.line}: this is no whole XML (${error.message.replace(/^.*?:\d+:\d+:\s*/, "")}). Is the file cut off?`;
  });
  parser.on("opentag", (tag) => reader.open(tag.name, tag.attributes as Record<string, string>));
  parser.on("text", (piece) => reader.text(piece));
  parser.on("closetag", (tag) => reader.close(tag.name));
  for (let at = 0; at < text.length && fault === null; at += CHARACTERS_PER_STEP) {
    parser.write(text.slice(at, at + CHARACTERS_PER_STEP));
    if (!(await goesOn(job, at / text.length))) return stopped;
  }
  if (fault === null) parser.close();
  if (fault !== null) return refused(fault);
  if (!reader.isLandXml) return refused(`${file} is XML, but not LandXML: its first element is another.`);
  return reader.result(file);
}

function local(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

class Reader {
  isLandXml = false;
  private depth = 0;
  private content = "";
  private path: string[] = [];
  private attributes: Record<string, string>[] = [];
  private readonly points = new PointGatherer();
  private readonly marks = new PointGatherer();
  private readonly lines: IncomingLine[] = [];
  private readonly x = new Numbers();
  private readonly y = new Numbers();
  private readonly z = new Numbers();
  private readonly triangles: number[] = [];
  /** Ids of the corners of the surface that is being read → index. */
  private ids = new Map<string, number>();
  private units: IncomingUnits = { known: false };
  private crs: string | null = null;
  private hidden = 0;
  private readonly named = new Map<string, readonly [north: number, east: number, z: number]>();
  /** Corners given by the name of a point, which may come later in the file. */
  private readonly borrowed: { readonly index: number; readonly name: string }[] = [];
  private wall: [number, number, number][] = [];
  /** Lines given as names of points. */
  private readonly chains: { readonly label: string; readonly names: readonly string[] }[] = [];
  private readonly passed = new Map<string, number>();
  private readonly warnings: string[] = [];
  private unread = 0;
  private lost = 0;

  open(qualified: string, attributes: Record<string, string>): void {
    const name = local(qualified);
    if (this.depth++ === 0) this.isLandXml = name === "LandXML";
    this.path.push(name);
    this.attributes.push(attributes);
    this.content = "";
    if (name === "Metric" || name === "Imperial") this.takeUnits(attributes.linearUnit ?? "");
    else if (name === "CoordinateSystem")
      this.crs = attributes.name ?? attributes.epsgCode ?? attributes.desc ?? null;
    else if (name === "Surface") this.ids = new Map();
    else if (this.path.at(-2) === "PlanFeature" && name === "CoordGeom") this.passOver("PlanFeature");
    else if (name !== "PlanFeature" && Object.hasOwn(notRead, name)) this.passOver(name);
  }

  text(piece: string): void {
    this.content += piece;
  }

  close(qualified: string): void {
    const name = local(qualified);
    const attributes = this.attributes.pop() ?? {};
    this.path.pop();
    this.depth--;
    const parent = this.path.at(-1);
    if (name === "CgPoint") this.namedPoint(attributes);
    else if (name === "P" && parent === "Pnts") this.corner(attributes);
    else if (name === "Chain") this.chain(attributes);
    else if (name === "RetWallPnt") this.wallPoint();
    else if (name === "RetWall") this.endWall(attributes);
    else if (name === "F" && parent === "Faces") this.face(attributes);
    else if (name === "PntList3D" || name === "PntList2D") this.list(name === "PntList3D" ? 3 : 2);
    this.content = "";
  }

  result(file: string): ReadResult {
    const faces = this.settledFaces();
    this.settleChains();
    for (const [name, count] of this.passed)
      this.warnings.push(`${count} ${notRead[name]}: not read; only points, surfaces and their lines are.`);
    if (this.hidden > 0)
      this.warnings.push(`${this.hidden} triangles are marked as not seen and were passed over.`);
    if (this.lost > 0)
      this.warnings.push(`${this.lost} triangles name a corner that isn't there and were passed over.`);
    if (this.unread > 0)
      this.warnings.push(`${this.unread} places can't be read as numbers and were passed over.`);
    return received(file, {
      kind: "landxml",
      units: this.units,
      points: this.points.done(),
      marks: this.marks.done(),
      lines: this.lines,
      faces,
      crs: this.crs,
      warnings: this.warnings.map((warning) => `${file}: ${warning}`),
    });
  }

  /** The triangles, with the corners that were given by a point's name; those whose point isn't there fall out. */
  private settledFaces(): IncomingFaces {
    const [x, y, z] = [this.x.done(), this.y.done(), this.z.done()];
    const missing = new Set<number>();
    for (const { index, name } of this.borrowed) {
      const at = this.named.get(name);
      if (at && Number.isFinite(at[2])) [y[index], x[index], z[index]] = at;
      else missing.add(index);
    }
    if (missing.size === 0) return { x, y, z, triangles: Uint32Array.from(this.triangles) };
    this.unread += missing.size;
    const kept: number[] = [];
    for (let t = 0; t < this.triangles.length; t += 3) {
      const corners = this.triangles.slice(t, t + 3);
      if (corners.some((corner) => missing.has(corner))) this.lost++;
      else kept.push(...corners);
    }
    const renumbered = Uint32Array.from(x, () => 0);
    let next = 0;
    for (let i = 0; i < x.length; i++) if (!missing.has(i)) renumbered[i] = next++;
    const left = (values: Float64Array) => values.filter((_, i) => !missing.has(i));
    return {
      x: left(x),
      y: left(y),
      z: left(z),
      triangles: Uint32Array.from(kept, (corner) => renumbered[corner] as number),
    };
  }

  private takeUnits(linear: string): void {
    const unit = units[linear];
    if (unit) this.units = { known: true, unit };
    else this.warnings.push(`the unit "${linear}" isn't known here.`);
  }

  private numbers(): number[] {
    const words = this.content.trim();
    return words === "" ? [] : words.split(/\s+/).map(Number);
  }

  private namedPoint({ name, pntRef, code = "" }: Record<string, string>): void {
    const [north, east, z = Number.NaN] = this.numbers();
    if (north === undefined || east === undefined || !Number.isFinite(north + east)) {
      if (pntRef === undefined) this.unread++;
      return;
    }
    const height = Number.isFinite(z) ? z : Number.NaN;
    if (name !== undefined) this.named.set(name, [north, east, height]);
    (saysMark(code) ? this.marks : this.points).add(name ?? "", east, north, height);
  }

  private passOver(kind: string): void {
    this.passed.set(kind, (this.passed.get(kind) ?? 0) + 1);
  }

  private chain({ name, desc }: Record<string, string>): void {
    const names = this.content.trim().split(/\s+/);
    if (names.length > 1) this.chains.push({ label: name ?? desc ?? "chain", names });
  }

  private settleChains(): void {
    for (const { label, names } of this.chains) {
      const places = names.flatMap((name) => {
        const at = this.named.get(name);
        return at ? [[at[1], at[0], at[2]] as [number, number, number]] : [];
      });
      this.unread += names.length - places.length;
      const closed = names.length > 3 && names[0] === names.at(-1);
      const line = lineOf(label, closed ? places.slice(0, -1) : places, closed);
      if (line) this.lines.push(line);
    }
  }

  private wallPoint(): void {
    const [north = Number.NaN, east = Number.NaN, z = Number.NaN] = this.numbers();
    if (Number.isFinite(north + east)) this.wall.push([east, north, z]);
    else this.unread++;
  }

  private endWall({ name, desc }: Record<string, string>): void {
    const line = lineOf(name ?? desc ?? "wall", this.wall, false);
    if (line) this.lines.push(line);
    this.wall = [];
  }

  private corner({ id = "", pntRef }: Record<string, string>): void {
    const [north, east, z] = this.numbers();
    if (north === undefined && pntRef !== undefined) {
      this.borrowed.push({ index: this.x.length, name: pntRef });
      this.ids.set(id, this.x.length);
      for (const column of [this.x, this.y, this.z]) column.push(Number.NaN);
      return;
    }
    if (north === undefined || east === undefined || z === undefined || !Number.isFinite(north + east + z)) {
      this.unread++;
      return;
    }
    this.ids.set(id, this.x.length);
    this.x.push(east);
    this.y.push(north);
    this.z.push(z);
  }

  private face({ i }: Record<string, string>): void {
    if (i === "1") {
      this.hidden++;
      return;
    }
    const corners = this.content
      .trim()
      .split(/\s+/)
      .map((id) => this.ids.get(id));
    const [a, b, c, d] = corners;
    if (a === undefined || b === undefined || c === undefined) this.lost++;
    else this.triangles.push(a, b, c);
    if (corners.length < 4) return;
    // The four corners of a grid's face go round it.
    if (a === undefined || c === undefined || d === undefined) this.lost++;
    else this.triangles.push(a, c, d);
  }

  /** Corners of a breakline or boundary (with heights), or of a contour (its height beside it). */
  private list(size: 2 | 3): void {
    const owner = this.path.at(-1) ?? "";
    if (!["Breakline", "Boundary", "Contour", "DataPoints", "PlanFeature"].includes(owner)) return;
    const at = this.attributes.at(-1) ?? {};
    const height = size === 2 ? Number(at.elev ?? Number.NaN) : 0;
    const numbers = this.numbers();
    const corners: [number, number, number][] = [];
    for (let k = 0; k + size <= numbers.length; k += size) {
      const [north, east, z] = [numbers[k], numbers[k + 1], size === 3 ? numbers[k + 2] : height];
      if (Number.isFinite((north as number) + (east as number)))
        corners.push([east as number, north as number, z ?? Number.NaN]);
      else this.unread++;
    }
    if (owner === "DataPoints") for (const [x, y, z] of corners) this.points.add("", x, y, z);
    else {
      const said = owner === "Contour" ? { kind: "contour" as const } : lineKind(at.desc ?? "", at.name);
      const name = at.name ?? at.desc ?? owner.toLowerCase();
      const line = lineOf(name, corners, owner === "Boundary", said);
      if (line) this.lines.push(line);
    }
  }
}
