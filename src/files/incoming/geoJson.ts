/**
 * GeoJSON → points, lines and triangles. Longitudes and latitudes (the format's rule) are placed on a local plane; a file
 * that names another system, or holds more than degrees can be, is taken as plane coordinates.
 *
 * Source  RFC 7946; the older `crs` member for plane coordinates.
 */
import { FaceGatherer, lineOf, PointGatherer } from "./growing";
import {
  type IncomingLine,
  type IncomingPoints,
  type IncomingUnits,
  noFaces,
  type ReadResult,
  received,
  refused,
} from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { lineKind, saysMark } from "./kinds";
import { localPlane } from "./localPlane";
import { type FileUnit, fileUnits } from "./units";

type Json = { readonly [key: string]: unknown };
type Corner = [number, number, number];

const FEATURES_PER_STEP = 20_000;

export async function readGeoJson(file: string, text: string, job: Job = {}): Promise<ReadResult> {
  let whole: unknown;
  try {
    whole = JSON.parse(text);
  } catch {
    return refused(`${file} is no whole JSON. Is the file cut off?`);
  }
  if (!isObject(whole) || typeof whole.type !== "string") return refused(`${file} is JSON, but not GeoJSON.`);
  const list = Array.isArray(whole.features) ? whole.features : [whole];
  const gathered = new Gathered();
  for (let i = 0; i < list.length; i++) {
    gathered.feature(list[i]);
    if (i % FEATURES_PER_STEP === FEATURES_PER_STEP - 1 && !(await goesOn(job, i / list.length)))
      return stopped;
  }
  return gathered.result(file, systemOf(whole));
}

interface System {
  readonly name: string | null;
  /** Null: degrees, unless the coordinates are too large for them. */
  readonly plane: boolean | null;
  readonly units: IncomingUnits;
}

function systemOf(whole: Json): System {
  const own = whole.plane;
  if (isObject(own) && (fileUnits as readonly unknown[]).includes(own.unit))
    return {
      name: String(own.name ?? "local plane"),
      plane: true,
      units: { known: true, unit: own.unit as FileUnit },
    };
  const crs = isObject(whole.crs) && isObject(whole.crs.properties) ? whole.crs.properties.name : undefined;
  if (typeof crs !== "string") return { name: null, plane: null, units: { known: false } };
  return { name: crs, plane: !/CRS84|EPSG:+:?4326$/i.test(crs), units: { known: false } };
}

/** What a feature's properties say of its geometry. `height` is NaN where they say none. */
interface Said {
  readonly name: string;
  readonly kind: string;
  readonly layer: string;
  readonly height: number;
}

const plainThing: Said = { name: "", kind: "", layer: "", height: Number.NaN };

/** RFC 7946: the third number of a position is a height in metres. */
const heightsOfStandard: IncomingUnits = { known: true, unit: "m" };

class Gathered {
  private readonly points = new PointGatherer();
  private readonly marks = new PointGatherer();
  private readonly faces = new FaceGatherer();
  private readonly lines: IncomingLine[] = [];
  private readonly passed = new Map<string, number>();
  private unread = 0;
  private tin = false;

  feature(thing: unknown) {
    if (!isObject(thing)) return this.pass("unknown");
    if (thing.type !== "Feature") return this.geometry(thing, plainThing);
    const properties = isObject(thing.properties) ? thing.properties : {};
    const name = properties.name ?? properties.layer ?? properties.kind ?? "";
    const height = typeof properties.height === "number" ? properties.height : Number.NaN;
    const [kind, layer] = [String(properties.kind ?? ""), String(properties.layer ?? properties.kind ?? "")];
    return this.geometry(thing.geometry, { name: String(name), kind, layer, height });
  }

