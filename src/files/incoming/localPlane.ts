/**
 * Latitudes and longitudes on a local plane.
 *
 * Method  Transverse Mercator on the WGS 84 ellipsoid round the middle of the places, scale 1 there: within 10 km of it
 *         lengths are true to about a millimetre in a kilometre.
 * Source  proj4.
 */
import proj4 from "proj4";
import { type Incoming, type IncomingLine, type IncomingPoints, noPoints } from "./incoming";

export interface Origin {
  /** Degrees, WGS 84. */
  readonly latitude: number;
  readonly longitude: number;
}

export interface Plane {
  /** Longitude and latitude in degrees → metres east and north of the origin. */
  forward(longitude: number, latitude: number): [number, number];
  back(x: number, y: number): [number, number];
}

export function planeRound({ latitude, longitude }: Origin): Plane {
  const there = proj4(
    "+proj=longlat +datum=WGS84 +no_defs",
    `+proj=tmerc +lat_0=${latitude} +lon_0=${longitude} +k=1 +x_0=0 +y_0=0 +datum=WGS84 +units=m +no_defs`,
  );
  return {
    forward: (lon, lat) => there.forward([lon, lat]) as [number, number],
    back: (x, y) => there.inverse([x, y]) as [number, number],
  };
}

/** Points and lines with x longitude and y latitude, in degrees → metres, with what there is to say about the plane. Heights stay as they are. */
export function localPlane(
  points: IncomingPoints,
  lines: readonly IncomingLine[],
  marks: IncomingPoints = noPoints,
): Pick<Incoming, "points" | "marks" | "lines" | "onLocalPlane" | "crs"> {
  const origin = middle(points.x.length > 0 ? points : marks, lines);
  const plane = planeRound(origin);
  const laid = (part: IncomingPoints): IncomingPoints => {
    const [x, y] = [part.x.slice(), part.y.slice()];
    for (let i = 0; i < x.length; i++) [x[i], y[i]] = plane.forward(part.x[i] as number, part.y[i] as number);
    return { ...part, x, y };
  };
  const moved = lines.map((line) => {
    const xyz = line.xyz.slice();
    for (let i = 0; i < xyz.length; i += 3)
      [xyz[i], xyz[i + 1]] = plane.forward(line.xyz[i] as number, line.xyz[i + 1] as number);
    return { ...line, xyz };
  });
  return {
    points: laid(points),
    marks: laid(marks),
    lines: moved,
    onLocalPlane: true,
    crs: `local plane round latitude ${origin.latitude}°, longitude ${origin.longitude}° (WGS 84)`,
  };
}

/** Middle of the places on four decimals of a degree, so that it can be written down. */
function middle(points: IncomingPoints, lines: readonly IncomingLine[]): Origin {
  let minX = Infinity;
  let maxX = -Infinity;
  let minY = Infinity;
  let maxY = -Infinity;
  const take = (x: number, y: number) => {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  };
  for (let i = 0; i < points.x.length; i++) take(points.x[i] as number, points.y[i] as number);
  for (const { xyz } of lines)
    for (let i = 0; i < xyz.length; i += 3) take(xyz[i] as number, xyz[i + 1] as number);
  const short = (degrees: number) => Math.round(degrees * 1e4) / 1e4;
  return { latitude: short((minY + maxY) / 2), longitude: short((minX + maxX) / 2) };
}
