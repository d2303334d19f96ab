/** Reads and prints bearings: clockwise from north, whole-circle ("268.5°") or as a deed writes them ("S 88.5° W"). */
import { formatAngle, type ParsedAngle, parseAngle } from "./angle";

const fullTurn = 2 * Math.PI;
const QUADRANT = /^([NS])\s*(\S.*?)\s*([EW])$/i;
const ACCEPTED = `Write a bearing clockwise from north, like 268.5°, or like S 88.5° W.`;

/** "268.5°": 0 up to a full turn, with one decimal unless given. */
export function formatBearing(radians: number, decimals = 1): string {
  if (!Number.isFinite(radians)) return "–";
  const text = formatAngle(((radians % fullTurn) + fullTurn) % fullTurn, decimals);
  return Number.parseFloat(text) === 360 ? formatAngle(0, decimals) : text;
}

/**
 * A typed bearing.
 *
 * Answer  radians clockwise from north, 0 to a full turn.
 * Takes   a whole-circle bearing, or a quadrant bearing of at most 90° from north or south.
 * Errors  in words, with what is accepted.
 */
export function parseBearing(text: string): ParsedAngle {
  const quadrant = QUADRANT.exec(text.trim());
  const angle = parseAngle(quadrant?.[2] ?? text);
  if (!angle.ok) return refused(text, "as a bearing");
  if (!quadrant) return { ok: true, radians: ((angle.radians % fullTurn) + fullTurn) % fullTurn };
  if (angle.radians < 0 || angle.radians > Math.PI / 2 + 1e-12)
    return refused(text, "as a bearing: its angle is between 0° and 90°");
  const east = quadrant[3]?.toUpperCase() === "E" ? 1 : -1;
  const turned = quadrant[1]?.toUpperCase() === "N" ? east * angle.radians : Math.PI - east * angle.radians;
  return { ok: true, radians: (turned + fullTurn) % fullTurn };
}

function refused(text: string, as: string): ParsedAngle {
  return { ok: false, message: `Can't read "${text.trim()}" ${as}. ${ACCEPTED}` };
}
