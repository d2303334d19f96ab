/**
 * The walls in elevation, each side unrolled in one strip: ground as it is and finished, top of wall, floor, openings,
 * footing with its steps, frost, what the test pits met.
 *
 * Units   metres: x along the strip, y up from the finished floor, true to scale; gaps and texts in paper mm.
 */
import type { Bounds } from "../geometry";
import type { FoundationResult, WallElevation } from "../solve/results";
import type { DrawingMark, XY } from "./marks";
import type { StyleName } from "./styles";
import { textWidth } from "./text-width";

export interface ElevationFigures {
  readonly length: (m: number) => string;
}

export interface ElevationStrip {
  readonly marks: readonly DrawingMark[];
  readonly bounds: Bounds;
  /** Where each side begins on the strip. */
  readonly starts: readonly { readonly wall: number; readonly x: number; readonly length: number }[];
}

export interface ElevationOptions {
  readonly metresPerMm: number;
  readonly figures: ElevationFigures;
  /** Frost depth as typed; null: none. */
  readonly frostDepth: number | null;
  /** Only these sides, in this order; all where it isn't said. */
  readonly walls?: readonly number[];
}

/** Between the words of two sides, mm. */
const gap = 5;
/** The page sets words a little larger than paper does, so they are given this much more room. */
const wide = 1.12;
/** Free paper between a side and what it shows, mm. */
const beside = 1.2;
/** A door without a height in the project is drawn as high as this, m. */
const doorHeight = 2.1;
/** Room above and below for words, mm. */
const above = 12;
const below = 16;

export function elevationStrip(result: FoundationResult, options: ElevationOptions): ElevationStrip {
  const walls = (options.walls ?? result.walls.map(({ wall }) => wall)).flatMap(
    (wall) => result.walls[wall] ?? [],
  );
  const starts: { wall: number; x: number; length: number }[] = [];
  const marks: DrawingMark[] = [];
  const rooms = walls.map((wall) => roomRound(wall, result, options));
  let end = 0;
  for (const [i, wall] of walls.entries()) {
    const { left = 0, right = 0 } = rooms[i] ?? {};
    const x = i === 0 ? 0 : end + left + gap * options.metresPerMm;
    starts.push({ wall: wall.wall, x, length: wall.length });
    marks.push(...side(wall, x, result, options));
    end = x + wall.length + right;
  }
  const { low, high } = heightsOf(walls, result, options);
  return {
    marks,
    starts,
    bounds: {
      minX: -(rooms[0]?.left ?? 0) - (gap / 2) * options.metresPerMm,
      maxX: Math.max(1, end) + (gap / 2) * options.metresPerMm,
      minY: low - below * options.metresPerMm,
      maxY: high + above * options.metresPerMm,
    },
  };
}

/** The sides in rows of `width` metres at most; a side that is wider stands alone. */
export function elevationRows(
  result: FoundationResult,
  options: Omit<ElevationOptions, "walls">,
  width: number,
): readonly ElevationStrip[] {
  const rows: number[][] = [[]];
  for (const { wall } of result.walls) {
    const row = rows[rows.length - 1] as number[];
    const { minX, maxX } = elevationStrip(result, { ...options, walls: [...row, wall] }).bounds;
    if (row.length > 0 && maxX - minX > width) rows.push([wall]);
    else row.push(wall);
  }
  return rows.map((walls) => elevationStrip(result, { ...options, walls }));
}

/** How far a side's words reach beyond its ends, m. */
function roomRound(
  wall: WallElevation,
  result: FoundationResult,
  options: ElevationOptions,
): { readonly left: number; readonly right: number } {
  const { name, shows, downs } = said(wall, result, options.figures);
  const across = (words: string, size: number, weight: 400 | 600 = 400) =>
    textWidth(words, size, weight) * wide * options.metresPerMm;
  const over = across(name, 2.5) - wall.length;
  const foot =
    Math.max(...[...downs, failsOf(wall, result)].map((words) => across(words, 2.6, 600))) - wall.length;
  const sideways = Math.max(0, over / 2, foot);
  return {
    left: Math.max(sideways, across(shows, 2.6, 600) + beside * options.metresPerMm),
    right: sideways,
  };
}

/** What is written of a side: its name over it, what shows at its beginning, depths at its foot. */
function said(
  wall: WallElevation,
  { heights }: FoundationResult,
  figures: ElevationFigures,
): { readonly name: string; readonly shows: string; readonly downs: readonly [string, string] } {
  const depth = (i: number) => {
    const down = (wall.existing[i] as number) - (wall.bottom[i] as number);
    return down < 0 ? `${figures.length(-down)} above ground` : `${figures.length(down)} down`;
  };
  const shown = heights.topOfWall - (wall.finished[0] as number);
  return {
    name: `side ${wall.name}, ${figures.length(wall.length)}`,
    shows: shown < 0 ? `${figures.length(-shown)} buried` : `shows ${figures.length(shown)}`,
    downs: [depth(0), depth(wall.distance.length - 1)],
  };
}

