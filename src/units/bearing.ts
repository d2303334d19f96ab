/** Reads and prints bearings: clockwise from north, whole-circle ("268.5°") or as a deed writes them ("S 88.5° W"). */
import { formatAngle, type ParsedAngle } from "./angle";
import { parseDeedBearing } from "./deedBearing";

const fullTurn = 2 * Math.PI;

/** "268.5°": 0 up to a full turn, with one decimal unless given. */
export function formatBearing(radians: number, decimals = 1): string {
  if (!Number.isFinite(radians)) return "–";
  const text = formatAngle(((radians % fullTurn) + fullTurn) % fullTurn, decimals);
  return Number.parseFloat(text) === 360 ? formatAngle(0, decimals) : text;
}

/**
 * A bearing typed while drawing: every form that a deed may have.
 *
 * Answer  radians clockwise from north, 0 to a full turn.
 * Errors  in words, with what is accepted.
 */
export function parseBearing(text: string): ParsedAngle {
  const read = parseDeedBearing(text);
  return read.ok ? { ok: true, radians: read.radians } : read;
}
