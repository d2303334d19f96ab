/**
 * What the foundation takes: concrete, blocks, bars, forms, stone, sheet.
 *
 * Units   metres, m2, m3, pieces.
 * Method  A level foundation by `concrete.ts`; steps add their deeper wall and their overlap (overlap × footing width × rise).
 *         Blocks: pieces a course = centreline ÷ block, rounded up; courses by height, rounded up: each stretch of a stepped
 *         wall its own. Bars: simple counts along, up and across with a share for laps; how many there must be is a designer's
 *         business. Forms: both sides of footing and poured wall, the outside of a thickened edge. Sheet: 6 in of lap on 10 ft.
 * Source  NAVEDTRA 14070 chapter 5 (concrete), 14043 chapter 8 (blocks: 3/4 of the length in feet, 3/2 of the height);
 *         IRC R506.2.3 (2012), laps of a vapour retarder, R408.2 that of a crawl space; R405.1, stone 12 in beyond
 *         the footing and 6 in over it.
 */
import { hasSlab, hasStemWall, wholeCourses } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { Point } from "../geometry";
import type { FoundationTakeOff, SteppedFooting } from "../solve/results";
import { concrete } from "./concrete";
import type { FootedLine } from "./lines";
import { areaInside, lengthInside } from "./ring-lengths";
import { stepOverlap } from "./steps";

const rollWidth = 3.048;
const sheetLap = 0.1524;
const stoneBeyondFooting = 0.3048;
const stoneOverFooting = 0.1524;

/** Concrete beyond a level foundation at its highest step. */
export interface StepConcrete {
  readonly wall: number;
  readonly footing: number;
}

export function takeOff(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
  posts: number,
): FoundationTakeOff {
  const level = concrete(outline, foundation);
  const more = stepConcrete(outline, foundation, lines);
  const wall = level.wall + more.wall;
  const footing = level.footing + more.footing;
  const block = foundation.wall === "block" && hasStemWall(foundation);
  const total = footing + (block ? 0 : wall) + level.slab + level.edge + level.pads;
  const insulated = hasSlab(foundation) ? level.floorArea : 0;
  return {
    footing,
    wall,
    slab: level.slab,
    edge: level.edge,
    pads: level.pads,
    total,
    withWaste: total * (1 + foundation.concreteWaste),
    blocks: block ? blockCount(outline, foundation, lines) : null,
    steel: steel(outline, foundation, lines, level.floorArea),
    forms: forms(outline, foundation, lines),
    base: level.base,
    insulation: {
      area: foundation.insulation > 0 ? insulated : 0,
      volume: foundation.insulation * insulated,
    },
    vapourSheet: sheet(outline, foundation, level.floorArea),
    drain: foundation.drain && hasStemWall(foundation) ? drain(outline, foundation) : null,
    posts,
  };
}

/** Under a slab with laps and turned up at its edge; in a crawl space over the ground with laps. */
function sheet(outline: readonly Point[], foundation: Foundation, floorArea: number): number {
  const lapped = (floorArea * rollWidth) / (rollWidth - sheetLap);
  if (foundation.kind === "crawl-space") return lapped;
  if (!hasSlab(foundation)) return 0;
  const within = hasStemWall(foundation) ? foundation.wallThickness : 0;
  return lapped + lengthInside(outline, within) * foundation.slabThickness;
}

/** What steps add: taller wall, and footing over footing at each step. */
export function stepConcrete(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
): StepConcrete {
  if (!hasStemWall(foundation)) return { wall: 0, footing: 0 };
  const ratio = centreRatio(outline, foundation, lines);
  const { rise, overlap } = foundation.steps;
  const down = sumPieces(lines, ({ from, to, level }) => (to - from) * level * rise) * ratio;
  const lap = stepOverlap(rise, foundation.footingThickness, overlap);
  return {
    wall: down * foundation.wallThickness,
    footing: stepCount(lines) * lap * foundation.footingWidth * rise,
  };
}

/** Concrete saved against a level trench that is all as deep as the lowest step. */
export function savedConcrete(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
): number {
  const levels = deepestLevel(lines);
  const length = lengthInside(outline, foundation.wallThickness / 2);
  const more = stepConcrete(outline, foundation, lines);
  return levels * foundation.steps.rise * length * foundation.wallThickness - more.wall - more.footing;
}

export function deepestLevel(lines: readonly FootedLine[]): number {
  return lines.reduce(
    (deepest, { pieces }) => pieces.reduce((d, { level }) => Math.max(d, level), deepest),
    0,
  );
}

/** Steps all round, each one rise. */
export function stepCount(lines: readonly FootedLine[]): number {
  const levels = lines.flatMap(({ pieces }) => pieces.map(({ level }) => level));
  return levels.reduce(
    (sum, level, i) => sum + Math.abs(level - (levels[(i + 1) % levels.length] as number)),
    0,
  );
}

/** Length of the wall's centreline for one of its outside face. */
function centreRatio(
  outline: readonly Point[],
  { wallThickness }: Foundation,
  lines: readonly FootedLine[],
): number {
  const round = lines.reduce((sum, { length }) => sum + length, 0);
  return round > 0 ? lengthInside(outline, wallThickness / 2) / round : 0;
}

function sumPieces(
  lines: readonly FootedLine[],
  figure: (piece: FootedLine["pieces"][number]) => number,
): number {
  return lines.reduce((sum, { pieces }) => sum + pieces.reduce((s, piece) => s + figure(piece), 0), 0);
}