function side(
  wall: WallElevation,
  x: number,
  result: FoundationResult,
  options: ElevationOptions,
): DrawingMark[] {
  const { floor, topOfWall } = result.heights;
  const top = topOfWall - floor;
  const line = (style: StyleName, heights: Float64Array, by = 0): DrawingMark => ({
    kind: "line",
    points: along(wall, heights, x, floor - by),
    style,
  });
  const layer = (heights: Float64Array | null, style: StyleName, said: string): DrawingMark[] => {
    if (!heights) return [];
    const at: XY = [
      x + 1.2 * options.metresPerMm,
      (heights[0] as number) - floor + 0.7 * options.metresPerMm,
    ];
    return [line(style, heights), { kind: "text", at, text: said, style: "foundation-label", halo: true }];
  };
  const frost = result.cover.counts === "finished" ? wall.finished : lower(wall.existing, wall.finished);
  return [
    ...footing(wall, x, result),
    face(wall, x, top, floor),
    ...wall.openings.map((opening) => openingMark(opening, x, floor)),
    ...(options.frostDepth === null ? [] : [line("frost-line", frost, -options.frostDepth)]),
    ...layer(wall.firm, "firm-line", "firm ground"),
    ...layer(wall.rock, "rock-line", "rock"),
    ...layer(wall.water, "groundwater-line", "water"),
    ...existingRuns(wall, x, floor),
    line("ground-finished", wall.finished),
    { kind: "line", points: [x, 0, x + wall.length, 0], style: "floor-line" },
    ...words(wall, x, top, result, options),
  ];
}

/** Ground as it is; dotted where it is a guess. */
function existingRuns(wall: WallElevation, x: number, floor: number): DrawingMark[] {
  const marks: DrawingMark[] = [];
  let from = 0;
  for (let i = 1; i < wall.distance.length; i++) {
    const last = i === wall.distance.length - 1;
    if (!last && wall.guessed[i] === wall.guessed[i + 1]) continue;
    const points: number[] = [];
    for (let k = from; k <= i; k++)
      points.push(x + (wall.distance[k] as number), (wall.existing[k] as number) - floor);
    marks.push({ kind: "line", points, style: wall.guessed[i] ? "ground-guessed" : "ground-existing" });
    from = i;
  }
  return marks;
}

/** What shows of the wall above the finished ground. */
function face(wall: WallElevation, x: number, top: number, floor: number): DrawingMark {
  const count = wall.distance.length;
  const ring = [x, top];
  for (let i = 0; i < count; i++)
    ring.push(x + (wall.distance[i] as number), Math.min(top, (wall.finished[i] as number) - floor));
  ring.push(x + wall.length, top);
  return { kind: "area", rings: [ring], style: "elevation-wall" };
}

/** Footing pieces and the buried wall over them; the edge's or the holes' bottom as a line. */
function footing(wall: WallElevation, x: number, { kind, heights, posts }: FoundationResult): DrawingMark[] {
  const { floor, topOfWall } = heights;
  if (kind === "posts")
    return posts
      .filter((post) => post.wall === wall.wall)
      .map(({ offset, bottom }) => ({
        kind: "line",
        points: [x + offset, bottom - floor, x + offset, topOfWall - floor],
        style: "foundation-hidden",
      }));
  return wall.pieces.flatMap(({ from, to, bottom, top }): DrawingMark[] => {
    const [a, b] = [x + from, x + to];
    const [low, high] = [bottom - floor, top - floor];
    if (kind === "thickened-edge")
      return [{ kind: "line", points: [a, high, a, low, b, low, b, high], style: "foundation-hidden" }];
    return [
      { kind: "area", rings: [[a, low, b, low, b, high, a, high]], style: "foundation-concrete" },
      { kind: "line", points: [a, high, a, topOfWall - floor], style: "foundation-hidden" },
      { kind: "line", points: [b, high, b, topOfWall - floor], style: "foundation-hidden" },
    ];
  });
}

function openingMark(
  { from, to, sill, head }: WallElevation["openings"][number],
  x: number,
  floor: number,
): DrawingMark {
  const [low, high] = [sill - floor, (head ?? sill + doorHeight) - floor];
  const [a, b] = [x + from, x + to];
  return { kind: "area", rings: [[a, low, b, low, b, high, a, high]], style: "elevation-opening" };
}

