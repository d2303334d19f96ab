/**
 * Bearings of a deed or plat: quadrant bearings (N 26°10′05″ E) and azimuths (206°10′05″), clockwise from north.
 *
 * Units   radians inside, from 0 to under 2 pi; degrees, minutes and seconds as people type them outside.
 * Errors  a sentence that says what was not understood and how to write it; nothing is guessed.
 */
import { plainSigns } from "./lengthTokens";

export type ParsedDeedBearing =
  | { readonly ok: true; readonly radians: number; readonly form: "quadrant" | "azimuth" }
  | { readonly ok: false; readonly message: string };

const ACCEPTED = `Write a bearing like N 26-10-05 E, S 68°05'35" W or due north, or an azimuth like 206-10-05 or 206.17.`;
const TURN = 2 * Math.PI;
const RADIANS = Math.PI / 180;
const DUE: Readonly<Record<string, number>> = { n: 0, e: 90, s: 180, w: 270 };
const SIDES = /^([ns]) ?(.+?) ?([ew])$/;

export function parseDeedBearing(text: string): ParsedDeedBearing {
  const plain = plainSigns(text)
    .toLowerCase()
    .replace(/[º˚]/g, "°")
    .replace(/\b(north|south|east|west)\b/g, (word) => word.charAt(0))
    .replace(/\b([nsew])\./g, "$1")
    .replace(/[,;]? ?$/, "");
  if (plain === "") return refuse("Nothing is typed here yet.");
  const due = DUE[plain.replace(/^due /, "")];
  if (due !== undefined) return { ok: true, radians: due * RADIANS, form: "quadrant" };
  const sides = SIDES.exec(plain);
  const angle = readDegrees(sides?.[2] ?? plain.replace(/^az(?:imuth)?\.? ?/, ""));
  if (typeof angle === "string") return refuse(`"${text.trim()}": ${angle}`);
  if (sides === null) return azimuth(angle, text);
  if (angle > 90)
    return refuse(
      `"${text.trim()}": a quadrant bearing goes from 0 to 90 degrees off ${sides[1] === "n" ? "north" : "south"}.`,
    );
  const fromNorth = sides[1] === "n" ? angle : 180 - angle;
  const degrees = sides[3] === "e" ? fromNorth : 360 - fromNorth;
  return { ok: true, radians: (degrees % 360) * RADIANS, form: "quadrant" };
}

function azimuth(degrees: number, text: string): ParsedDeedBearing {
  if (degrees > 360) return refuse(`"${text.trim()}" is more than a full turn of 360 degrees.`);
  return { ok: true, radians: (degrees % 360) * RADIANS, form: "azimuth" };
}

/** 26-10-05, 26 10 5, 26°10'05", 26:10:05, 26d10m5s, 26.168: degrees, or a sentence that says why not. */
function readDegrees(body: string): number | string {
  const parts = body
    // Two points make three numbers of it: 26.10.05.
    .replace(/^(\d+)\.(\d+)\.(\d+(?:\.\d+)?)$/, "$1-$2-$3")
    .replace(/deg(?:rees?)?\.?|°/g, "d")
    .replace(/min(?:utes?)?\.?/g, "m")
    .replace(/sec(?:onds?)?\.?/g, "s")
    .match(
      /^(\d+(?:[.,]\d+)?)(?: ?[d:-] ?| |$)(?:(\d+(?:[.,]\d+)?)(?: ?['m:-] ?| |$)(?:(\d+(?:[.,]\d+)?) ?["s]?)?)?$/,
    );
  if (parts === null) return "it isn't understood.";
  const given = parts.slice(1).filter((part) => part !== undefined);
  const [degrees = 0, minutes = 0, seconds = 0] = given.map((part) => Number(part.replace(",", ".")));
  if (minutes >= 60 || seconds >= 60) return "minutes and seconds stay below 60.";
  if (given.slice(0, -1).some((part) => /[.,]/.test(part)))
    return "only the last of degrees, minutes and seconds can have decimals.";
  return degrees + minutes / 60 + seconds / 3600;
}

/** "N 26°10′05″ E" or "26°10′05″", to the nearest second. */
export function formatDeedBearing(radians: number, form: "quadrant" | "azimuth" = "quadrant"): string {
  if (!Number.isFinite(radians)) return "–";
  const whole = 360 * 3600;
  const seconds = ((Math.round((radians / TURN) * whole) % whole) + whole) % whole;
  if (form === "azimuth") return inDegrees(seconds);
  const quarter = 90 * 3600;
  const north = seconds <= quarter || seconds >= 3 * quarter;
  const east = seconds <= 2 * quarter;
  const fromNorth = east ? seconds : whole - seconds;
  return `${north ? "N" : "S"} ${inDegrees(north ? fromNorth : 2 * quarter - fromNorth)} ${east ? "E" : "W"}`;
}

function inDegrees(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${Math.floor(seconds / 3600)}°${two(Math.floor(seconds / 60) % 60)}′${two(seconds % 60)}″`;
}

function refuse(why: string): ParsedDeedBearing {
  return { ok: false, message: `${why} ${ACCEPTED}` };
}
