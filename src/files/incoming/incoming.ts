/**
 * What a file of ground brings in, before anything of it joins the document. Coordinates are in the file's own unit
 * until `inMetres` turns them; x east, y north, z up; a missing height is NaN.
 */
import type { BreaklineKind } from "../../document";
import { type FileUnit, metresPer } from "./units";

export interface IncomingPoints {
  /** Names in the order of the points, "" where a point has none. */
  readonly names: readonly string[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

export type LineKind = BreaklineKind | "contour";

export interface IncomingLine {
  /** Its name, or the layer it lay on. */
  readonly name: string;
  readonly closed: boolean;
  /** What the file says the line is; absent where it doesn't. A contour repeats the surface that it was drawn from. */
  readonly kind?: LineKind;
  /** Flat x, y, z. The first corner isn't repeated at the end of a closed line. */
  readonly xyz: Float64Array;
}

/** Triangles over corners of their own. */
export interface IncomingFaces {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Indices of corners, three a triangle. */
  readonly triangles: Uint32Array;
}

export type IncomingUnits =
  | { readonly known: true; readonly unit: FileUnit }
  /** The file doesn't say: ask. */
  | { readonly known: false };

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** NaN where nothing has a height. */
  readonly minZ: number;
  readonly maxZ: number;
}

export interface Incoming {
  readonly kind: "table" | "dxf" | "landxml" | "geojson" | "ascii-grid" | "geotiff";
  readonly points: IncomingPoints;
  /** Known heights that the file says aren't ground. */
  readonly marks: IncomingPoints;
  readonly lines: readonly IncomingLine[];
  readonly faces: IncomingFaces;
  /** Of all its numbers; of its heights alone where the places lie on a local plane. */
  readonly units: IncomingUnits;
  /** Its places have a unit, but nothing says that its heights have the same: ask. */
  readonly heightsAsked: boolean;
  /** Places that were degrees lie in metres on a local plane. */
  readonly onLocalPlane: boolean;
  /** Coordinate system as the file names it, or the local plane that latitudes and longitudes were placed on. */
  readonly crs: string | null;
  /** What was passed over or doubtful, in words. */
  readonly warnings: readonly string[];
  /** Null where there is nothing at all. */
  readonly bounds: Bounds | null;
}

export type ReadResult =
  | { readonly ok: true; readonly incoming: Incoming }
  | { readonly ok: false; readonly stopped: boolean; readonly message: string };

export const noPoints: IncomingPoints = {
  names: [],
  x: new Float64Array(0),
  y: new Float64Array(0),
  z: new Float64Array(0),
};

export const noFaces: IncomingFaces = {
  x: new Float64Array(0),
  y: new Float64Array(0),
  z: new Float64Array(0),
  triangles: new Uint32Array(0),
};

export function refused(message: string): ReadResult {
  return { ok: false, stopped: false, message };
}

/** Puts parts together with their bounds; a file that holds nothing to use is refused. */
export function received(
  file: string,
  parts: Pick<Incoming, "kind" | "units"> & Partial<Omit<Incoming, "kind" | "units" | "bounds">>,
): ReadResult {
  const points = parts.points ?? noPoints;
  const marks = parts.marks ?? noPoints;
  const lines = parts.lines ?? [];
  const faces = parts.faces ?? noFaces;
  const bounds = boundsOf(points, lines, faces, marks);
  if (bounds === null) {
    const why = parts.warnings?.length ? `\n${parts.warnings.join("\n")}` : "";
    return refused(`${file}: found no points, lines or faces of ground in it.${why}`);
  }
  const warnings = [...(parts.warnings ?? []), ...doubtsAbout(file, points, lines, faces)];
  return {
    ok: true,
    incoming: {
      kind: parts.kind,
      units: parts.units,
      heightsAsked: parts.heightsAsked ?? false,
      onLocalPlane: parts.onLocalPlane ?? false,
      points,
      marks,
      lines,
      faces,
      crs: parts.crs ?? null,
      warnings,
      bounds,
    },
  };
}

/** The box round everything, in the unit of its coordinates; null round nothing. */
export function boundsOf(
  points: IncomingPoints,
  lines: readonly IncomingLine[],
  faces: IncomingFaces,
  marks: IncomingPoints = noPoints,
): Bounds | null {
  const box = {
    minX: Infinity,
    minY: Infinity,
    maxX: -Infinity,
    maxY: -Infinity,
    minZ: Infinity,
    maxZ: -Infinity,
  };
  const take = (x: number, y: number, z: number) => {
    if (x < box.minX) box.minX = x;
    if (x > box.maxX) box.maxX = x;
    if (y < box.minY) box.minY = y;
    if (y > box.maxY) box.maxY = y;
    if (z < box.minZ) box.minZ = z;
    if (z > box.maxZ) box.maxZ = z;
  };
  for (const { x, y, z } of [points, faces, marks])
    for (let i = 0; i < x.length; i++) take(x[i] as number, y[i] as number, z[i] as number);
  for (const { xyz } of lines)
    for (let i = 0; i < xyz.length; i += 3)
      take(xyz[i] as number, xyz[i + 1] as number, xyz[i + 2] as number);
  if (box.minX > box.maxX) return null;
  return box.minZ > box.maxZ ? { ...box, minZ: Number.NaN, maxZ: Number.NaN } : box;
}

/**
 * Everything in metres, moved so that `origin` of the file (in the file's unit, [0, 0] if not given) is the plan's origin.
 * `units` of the answer are metres. Source: definitions of the units.
 */
export function inMetres(
  incoming: Incoming,
  unit: FileUnit,
  origin: readonly [number, number] = [0, 0],
  heightUnit: FileUnit = unit,
): Incoming {
  const k = incoming.onLocalPlane ? 1 : metresPer(unit);
  const kz = metresPer(heightUnit);
  const [ox, oy] = origin;
  const turned = <T extends IncomingFaces | IncomingPoints>(part: T): T => ({
    ...part,
    x: part.x.map((x) => (x - ox) * k),
    y: part.y.map((y) => (y - oy) * k),
    z: part.z.map((z) => z * kz),
  });
  const lines = incoming.lines.map((line) => ({
    ...line,
    xyz: line.xyz.map((value, i) => (i % 3 === 2 ? value * kz : (value - (i % 3 === 0 ? ox : oy)) * k)),
  }));
  const points = turned(incoming.points);
  const marks = turned(incoming.marks);
  const faces = turned(incoming.faces);
  return {
    ...incoming,
    points,
    marks,
    faces,
    lines,
    units: { known: true, unit: "m" },
    heightsAsked: false,
    onLocalPlane: false,
    bounds: boundsOf(points, lines, faces, marks),
  };
}

/** Coordinates this far from the plan's origin, in the file's unit, are better moved near it first. */
const FAR = 50_000;

/** A whole thousand near the middle of far coordinates, to be taken as the plan's origin; [0, 0] where they are near. */
export function suggestedOrigin(bounds: Bounds): readonly [number, number] {
  const middle = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2] as const;
  if (Math.max(Math.abs(middle[0]), Math.abs(middle[1])) < FAR) return [0, 0];
  return [Math.floor(middle[0] / 1000) * 1000, Math.floor(middle[1] / 1000) * 1000];
}

