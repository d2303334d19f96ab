/** The walls as lines with the ground along them: what the foundation's checks read. Metres. */
import type { Point } from "../geometry";
import type { ElevationOpening, FootingPiece, WallPlace } from "../solve/results";

/** One wall with stations along it, its ends the first and the last. */
export interface WallLine {
  readonly wall: number;
  readonly name: string;
  readonly start: Point;
  readonly along: Point;
  readonly length: number;
  readonly distance: Float64Array;
  readonly existing: Float64Array;
  readonly finished: Float64Array;
  readonly guessed: Uint8Array;
  /** 1 where the earth of a drive to a door lies higher than the ground would without it. */
  readonly driven: Uint8Array;
  /** By the test pits; null where none met that layer. */
  readonly firm: Float64Array | null;
  readonly rock: Float64Array | null;
  readonly water: Float64Array | null;
  readonly openings: readonly ElevationOpening[];
}

/** A wall with the footing under it. */
export interface FootedLine extends WallLine {
  readonly stripped: Float64Array;
  /** The ground that stays as it is: stripped, firm by the pits, cut where it is cut. */
  readonly undisturbed: Float64Array;
  readonly bottom: Float64Array;
  readonly pieces: readonly FootingPiece[];
}

export type PlaceWords = (at: Point) => string;

export function placeOn(line: WallLine, station: number, place: PlaceWords): WallPlace {
  const offset = line.distance[station] as number;
  return placeAt(line, offset, place);
}

export function placeAt(line: WallLine, offset: number, place: PlaceWords): WallPlace {
  const at: [number, number] = [
    line.start[0] + line.along[0] * offset,
    line.start[1] + line.along[1] * offset,
  ];
  return { wall: line.wall, offset, at, place: place(at) };
}

/** The station where a figure is least, over all walls. */
export function leastAt<L extends WallLine>(
  lines: readonly L[],
  figure: (line: L, station: number) => number,
): { readonly line: L; readonly station: number; readonly value: number } {
  let best: { line: L; station: number; value: number } | null = null;
  for (const line of lines) {
    for (let i = 0; i < line.distance.length; i++) {
      const value = figure(line, i);
      if (!best || value < best.value) best = { line, station: i, value };
    }
  }
  if (!best) throw new RangeError("a building has walls with stations");
  return best;
}
