/** What a place of the plan is, in words: depth, fall, heights, and whether they were measured. */
import type { Display, Point, Project } from "../../document";
import { containsPoint, distance } from "../../geometry";
import type { GroundGrid, PlaceCatchment, Results } from "../../solve/results";
import { groundAt } from "../../terrain";
import { depthInWords, formatArea, formatLength, formatSlope, roundingFor } from "../../units";
import { cornerName } from "../select/places";

export interface PlaceReading {
  readonly inside: boolean;
  readonly guessed: boolean;
  /** The ground as it is, m. */
  readonly ground: number;
  /** Finished ground, or the floor inside the walls; null before there is a building. */
  readonly finished: number | null;
  /** Gradient of what water will run on: finished ground where there is one, else the ground; null where unknown. */
  readonly gradient: { readonly gx: number; readonly gy: number } | null;
}

/** Reads a place; null where there is no ground yet or the place lies beyond its reach. */
export function readPlace(
  results: Results,
  project: Project,
  at: Point,
  floor: number | null,
): PlaceReading | null {
  const ground = results.ground ? groundAt(results.ground, at[0], at[1]) : null;
  if (!ground) return null;
  const outline = project.building?.outline;
  const inside = outline !== undefined && containsPoint(outline, at[0], at[1]);
  const flat = { inside, guessed: ground.guessed, ground: ground.z };
  if (inside) return { ...flat, finished: floor, gradient: null };
  const gradient = { gx: ground.gx, gy: ground.gy };
  if (!results.surface) return { ...flat, finished: null, gradient };
  const finished = finishedAt(results.surface, at);
  // Beyond the grid no earth is moved.
  if (!finished) return { ...flat, finished: ground.z, gradient };
  return { ...flat, finished: finished.z, gradient: finished.gradient };
}

/**
 * Finished ground at a place outside the walls, between the centres of the grid's cells.
 *
 * Method  bilinear; cells inside the walls lend no height, so beside a wall the nearest cell outside decides.
 *         Null beyond the grid.
 */
function finishedAt(
  { grid, finished, inside }: GroundGrid,
  [x, y]: Point,
): { z: number; gradient: PlaceReading["gradient"] } | null {
  const u = (x - grid.x0) / grid.cell - 0.5;
  const v = (y - grid.y0) / grid.cell - 0.5;
  const i = Math.floor(u);
  const j = Math.floor(v);
  if (i < 0 || j < 0 || i + 1 >= grid.columns || j + 1 >= grid.rows) return null;
  const [s, t] = [u - i, v - j];
  const at = (di: number, dj: number) => (j + dj) * grid.columns + i + di;
  const corners = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
  const open = corners.filter((index) => inside[index] === 0);
  if (open.length === 0) return null;
  if (open.length < 4) {
    const nearest = nearestCorner(corners, open, s, t);
    return { z: finished[nearest] as number, gradient: null };
  }
  const [sw, se, nw, ne] = corners.map((index) => finished[index] as number) as [
    number,
    number,
    number,
    number,
  ];
  const z = sw * (1 - s) * (1 - t) + se * s * (1 - t) + nw * (1 - s) * t + ne * s * t;
  const gx = ((se - sw) * (1 - t) + (ne - nw) * t) / grid.cell;
  const gy = ((nw - sw) * (1 - s) + (ne - se) * s) / grid.cell;
  return { z, gradient: { gx, gy } };
}

function nearestCorner(corners: readonly number[], open: readonly number[], s: number, t: number): number {
  const off = [s + t, 1 - s + t, s + 1 - t, 2 - s - t];
  return open.reduce((best, index) =>
    (off[corners.indexOf(index)] as number) < (off[corners.indexOf(best)] as number) ? index : best,
  );
}

const winds = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"] as const;

/** The wind towards which the ground falls; `north` turns the plan's y axis to true north (clockwise). */
export function downhillWind(gx: number, gy: number, north: number): string {
  const azimuth = Math.atan2(-gx, -gy) - north;
  const eighth = Math.round(azimuth / (Math.PI / 4));
  return winds[((eighth % 8) + 8) % 8] as string;
}

/** Flatter than one in a thousand has no direction that a person could see. */
const flat = 0.001;

export interface PlaceWords {
  readonly lead: string;
  readonly falls: string;
  readonly heights: string;
  readonly from: string;
}

export function placeWords(reading: PlaceReading, project: Project, at: Point): PlaceWords {
  const { display } = project;
  const rounding = roundingFor(display.length, display);
  const length = (m: number) => formatLength(m, display.length, rounding);
  const falls = fallWords(reading, project);
  const certainty = reading.guessed ? "guessed: no shots around it" : "measured";
  const ground = `ground ${length(reading.ground)}`;
  const from = [certainty, cornerWords(project, at, length)].filter((part) => part !== "").join(" · ");
  if (reading.inside && reading.finished !== null) {
    const up = reading.finished - reading.ground;
    return {
      lead: `floor ${length(Math.abs(up))} ${up < 0 ? "below" : "above"} the ground`,
      falls: "",
      heights: `${ground}, floor ${length(reading.finished)}`,
      from,
    };
  }
  if (reading.finished === null) return { lead: ground, falls, heights: "", from };
  const depth = reading.finished - reading.ground;
  return {
    lead: depthInWords(depth, display.length, rounding),
    falls,
    heights: `${ground}, finished ${length(reading.finished)}`,
    from,
  };
}

/** "drains here: 120 ft², from up to 62′ off, falls 3′ 1″". */
export function drainsWords({ area, longest, fall, touchesEdge }: PlaceCatchment, display: Display): string {
  const rounding = roundingFor(display.length, display);
  const length = (m: number) => formatLength(m, display.length, rounding);
  const edge = touchesEdge ? ", or more" : "";
  return `drains here: ${formatArea(area, display.area)}${edge}, from up to ${length(longest)} off, falls ${length(fall)}`;
}

/** "falls 5.0 % to SE", "level"; empty where it isn't known. */
function fallWords({ gradient }: PlaceReading, { display, lot }: Project): string {
  if (!gradient) return "";
  const slope = Math.hypot(gradient.gx, gradient.gy);
  if (slope < flat) return "level";
  return `falls ${formatSlope(slope, display.slope)} to ${downhillWind(gradient.gx, gradient.gy, lot.north)}`;
}

/** "12′ 3″ from corner C"; empty without a building. */
function cornerWords(project: Project, at: Point, length: (m: number) => string): string {
  const outline = project.building?.outline ?? [];
  let nearest = -1;
  let least = Infinity;
  for (const [i, corner] of outline.entries()) {
    const d = distance(corner, at);
    if (d < least) [nearest, least] = [i, d];
  }
  return nearest < 0 ? "" : `${length(least)} from corner ${cornerName(nearest)}`;
}