  result(file: string, system: System): ReadResult {
    const points = this.points.done();
    const marks = this.marks.done();
    const faces = this.tin ? this.faces.done() : noFaces;
    const warnings: string[] = [];
    if (this.passed.size > 0)
      warnings.push(
        `${file}: passed over ${[...this.passed].map(([kind, count]) => `${count} ${kind}`).join(", ")}.`,
      );
    if (this.unread > 0)
      warnings.push(`${file}: ${this.unread} places can't be read as numbers and were passed over.`);
    const parts = { kind: "geojson", warnings } as const;
    const degrees = system.plane === null ? inDegrees([points, marks, faces], this.lines) : !system.plane;
    if (!degrees)
      return received(file, {
        ...parts,
        points,
        marks,
        lines: this.lines,
        faces,
        units: system.units,
        crs: system.name,
      });
    if (points.x.length + marks.x.length + this.lines.length + faces.x.length === 0)
      return received(file, { ...parts, units: system.units });
    // Marks and corners of triangles go along as points, so that all are placed on one plane.
    const parted = [points, marks, faces];
    const corners = {
      names: [],
      x: joined(parted.map(({ x }) => x)),
      y: joined(parted.map(({ y }) => y)),
      z: joined(parted.map(({ z }) => z)),
    };
    const placed = localPlane(corners, this.lines);
    const ends = [points.x.length, points.x.length + marks.x.length] as const;
    const cut = (from: number, to?: number) => ({
      x: placed.points.x.slice(from, to),
      y: placed.points.y.slice(from, to),
    });
    return received(file, {
      ...parts,
      ...placed,
      units: system.units.known ? system.units : heightsOfStandard,
      points: { ...points, ...cut(0, ends[0]) },
      marks: { ...marks, ...cut(...ends) },
      faces: { ...faces, ...cut(ends[1]) },
    });
  }

  private pass(kind: string): void {
    this.passed.set(kind, (this.passed.get(kind) ?? 0) + 1);
  }

  private geometry(shape: unknown, said: Said) {
    if (!isObject(shape)) return this.pass("features without a geometry");
    const at = Array.isArray(shape.coordinates) ? shape.coordinates : [];
    const corner = (place: unknown): Corner[] => {
      const [x, y, z = said.height] = Array.isArray(place) ? (place as unknown[]) : [];
      if (typeof x === "number" && typeof y === "number" && Number.isFinite(x + y))
        return [[x, y, typeof z === "number" ? z : Number.NaN]];
      this.unread++;
      return [];
    };
    const list = (places: unknown) => (Array.isArray(places) ? places.flatMap(corner) : []);
    switch (shape.type) {
      case "Point":
        return this.dots(said, corner(at));
      case "MultiPoint":
        return this.dots(said, list(at));
      case "LineString":
        return this.line(said, list(at), false);
      case "MultiLineString":
        for (const part of at) this.line(said, list(part), false);
        return;
      case "Polygon":
        return this.polygon(said, at.map(list));
      case "MultiPolygon":
        for (const part of at) this.polygon(said, Array.isArray(part) ? part.map(list) : []);
        return;
      case "GeometryCollection":
        for (const part of Array.isArray(shape.geometries) ? shape.geometries : []) this.geometry(part, said);
        return;
      default:
        this.pass(String(shape.type));
    }
  }

  private dots({ name, kind }: Said, corners: readonly Corner[]): void {
    const list = saysMark(kind) ? this.marks : this.points;
    for (const [x, y, z] of corners) list.add(name, x, y, z);
  }

  private polygon(said: Said, rings: readonly Corner[][]): void {
    const [a, b, c] = rings[0] ?? [];
    if (said.kind === "triangle" && rings.length === 1 && rings[0]?.length === 4 && a && b && c) {
      this.tin = true;
      this.faces.add(a, b, c);
    } else for (const ring of rings) this.line(said, ring, true);
  }

  private line({ name, kind, layer }: Said, corners: readonly Corner[], closed: boolean): void {
    const line = lineOf(name, corners, closed, lineKind(kind, layer));
    if (line) this.lines.push(line);
    else this.pass("lines with fewer than two places");
  }
}

function inDegrees(parts: readonly Pick<IncomingPoints, "x" | "y">[], lines: readonly IncomingLine[]) {
  const fits = (x: number, y: number) => Math.abs(x) <= 180 && Math.abs(y) <= 90;
  return (
    parts.every(({ x, y }) => x.every((east, i) => fits(east, y[i] as number))) &&
    lines.every(({ xyz }) => xyz.every((v, i) => i % 3 === 2 || Math.abs(v) <= (i % 3 === 0 ? 180 : 90)))
  );
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
