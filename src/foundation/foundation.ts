/**
 * The whole foundation at one floor height: its heights, walls unrolled, cover, steps, trench, fill, doors and take-off.
 *
 * Units   metres, m2, m3.
 * Source  Stands with each part. What soil carries and what a wall must hold is for an engineer or the building office.
 */
import { earthBelowFloor, hasSlab, hasStemWall, slabDepth } from "../document/foundationMeasures";
import type { Point } from "../geometry";
import type {
  FoundationHeights,
  FoundationPost,
  FoundationResult,
  UnbalancedFill,
  WallElevation,
} from "../solve/results";
import { footingCover, levelFooting } from "./cover";
import { trenchDig, wallsInFill } from "./dig";
import { type DoorSite, doorLevels, heightAt } from "./doors";
import { type FootingDemand, footedLines, stepsDown } from "./footing";
import { footingSizes } from "./footing-size";
import { type FootedLine, leastAt, type PlaceWords, placeOn, type WallLine } from "./lines";
import { postsAlong } from "./posts";
import { fillUnderSlab, type SlabGround } from "./slab-fill";
import { groundFall, steppedFooting, takeOff } from "./take-off";
import { fillLimit, unbalancedOutside } from "./unbalanced";

export interface FoundationInput extends DoorSite {
  readonly lines: readonly WallLine[];
  readonly strip: number;
  readonly intoUndisturbed: number;
  readonly swell: number;
  readonly shrink: number;
  /** So far the siding laps over the top of wall. */
  readonly sidingLap: number;
  readonly corners: SlabGround["corners"];
  readonly lowestInside: SlabGround["lowest"];
  readonly highestInside: number;
  readonly place: PlaceWords;
  /** Fill up to the earth under the base where the walls themselves stand, m3; missing: read at the walls' stations. */
  readonly fillUnderWalls?: number | null;
}

export function foundationResult(input: FoundationInput): FoundationResult {
  const { building, floor, strip, intoUndisturbed, place, corners } = input;
  const { foundation, outline } = building;
  const topOfWall = floor + building.topOfWallAboveFloor;
  const demand: FootingDemand = { topOfWall, strip, intoUndisturbed, foundation };
  const lines = footedLines(input.lines, demand);
  const heights = heightsOf(input, lines, topOfWall);
  const names = corners.map(({ name }) => name);
  const posts = foundation.kind === "posts" ? postsOf(lines, outline, floor, foundation.posts.spacing) : [];
  const level = levelFooting(lines, demand, place);
  return {
    kind: foundation.kind,
    wallKind: foundation.wall,
    backfillSoil: foundation.backfillSoil,
    heights,
    walls: lines.map((line) => elevation(line, topOfWall, input)),
    cover: footingCover(lines, names, demand, place),
    sizes: footingSizes(foundation),
    levelFooting: level,
    stepped: hasStemWall(foundation)
      ? steppedFooting(outline, foundation, lines, stepsDown(foundation), stepsAsked(lines, level))
      : null,
    dig:
      foundation.kind === "posts"
        ? null
        : trenchDig(lines, outline, demand, heights.earthInside, input, place),
    unbalanced: foundation.kind === "posts" ? [] : lines.map((line) => unbalanced(line, input, heights)),
    slabFill: fillUnderSlab(foundation, {
      earthInside: heights.earthInside,
      strip,
      corners,
      lowest: input.lowestInside,
      highest: input.highestInside,
    }),
    doors: doorLevels(input, lines),
    posts,
    wallsInFill: wallsInFill(lines, outline, foundation, heights.earthInside, input.fillUnderWalls),
    takeOff: takeOff(outline, foundation, lines, posts.length),
  };
}

function heightsOf(
  { building, floor }: FoundationInput,
  lines: readonly FootedLine[],
  topOfWall: number,
): FoundationHeights {
  const { foundation } = building;
  const bottoms = lines.flatMap(({ bottom, pieces }) =>
    pieces.length > 0 ? pieces.map((piece) => piece.bottom) : [...bottom],
  );
  return {
    floor,
    topOfWall,
    topOfFooting: hasStemWall(foundation) ? topOfWall - foundation.wallHeight : null,
    highestBottom: Math.max(...bottoms),
    lowestBottom: Math.min(...bottoms),
    undersideOfSlab: floor - slabDepth(foundation),
    earthInside: floor - earthBelowFloor(building),
  };
}

