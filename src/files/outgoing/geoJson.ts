/**
 * GeoJSON: points, breaklines, contours and triangles as features. The plan's metres as they are, said by the member
 * `plane`; or, where the plan's origin is known, longitudes and latitudes (WGS 84) as RFC 7946 wants them.
 */
import { type Origin, planeRound } from "../incoming/localPlane";
import type { Outgoing, OutgoingPoint } from "./outgoing";

type Place = number[];

export function geoJsonFile(out: Outgoing, origin?: Origin): string {
  const plane = origin && planeRound(origin);
  const at = (x: number, y: number, z: number | null): Place => {
    const place = plane ? plane.back(x, y) : [x, y];
    return z === null ? place : [...place, z];
  };
  const features = [...points(out, at), ...lines(out, at), ...contours(out, at), ...triangles(out, at)];
  const rows = features.map((feature) => JSON.stringify(feature)).join(",\n");
  const head = plane ? "" : '"plane":{"name":"local plane","unit":"m"},';
  return `{"type":"FeatureCollection","name":${JSON.stringify(out.name)},${head}"features":[\n${rows}\n]}\n`;
}

type At = (x: number, y: number, z: number | null) => Place;

function feature(type: string, coordinates: unknown, properties: Record<string, unknown>) {
  return { type: "Feature", properties, geometry: { type, coordinates } };
}

function points({ points: all, marks }: Outgoing, at: At) {
  const of = (kind: string) => (point: OutgoingPoint) =>
    feature("Point", at(point.x, point.y, point.z), { name: point.name, kind });
  return [...all.map(of("ground")), ...marks.map(of("mark"))];
}

function lines({ lines: all }: Outgoing, at: At) {
  return all.map(({ name, kind, closed, points: corners }) => {
    const places = corners.map(([x, y, z]) => at(x, y, z));
    if (closed && places[0]) return feature("Polygon", [[...places, places[0]]], { name, kind });
    return feature("LineString", places, { name, kind });
  });
}

function contours({ contours: all }: Outgoing, at: At) {
  return all.flatMap(({ height, major, lines: runs }) =>
    runs.map((run) => {
      const places: Place[] = [];
      for (let i = 0; i < run.length; i += 2) places.push(at(run[i] as number, run[i + 1] as number, height));
      return feature("LineString", places, { kind: "contour", height, major });
    }),
  );
}

function triangles({ surface }: Outgoing, at: At) {
  if (!surface) return [];
  const { x, y, z, triangles: corners } = surface;
  const all: ReturnType<typeof feature>[] = [];
  for (let t = 0; t < corners.length; t += 3) {
    const places = [0, 1, 2, 0].map((k) => {
      const i = corners[t + k] as number;
      return at(x[i] as number, y[i] as number, z[i] as number);
    });
    all.push(feature("Polygon", [places], { kind: "triangle" }));
  }
  return all;
}
