/** What a place of the plan is, in words: depth, fall, heights, and whether they were measured. */
import type { Display, Point, Project } from "../../document";
import { distance } from "../../geometry";
import type { PlaceReading } from "../../solve/read-place";
import type { PlaceCatchment } from "../../solve/results";
import { depthInWords, formatArea, formatLength, formatSlope, roundingFor } from "../../units";
import { cornerName } from "../select/places";

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
  /** Measured or guessed, and why where there is a reason. */
  readonly certainty: { readonly word: string; readonly why: string };
  /** The nearest corner of the building, and how far off it is; null without a building. */
  readonly near: { readonly off: string; readonly corner: string } | null;
}

export function placeWords(reading: PlaceReading, project: Project, at: Point): PlaceWords {
  const { display } = project;
  const rounding = roundingFor(display.length, display);
  const length = (m: number) => formatLength(m, display.length, rounding);
  const falls = fallWords(reading, project);
  const certainty = reading.guessed
    ? { word: "guessed", why: ": no shots around it" }
    : { word: "measured", why: "" };
  const ground = `ground ${length(reading.ground)}`;
  const near = nearestCorner(project, at, length);
  if (reading.inside && reading.finished !== null) {
    const up = reading.finished - reading.ground;
    return {
      lead: `floor ${length(Math.abs(up))} ${up < 0 ? "below" : "above"} the ground`,
      falls: "",
      heights: `${ground}, floor ${length(reading.finished)}`,
      certainty,
      near,
    };
  }
  if (reading.finished === null) return { lead: ground, falls, heights: "", certainty, near };
  const depth = reading.finished - reading.ground;
  return {
    lead: depthInWords(depth, display.length, rounding),
    falls,
    heights: `${ground}, finished ${length(reading.finished)}`,
    certainty,
    near,
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

function nearestCorner(project: Project, at: Point, length: (m: number) => string): PlaceWords["near"] {
  const outline = project.building?.outline ?? [];
  let nearest = -1;
  let least = Infinity;
  for (const [i, corner] of outline.entries()) {
    const d = distance(corner, at);
    if (d < least) [nearest, least] = [i, d];
  }
  return nearest < 0 ? null : { off: length(least), corner: cornerName(nearest) };
}
