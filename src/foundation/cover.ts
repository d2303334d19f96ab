/**
 * Whether the footing lies deep enough: below finished ground, below undisturbed ground, and into it.
 *
 * Units   metres; a cover is ground − bottom of footing. For frost, undisturbed ground is the ground as it is, or as it is cut:
 *         fill counts for nothing. For bearing it begins below the topsoil strip, and below old fill where pits tell of it.
 * Method  At every station; a share of length counts a stretch by half for each of its ends.
 * Source  Frost: IRC R403.1.4.1 (2012). Undisturbed ground: R403.1.4, 12 in. Which ground frost cover counts from is for the
 *         inspector to say, so both figures are given; fill may add to the first, never to bearing.
 */
import { bottomBelowTop } from "../document/foundationMeasures";
import type { CoverCheck, FoundationCover, LevelFooting } from "../solve/results";
import type { FootingDemand } from "./footing";
import { type FootedLine, leastAt, type PlaceWords, placeOn } from "./lines";

const hair = 1e-9;

export function footingCover(
  lines: readonly FootedLine[],
  corners: readonly string[],
  { foundation, intoUndisturbed }: FootingDemand,
  place: PlaceWords,
): FoundationCover {
  const { frostDepth, frostFrom } = foundation;
  const belowFinished = (line: FootedLine, i: number) =>
    (line.finished[i] as number) - (line.bottom[i] as number);
  const belowNatural = (line: FootedLine, i: number) =>
    Math.min(line.existing[i] as number, line.finished[i] as number) - (line.bottom[i] as number);
  const intoGround = (line: FootedLine, i: number) =>
    (line.undisturbed[i] as number) - (line.bottom[i] as number);
  const check = (figure: typeof belowFinished, needed: number | null) =>
    coverCheck(lines, corners, figure, needed, place);
  return {
    finished: check(belowFinished, frostDepth),
    undisturbed: check(belowNatural, frostDepth),
    counts: frostFrom,
    bearing: check(intoGround, intoUndisturbed),
    inFill: lines.flatMap(stretchesInFill),
  };
}

function coverCheck(
  lines: readonly FootedLine[],
  corners: readonly string[],
  figure: (line: FootedLine, station: number) => number,
  needed: number | null,
  place: PlaceWords,
): CoverCheck {
  const { line, station, value } = leastAt(lines, figure);
  const fails = (value: number) => needed !== null && value < needed - hair;
  let [failing, whole] = [0, 0];
  for (const each of lines) {
    whole += each.length;
    for (let i = 1; i < each.distance.length; i++) {
      const stretch = (each.distance[i] as number) - (each.distance[i - 1] as number);
      failing += (stretch / 2) * (Number(fails(figure(each, i - 1))) + Number(fails(figure(each, i))));
    }
  }
  return {
    needed,
    least: value,
    at: placeOn(line, station, place),
    margin: needed === null ? null : value - needed,
    failing: corners.filter((_, i) => {
      const own = lines[i];
      return own !== undefined && fails(figure(own, 0));
    }),
    share: whole > 0 ? failing / whole : 0,
  };
}

/** Where the bottom stands above the stripped ground, stretch by stretch. */
function stretchesInFill(line: FootedLine): { wall: number; from: number; to: number }[] {
  const found: { wall: number; from: number; to: number }[] = [];
  const inFill = (i: number) => (line.bottom[i] as number) > (line.stripped[i] as number) + hair;
  for (let i = 0; i < line.distance.length; i++) {
    if (!inFill(i)) continue;
    const at = line.distance[i] as number;
    const last = found[found.length - 1];
    if (last && i > 0 && inFill(i - 1)) last.to = at;
    else found.push({ wall: line.wall, from: at, to: at });
  }
  return found;
}

/** What fall a level footing can take under this top of wall, against the fall along the walls; null for posts. */
export function levelFooting(
  lines: readonly FootedLine[],
  { foundation, intoUndisturbed, strip, topOfWall }: FootingDemand,
  place: PlaceWords,
): LevelFooting | null {
  const below = bottomBelowTop(foundation);
  if (below === null) return null;
  const high = leastAt(lines, (line, i) => -(line.existing[i] as number));
  const low = leastAt(lines, (line, i) => line.existing[i] as number);
  const exposure = topOfWall + high.value;
  const bearing = intoUndisturbed + strip;
  const frost = foundation.frostDepth ?? 0;
  const takes = below - exposure - Math.max(frost, bearing);
  const fall = -high.value - low.value;
  return {
    exposure,
    takes,
    fall,
    enough: fall <= takes + hair,
    governs: frost > bearing ? "frost" : "bearing",
    highest: placeOn(high.line, high.station, place),
    lowest: placeOn(low.line, low.station, place),
  };
}
