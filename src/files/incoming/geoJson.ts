/**
 * GeoJSON → points, lines and triangles. Longitudes and latitudes (the format's rule) are placed on a local plane; a file
 * that names another system, or holds more than degrees can be, is taken as plane coordinates.
 *
 * Source  RFC 7946; the older `crs` member for plane coordinates.
 */
import { FaceGatherer, lineOf, PointGatherer } from "./growing";
import {
  type IncomingLine,
  type IncomingUnits,
  noFaces,
  type ReadResult,
  received,
  refused,
} from "./incoming";
import { goesOn, type Job, stopped } from "./job";
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

/** RFC 7946: the third number of a position is a height in metres. */
const heightsOfStandard: IncomingUnits = { known: true, unit: "m" };

class Gathered {
  private readonly points = new PointGatherer();
  private readonly faces = new FaceGatherer();
  private readonly lines: IncomingLine[] = [];
  private readonly passed = new Map<string, number>();
  private unread = 0;
  private tin = false;

  feature(thing: unknown) {
    if (!isObject(thing)) return this.pass("unknown");
    if (thing.type !== "Feature") return this.geometry(thing, "", false);
    const properties = isObject(thing.properties) ? thing.properties : {};
    const name = properties.name ?? properties.layer ?? properties.kind ?? "";
    const height = typeof properties.height === "number" ? properties.height : Number.NaN;
    return this.geometry(thing.geometry, String(name), properties.kind === "triangle", height);
  }

  result(file: string, system: System): ReadResult {
    const points = this.points.done();
    const faces = this.tin ? this.faces.done() : noFaces;
    const warnings: string[] = [];
    if (this.passed.size > 0)
      warnings.push(
        `${file}: passed over ${[...this.passed].map(([kind, count]) => `${count} ${kind}`).join(", ")}.`,
      );
    if (this.unread > 0)
      warnings.push(`${file}: ${this.unread} places can't be read as numbers and were passed over.`);
    const parts = { kind: "geojson", warnings } as const;
    const degrees = system.plane === null ? inDegrees(points, this.lines, faces) : !system.plane;
    if (!degrees)
      return received(file, {
        ...parts,
        points,
        lines: this.lines,
        faces,
        units: system.units,
        crs: system.name,
      });
    if (points.x.length + this.lines.length + faces.x.length === 0)
      return received(file, { ...parts, units: system.units });
    // Corners of triangles go along as points, so that all are placed on one plane.
    const corners = {
      names: [],
      x: joined(points.x, faces.x),
      y: joined(points.y, faces.y),
      z: joined(points.z, faces.z),
    };
    const placed = localPlane(corners, this.lines);
    const cut = points.x.length;
    return received(file, {
      ...parts,
      ...placed,
      units: system.units.known ? system.units : heightsOfStandard,
      points: { ...points, x: placed.points.x.slice(0, cut), y: placed.points.y.slice(0, cut) },
      faces: { ...faces, x: placed.points.x.slice(cut), y: placed.points.y.slice(cut) },
    });
  }

  private pass(kind: string): void {
    this.passed.set(kind, (this.passed.get(kind) ?? 0) + 1);
  }

  private geometry(shape: unknown, name: string, triangle: boolean, height = Number.NaN) {
    if (!isObject(shape)) return this.pass("features without a geometry");
    const at = Array.isArray(shape.coordinates) ? shape.coordinates : [];
    const corner = (place: unknown): Corner[] => {
      const [x, y, z = height] = Array.isArray(place) ? (place as unknown[]) : [];
      if (typeof x === "number" && typeof y === "number" && Number.isFinite(x + y))
        return [[x, y, typeof z === "number" ? z : Number.NaN]];
      this.unread++;
      return [];
    };
    const list = (places: unknown) => (Array.isArray(places) ? places.flatMap(corner) : []);
    switch (shape.type) {
      case "Point":
        return this.dots(name, corner(at));
      case "MultiPoint":
        return this.dots(name, list(at));
      case "LineString":
        return this.line(name, list(at), false);
      case "MultiLineString":
        for (const part of at) this.line(name, list(part), false);
        return;
      case "Polygon":
        return this.polygon(name, at.map(list), triangle);
      case "MultiPolygon":
        for (const part of at) this.polygon(name, Array.isArray(part) ? part.map(list) : [], triangle);
        return;
      case "GeometryCollection":
        for (const part of Array.isArray(shape.geometries) ? shape.geometries : [])
          this.geometry(part, name, triangle, height);
        return;
      default:
        this.pass(String(shape.type));
    }
  }

  private dots(name: string, corners: readonly Corner[]): void {
    for (const [x, y, z] of corners) this.points.add(name, x, y, z);
  }

  private polygon(name: string, rings: readonly Corner[][], triangle: boolean): void {
    const [a, b, c] = rings[0] ?? [];
    if (triangle && rings.length === 1 && rings[0]?.length === 4 && a && b && c) {
      this.tin = true;
      this.faces.add(a, b, c);
    } else for (const ring of rings) this.line(name, ring, true);
  }

  private line(name: string, corners: readonly Corner[], closed: boolean): void {
    const line = lineOf(name, corners, closed);
    if (line) this.lines.push(line);
    else this.pass("lines with fewer than two places");
  }
}

function inDegrees(
  ...[points, lines, faces]: [
    { x: Float64Array; y: Float64Array },
    readonly IncomingLine[],
    { x: Float64Array; y: Float64Array },
  ]
) {
  const fits = (x: number, y: number) => Math.abs(x) <= 180 && Math.abs(y) <= 90;
  const all = (part: { x: Float64Array; y: Float64Array }) =>
    part.x.every((x, i) => fits(x, part.y[i] as number));
  return (
    all(points) &&
    all(faces) &&
    lines.every(({ xyz }) => xyz.every((v, i) => i % 3 === 2 || Math.abs(v) <= (i % 3 === 0 ? 180 : 90)))
  );
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const both = new Float64Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