function blockCount(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
): NonNullable<FoundationTakeOff["blocks"]> {
  const { block, wallThickness, steps } = foundation;
  const perCourse = Math.ceil(lengthInside(outline, wallThickness / 2) / block.length - 1e-6);
  const courses = wholeCourses(foundation) ?? 0;
  const ratio = centreRatio(outline, foundation, lines);
  let below = 0;
  for (const { pieces } of lines)
    for (const { from, to, level } of pieces)
      below +=
        Math.ceil(((to - from) * ratio) / block.length - 1e-6) *
        Math.ceil((level * steps.rise) / block.height - 1e-6);
  return { perCourse, courses, count: perCourse * courses + below };
}

function steel(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
  floorArea: number,
): FoundationTakeOff["steel"] {
  const { steel: bars, wallThickness, wallHeight, kind, edge, steps } = foundation;
  const walled = hasStemWall(foundation);
  const more = 1 + bars.laps;
  const round = walled
    ? lengthInside(outline, wallThickness / 2)
    : kind === "thickened-edge"
      ? lengthInside(outline, edge.width / 2)
      : 0;
  const footing = bars.footingBars * round * more;
  const wall = walled ? bars.wallRows * round * more : 0;
  const count = walled && bars.uprightSpacing !== null ? Math.ceil(round / bars.uprightSpacing - 1e-6) : 0;
  const down =
    walled && round > 0
      ? (sumPieces(lines, ({ from, to, level }) => (to - from) * level * steps.rise) *
          centreRatio(outline, foundation, lines)) /
        round
      : 0;
  const uprights = count * (wallHeight + down) * more;
  const slab =
    hasSlab(foundation) && bars.slabSpacing !== null ? ((2 * floorArea) / bars.slabSpacing) * more : 0;
  return {
    footing,
    wall,
    uprights: { count, length: uprights },
    slab,
    total: footing + wall + uprights + slab,
  };
}

function forms(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
): FoundationTakeOff["forms"] {
  const { wallThickness, wallHeight, footingWidth, footingThickness, kind, edge, steps } = foundation;
  if (kind === "thickened-edge") return { footing: 0, wall: 0, edge: lengthInside(outline, 0) * edge.depth };
  if (!hasStemWall(foundation)) return { footing: 0, wall: 0, edge: 0 };
  const beyond = (footingWidth - wallThickness) / 2;
  const bothSides = lengthInside(outline, -beyond) + lengthInside(outline, wallThickness + beyond);
  const faces = lengthInside(outline, 0) + lengthInside(outline, wallThickness);
  const down = 2 * sumPieces(lines, ({ from, to, level }) => (to - from) * level * steps.rise);
  return {
    footing: bothSides * footingThickness,
    wall:
      foundation.wall === "poured" ? faces * wallHeight + down * centreRatio(outline, foundation, lines) : 0,
    edge: 0,
  };
}

/** Pipe beside the footing, all round, in stone. */
function drain(
  outline: readonly Point[],
  { footingWidth, wallThickness, footingThickness }: Foundation,
): NonNullable<FoundationTakeOff["drain"]> {
  const beyond = (footingWidth - wallThickness) / 2;
  const inner = areaInside(outline, -beyond);
  const outer = areaInside(outline, -beyond - stoneBeyondFooting);
  return {
    pipe: lengthInside(outline, -beyond - stoneBeyondFooting / 2),
    stone: (outer - inner) * (footingThickness + stoneOverFooting),
  };
}

/** The steps of a footing as they are told. */
export function steppedFooting(
  outline: readonly Point[],
  foundation: Foundation,
  lines: readonly FootedLine[],
  on: boolean,
  asked: readonly string[],
): SteppedFooting {
  const { rise, overlap } = foundation.steps;
  return {
    on,
    asked,
    steepest: steepestWall(lines),
    steps: footingSteps(lines),
    rise,
    overlap: stepOverlap(rise, foundation.footingThickness, overlap),
    levels: deepestLevel(lines),
    saved: on ? savedConcrete(outline, foundation, lines) : 0,
  };
}

function steepestWall(lines: readonly FootedLine[]): SteppedFooting["steepest"] {
  let [slope, wall] = [0, lines[0]?.name ?? ""];
  for (const line of lines) {
    const own = Math.abs(groundFall(line));
    if (own > slope) [slope, wall] = [own, line.name];
  }
  return { slope, wall };
}

/** Fall of the ground as it is between a wall's ends, rise over run; positive: down from its first corner. */
export function groundFall({ existing, length }: FootedLine): number {
  return ((existing[0] as number) - (existing[existing.length - 1] as number)) / length;
}

function footingSteps(lines: readonly FootedLine[]): SteppedFooting["steps"] {
  const ends = lines.flatMap((line) => line.pieces.map((piece) => ({ line, piece })));
  return ends.flatMap(({ line, piece }, i) => {
    const next = ends[(i + 1) % ends.length];
    if (!next || Math.abs(next.piece.bottom - piece.bottom) < 1e-9) return [];
    const at: [number, number] = [
      line.start[0] + line.along[0] * piece.to,
      line.start[1] + line.along[1] * piece.to,
    ];
    return [{ wall: line.wall, offset: piece.to, at, from: piece.bottom, to: next.piece.bottom }];
  });
}
