/** What the rod says to people who hear it instead of seeing it. */

import type { Display } from "../../document";
import { outsideBand } from "../../solve/floor-standing";
import type { BandResult, CornerResult } from "../../solve/results";
import { formatLength, roundingFor } from "../../units";

type SpanBand = Pick<BandResult, "low" | "high" | "spans" | "empty">;

/** "99′ 5½″, 10¾″ out of the ground at A, 2′ 6½″ at C, inside its limits". */
export function floorInWords(
  floor: number,
  corners: readonly CornerResult[],
  band: SpanBand,
  display: Display,
): string {
  const length = (m: number) => formatLength(m, display.length, roundingFor(display.length, display));
  const parts = [length(floor)];
  const sorted = [...corners].sort((a, b) => a.floorAboveGround - b.floorAboveGround);
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (least) {
    parts.push(outOfGround(least, length));
    if (most && most !== least) parts.push(outOfGround(most, length));
  }
  parts.push(bandWords(floor, band, length));
  return parts.filter((part) => part !== "").join(", ");
}

function outOfGround({ name, floorAboveGround }: CornerResult, length: (m: number) => string): string {
  const way = floorAboveGround < 0 ? "below the ground" : "out of the ground";
  return `${length(Math.abs(floorAboveGround))} ${way} at ${name}`;
}

function bandWords(floor: number, band: SpanBand, length: (m: number) => string): string {
  if (band.empty) return "no height keeps all limits";
  const outside = outsideBand(band, floor);
  if (outside) return `${length(outside.by)} ${outside.way === "low" ? "below" : "above"} its limits`;
  return band.low === null && band.high === null ? "" : "inside its limits";
}