function doubtsAbout(
  file: string,
  points: IncomingPoints,
  lines: readonly IncomingLine[],
  faces: IncomingFaces,
): string[] {
  const said: string[] = [];
  const count = points.x.length;
  if (count > 0 && count < 3 && lines.length === 0 && faces.triangles.length === 0) {
    said.push(`${file}: found ${count === 1 ? "one point" : "two points"}. A surface needs at least three.`);
  } else if (count >= 3 && lines.length === 0 && faces.triangles.length === 0 && inOneLine(points)) {
    said.push(
      `${file}: all ${count} points lie in one straight line. A surface needs at least one beside it.`,
    );
  }
  const doubled = doubledPoints(points);
  if (doubled.places > 0) {
    const heights =
      doubled.apart === 0
        ? ""
        : ` At ${doubled.apart} of them the heights differ, by up to ${Number(doubled.most.toFixed(4))}: the first one makes the ground.`;
    const stand = doubled.places === 1 ? "1 point stands" : `${doubled.places} points stand`;
    said.push(`${file}: ${stand} where an earlier one does.${heights}`);
  }
  let flat = 0;
  for (const z of points.z) if (Number.isNaN(z)) flat++;
  if (flat > 0)
    said.push(
      flat === 1
        ? `${file}: 1 of ${count} points has no height; it makes no ground.`
        : `${file}: ${flat} of ${count} points have no height; they make no ground.`,
    );
  return said;
}

function inOneLine({ x, y }: IncomingPoints): boolean {
  const x0 = x[0] as number;
  const y0 = y[0] as number;
  let far = 0;
  let dx = 0;
  let dy = 0;
  for (let i = 1; i < x.length; i++) {
    const away = Math.hypot((x[i] as number) - x0, (y[i] as number) - y0);
    if (away > far) [far, dx, dy] = [away, (x[i] as number) - x0, (y[i] as number) - y0];
  }
  if (far === 0) return true;
  return x.every((px, i) => Math.abs((px - x0) * dy - ((y[i] as number) - y0) * dx) <= 1e-9 * far * far);
}

function doubledPoints({ x, y, z }: IncomingPoints) {
  const order = Uint32Array.from(x, (_, i) => i).sort(
    (a, b) => (x[a] as number) - (x[b] as number) || (y[a] as number) - (y[b] as number) || a - b,
  );
  let places = 0;
  let apart = 0;
  let most = 0;
  let first = order[0] ?? 0;
  for (let k = 1; k < order.length; k++) {
    const i = order[k] as number;
    if (x[i] !== x[first] || y[i] !== y[first]) {
      first = i;
      continue;
    }
    places++;
    const difference = Math.abs((z[i] as number) - (z[first] as number));
    if (difference > 0) apart++;
    if (difference > most) most = difference;
  }
  return { places, apart, most };
}
