/**
 * The trench: how wide, how much soil, what goes back, where the heap lies.
 *
 * Units   metres, m3 in the bank; side slopes run for one of rise.
 * Method  Below the stripped ground, or below what the mass cut leaves where that is lower (outside the finished ground, inside
 *         the earth under the base: half a section each, so that no soil is counted with both). Section by section along the
 *         wall: bottom width × depth + run × depth² for two sloped sides; benches cut run × depth × bench / 2 more on each side,
 *         so that they are nowhere steeper than the slope. Sections are taken along the centreline of the wall, corners counted
 *         once. The heap is a ridge at 1.5 : 1, loose, outside.
 * Source  29 CFR 1926.651 and .652 with appendix B to subpart P: 3/4, 1 and 1 1/2 : 1 for soil A, B and C, stable rock upright;
 *         sides from 5 ft; spoil 2 ft back. Where a rule of the place asks for more, that holds.
 */
import type { TrenchSoil } from "../document/schema";
import { type Point, perimeter } from "../geometry";
import type { TrenchDig } from "../solve/results";
import { edgeBetween } from "./concrete";
import type { FootingDemand } from "./footing";
import { type FootedLine, leastAt, type PlaceWords, placeOn } from "./lines";
import { lengthInside } from "./ring-lengths";

/** Sides must be sloped or shored from here, m (5 ft). */
const protectedDepth = 1.524;
/** Run for one of rise of a heap of loose soil. */
const heapSlope = 1.5;

export const soilSlopes: Readonly<Record<TrenchSoil, number>> = { rock: 0, A: 0.75, B: 1, C: 1.5 };

export function trenchDig(
  lines: readonly FootedLine[],
  outline: readonly Point[],
  { foundation }: FootingDemand,
  earthInside: number,
  { swell, shrink }: { readonly swell: number; readonly shrink: number },
  place: PlaceWords,
): TrenchDig {
  const { trench, footingThickness, kind, edge } = foundation;
  const wallThickness = kind === "thickened-edge" ? edge.width : foundation.wallThickness;
  const footingWidth = kind === "thickened-edge" ? edge.width : foundation.footingWidth;
  const deep = leastAt(
    lines,
    (line, i) =>
      (line.bottom[i] as number) - Math.min(line.existing[i] as number, line.finished[i] as number),
  );
  const depth = -deep.value;
  const sides = sidesOf(foundation, depth);
  const slope = sides === "sloped" || sides === "benched" ? soilSlopes[trench.soil] : 0;
  const bench = sides === "benched" ? trench.benchHeight : 0;
  const bottomWidth = footingWidth + 2 * trench.workingSpace;
  const halved = (figure: (depth: number) => number) => (line: FootedLine, i: number) => {
    const [stripped, bottom] = [line.stripped[i] as number, line.bottom[i] as number];
    const outside = Math.min(stripped, line.finished[i] as number);
    const inside = Math.min(stripped, earthInside);
    return (figure(Math.max(0, outside - bottom)) + figure(Math.max(0, inside - bottom))) / 2;
  };
  const section = halved((d) => bottomWidth * d + slope * d * d + slope * d * Math.min(bench, d));
  const cast = halved((d) =>
    kind === "thickened-edge"
      ? edge.width * d
      : footingWidth * Math.min(footingThickness, d) + wallThickness * Math.max(0, d - footingThickness),
  );
  const ratio =
    lengthInside(outline, kind === "thickened-edge" ? edge.width / 2 : wallThickness / 2) /
    perimeter(outline);
  const along = (figure: typeof section) =>
    lines.reduce((sum, line) => sum + integral(line, figure), 0) * ratio;
  const volume = along(section);
  const filled = along(cast);
  return {
    soil: trench.soil,
    sideSlope: slope,
    sides,
    bottomWidth,
    deepest: { depth, at: placeOn(deep.line, deep.station, place) },
    widestTop: bottomWidth + 2 * slope * Math.max(0, depth),
    volume,
    backfill: volume - filled,
    // Compacted it takes more of the bank than the room it fills.
    leftOver: Math.max(0, volume - (volume - filled) / shrink),
    spoil: lines.map((line) => {
      const face = wallThickness / 2 - bottomWidth / 2;
      const most = deepestOn(line);
      const edgeAt = -face + slope * most;
      const loose = integral(line, section) * ratio * swell;
      const height = Math.sqrt(loose / line.length / heapSlope);
      const from = edgeAt + trench.spoilBack;
      return {
        wall: line.wall,
        name: line.name,
        edge: edgeAt,
        from,
        to: from + 2 * heapSlope * height,
        height,
        loose,
      };
    }),
  };
}

/**
 * Room in the fill inside that the walls themselves take, m3: from the stripped ground up to the earth under the base, as
 * wide as the wall; of a thickened edge what lies under its base stone. Only what stands round a fill takes any. `measured`: the
 * room of a stem wall where it was summed on the ground itself.
 */
export function wallsInFill(
  lines: readonly FootedLine[],
  outline: readonly Point[],
  foundation: FootingDemand["foundation"],
  earthInside: number,
  measured: number | null = null,
): number {
  const { kind, wallThickness } = foundation;
  if (kind === "thickened-edge") return edgeInFill(lines, outline, foundation, earthInside);
  if (kind !== "stem-wall") return 0;
  if (measured !== null) return measured;
  const ratio = lengthInside(outline, wallThickness / 2) / perimeter(outline);
  const high = (line: FootedLine, i: number) => Math.max(0, earthInside - (line.stripped[i] as number));
  return lines.reduce((sum, line) => sum + integral(line, high), 0) * ratio * wallThickness;
}

/** The edge under its base stone, as far down as there is fill. */
function edgeInFill(
  lines: readonly FootedLine[],
  outline: readonly Point[],
  foundation: FootingDemand["foundation"],
  earthInside: number,
): number {
  const under = foundation.insulation + foundation.baseThickness;
  const { centroid } = edgeBetween(foundation, under, foundation.edge.depth);
  const ratio = lengthInside(outline, centroid) / perimeter(outline);
  const section = (line: FootedLine, i: number) =>
    edgeBetween(foundation, under, under + Math.max(0, earthInside - (line.stripped[i] as number))).area;
  return lines.reduce((sum, line) => sum + integral(line, section), 0) * ratio;
}

function sidesOf({ trench }: FootingDemand["foundation"], depth: number): TrenchDig["sides"] {
  if (trench.sides !== "as-needed") return trench.sides;
  return depth >= protectedDepth ? "sloped" : "upright";
}

function deepestOn(line: FootedLine): number {
  let most = 0;
  for (let i = 0; i < line.distance.length; i++)
    most = Math.max(
      most,
      Math.min(line.stripped[i] as number, line.finished[i] as number) - (line.bottom[i] as number),
    );
  return most;
}

function integral(line: FootedLine, figure: (line: FootedLine, station: number) => number): number {
  let sum = 0;
  for (let i = 1; i < line.distance.length; i++)
    sum +=
      (((line.distance[i] as number) - (line.distance[i - 1] as number)) *
        (figure(line, i - 1) + figure(line, i))) /
      2;
  return sum;
}