function words(
  wall: WallElevation,
  x: number,
  top: number,
  result: FoundationResult,
  { metresPerMm, figures }: ElevationOptions,
): DrawingMark[] {
  const { floor } = result.heights;
  const lowest = wall.bottom.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) - floor;
  const high = Math.max(top, ...wall.openings.map(({ sill, head }) => (head ?? sill + doorHeight) - floor));
  const [first = "", other = ""] = wall.name.split("-");
  const text = (
    at: XY,
    words: string,
    style: StyleName,
    anchor: "start" | "middle" | "end" = "middle",
  ): DrawingMark => ({ kind: "text", at, text: words, style, anchor, halo: true });
  const { name, shows, downs } = said(wall, result, figures);
  // A short side has its name over its corners' letters.
  const nameUp = (textWidth(name, 2.5) + 8) * metresPerMm < wall.length ? 3 : 7;
  const atFoot = lowest - 3.6 * metresPerMm;
  const apart =
    downs.reduce((sum, one) => sum + textWidth(one, 2.6, 600) * wide, 3) * metresPerMm < wall.length;
  const second = atFoot - (apart ? 0 : 3.5 * metresPerMm);
  const atWall = ((wall.finished[0] as number) - floor + top) / 2 - 0.9 * metresPerMm;
  return [
    text([x + wall.length / 2, high + nameUp * metresPerMm], name, "foundation-label"),
    text([x, high + 3 * metresPerMm], first, "elevation-corner", "start"),
    text([x + wall.length, high + 3 * metresPerMm], other, "elevation-corner", "end"),
    text([x - beside * metresPerMm, atWall], shows, "foundation-figure", "end"),
    text([x, atFoot], downs[0], "foundation-figure", "start"),
    text([x + wall.length, second], downs[1], "foundation-figure", "end"),
    ...fails(wall, x, lowest, result, metresPerMm),
    ...stepWords(wall, x, floor, metresPerMm, figures),
  ];
}

/** What is too small about the cover at a side's first corner; no words where nothing is. */
function failsOf({ name }: WallElevation, { cover }: FoundationResult): string {
  const counted = cover.counts === "finished" ? cover.finished : cover.undisturbed;
  const [first = ""] = name.split("-");
  return [
    ...(counted.failing.includes(first) ? ["above frost"] : []),
    ...(cover.bearing.failing.includes(first) ? ["too shallow"] : []),
  ].join(", ");
}

/** Corners where the cover is too small are told at the foot. */
function fails(
  wall: WallElevation,
  x: number,
  lowest: number,
  result: FoundationResult,
  metresPerMm: number,
): DrawingMark[] {
  const text = failsOf(wall, result);
  if (text === "") return [];
  const at: XY = [x, lowest - 11 * metresPerMm];
  return [{ kind: "text", at, text, style: "foundation-fails", anchor: "start", halo: true }];
}

function stepWords(
  wall: WallElevation,
  x: number,
  floor: number,
  metresPerMm: number,
  figures: ElevationFigures,
): DrawingMark[] {
  return wall.pieces.slice(1).flatMap((piece, i): DrawingMark[] => {
    const before = wall.pieces[i];
    if (!before) return [];
    // Beside the riser, under the higher piece.
    const down = before.bottom > piece.bottom;
    const at: XY = [
      x + piece.from + (down ? -0.8 : 0.8) * metresPerMm,
      (before.bottom + piece.bottom) / 2 - floor - 0.9 * metresPerMm,
    ];
    const text = figures.length(Math.abs(before.bottom - piece.bottom));
    return [
      { kind: "text", at, text, style: "foundation-label", anchor: down ? "end" : "start", halo: true },
    ];
  });
}

/** A line of heights without the stations that lie straight between their neighbours. */
function along(wall: WallElevation, heights: Float64Array, x: number, zero: number): number[] {
  const points: number[] = [];
  for (let i = 0; i < heights.length; i++) {
    if (!Number.isFinite(heights[i])) continue;
    const [u, v] = [x + (wall.distance[i] as number), (heights[i] as number) - zero];
    const n = points.length;
    if (
      n >= 4 &&
      isStraight(
        points[n - 4] as number,
        points[n - 3] as number,
        points[n - 2] as number,
        points[n - 1] as number,
        u,
        v,
      )
    )
      points.splice(n - 2, 2);
    points.push(u, v);
  }
  return points;
}

/** Whether the middle place lies on the line between its neighbours, to a hundredth of a millimetre. */
function isStraight(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
  return Math.abs(ay + ((cy - ay) * (bx - ax)) / (cx - ax) - by) < 1e-5;
}

function lower(one: Float64Array, other: Float64Array): Float64Array {
  return one.map((height, i) => Math.min(height, other[i] as number));
}

/** From the lowest to the highest that is drawn of the sides, m from the floor. */
function heightsOf(
  walls: readonly WallElevation[],
  { heights }: FoundationResult,
  { frostDepth }: ElevationOptions,
): { readonly low: number; readonly high: number } {
  const { floor, topOfWall } = heights;
  let [low, high] = [heights.lowestBottom, Math.max(floor, topOfWall)];
  for (const wall of walls) {
    for (const lines of [wall.existing, wall.finished])
      for (const height of lines) {
        low = Math.min(low, height - (frostDepth ?? 0));
        high = Math.max(high, height);
      }
    for (const { sill, head } of wall.openings) high = Math.max(high, head ?? sill + doorHeight);
  }
  return { low: low - floor, high: high - floor };
}