function elevation(
  line: FootedLine,
  topOfWall: number,
  { sidingLap, place }: Pick<FoundationInput, "sidingLap" | "place">,
): WallElevation {
  const { start: _, along: __, undisturbed: ___, driven: ____, ...told } = line;
  const showing = line.finished.map((height) => topOfWall - height);
  const beside = besideDoors(line);
  const open = leastShown(showing, (i) => beside(i) && line.driven[i] === 0);
  const drive = leastShown(showing, (i) => beside(i) && line.driven[i] === 1);
  return {
    ...told,
    leastShowing: open.least,
    leastShowingAt: open.station === null ? null : placeOn(line, open.station, place),
    mostShowing: showing.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
    sidingClearance: open.least - sidingLap,
    besideDrive:
      drive.station === null ? null : { showing: drive.least, at: placeOn(line, drive.station, place) },
    fall: groundFall(line),
  };
}

/** Where doors stand there is neither wall nor siding. */
function besideDoors({ distance, openings }: FootedLine): (station: number) => boolean {
  const doors = openings.filter(({ kind }) => kind === "door");
  return (station) => {
    const at = distance[station] as number;
    return !doors.some(({ from, to }) => at >= from - 1e-6 && at <= to + 1e-6);
  };
}

function leastShown(
  showing: Float64Array,
  counts: (station: number) => boolean,
): { readonly least: number; readonly station: number | null } {
  let [least, station]: [number, number | null] = [Number.POSITIVE_INFINITY, null];
  showing.forEach((each, i) => {
    if (each < least && counts(i)) [least, station] = [each, i];
  });
  return { least, station };
}

/** IRC R403.1.5 (2012): a bottom may slope 1 in 10 at most; and a level one must have its cover. */
const steepestBottom = 0.1;

function stepsAsked(lines: readonly FootedLine[], level: ReturnType<typeof levelFooting>): string[] {
  const steep = lines
    .filter((line) => Math.abs(groundFall(line)) > steepestBottom + 1e-6)
    .map(({ name }) => name);
  return [
    ...(steep.length > 0
      ? [
          `the ground falls more than 1 in 10 along ${steep.join(", ")} (International Residential Code R403.1.5, 2012)`,
        ]
      : []),
    ...(level && !level.enough ? [`a level footing lacks its depth at ${level.lowest.place}`] : []),
  ];
}

function unbalanced(
  line: FootedLine,
  { building, place }: FoundationInput,
  heights: FoundationHeights,
): UnbalancedFill {
  const { foundation } = building;
  const slabTop = hasSlab(foundation) ? heights.floor : null;
  const inside = slabTop ?? (foundation.kind === "crawl-space" ? heights.earthInside : heights.floor);
  const bottom = (i: number) => line.bottom[i] as number;
  const top = (i: number) =>
    hasStemWall(foundation)
      ? Math.min(heights.topOfWall, bottom(i) + foundation.footingThickness)
      : bottom(i);
  const within = leastAt([line], (_, i) => (line.finished[i] as number) - inside);
  const outer = leastAt(
    [line],
    (_, i) => -unbalancedOutside(line.finished[i] as number, { topOfFooting: top(i), inside, slabTop }),
  );
  const insideHeight = Math.max(0, -within.value);
  const outsideHeight = -outer.value;
  const worst = Math.max(insideHeight, outsideHeight);
  const station = insideHeight >= outsideHeight ? within.station : outer.station;
  const { limit, source } = fillLimit({
    kind: foundation.kind === "thickened-edge" ? "poured" : foundation.wall,
    thickness: foundation.kind === "thickened-edge" ? foundation.edge.width : foundation.wallThickness,
    height: heights.topOfWall - top(station),
    soil: foundation.backfillSoil,
    held: foundation.kind === "crawl-space",
  });
  return {
    wall: line.wall,
    name: line.name,
    inside: insideHeight,
    outside: outsideHeight,
    worst,
    holds: worst < 1e-9 ? "none" : insideHeight >= outsideHeight ? "inside" : "outside",
    at: placeOn(line, station, place),
    limit,
    passes: limit === null ? worst < 1e-9 : worst <= limit + 1e-9,
    source,
  };
}

function postsOf(
  lines: readonly FootedLine[],
  outline: readonly Point[],
  floor: number,
  spacing: number,
): FoundationPost[] {
  return postsAlong(outline, spacing).flatMap(({ wall, offset }) => {
    const line = lines[wall];
    if (!line) return [];
    const bottom = heightAt(line, line.bottom, offset);
    return [
      {
        wall,
        offset,
        at: [line.start[0] + line.along[0] * offset, line.start[1] + line.along[1] * offset] as [
          number,
          number,
        ],
        bottom,
        length: floor - bottom,
        inFill: Math.max(0, heightAt(line, line.finished, offset) - heightAt(line, line.undisturbed, offset)),
      },
    ];
  });
}
