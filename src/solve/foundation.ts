/** The foundation's stage: the walls as lines once a layout, everything that hangs on the floor once a floor. */
import { earthBelowFloor } from "../document/foundationMeasures";
import type { Building, Point, Project, Survey } from "../document/schema";
import { fillOver } from "../earthwork";
import { foundationResult, type WallLine, wallStrips } from "../foundation";
import { finishHeights, onWall, type Places, type Prepared, placesAt, prepare, type Wall } from "../grading";
import { firmGround, type Layer, type PitSpot, pitDepthAt, pitSpots } from "../survey";
import { groundAt } from "../terrain";
import { placeName } from "./place-names";
import type { CornerResult, DriveResult, ElevationOpening, FoundationResult } from "./results";
import type { BuildingSite } from "./site";
import type { Words } from "./words";

/** Steps along a wall, m, and the most of them on one. */
const step = 0.25;
const mostStations = 240;

type BareLine = Omit<WallLine, "finished" | "driven" | "openings">;

/** What every floor shares: the walls' stations in one run, and where each wall begins in it. */
export interface FoundationPlaces {
  readonly places: Places;
  readonly prepared: Prepared;
  /** The same without drives to doors; null: there are none. */
  readonly undriven: Prepared | null;
  readonly lines: readonly BareLine[];
  /** Fill where the walls stand, m3, up to a height; null where it isn't asked for. */
  readonly fillUnderWalls: ((height: number) => number) | null;
}

export function foundationPlaces(
  { walls, ring }: BuildingSite["footprint"],
  ground: BuildingSite["ground"],
  height: BuildingSite["height"],
  plan: BuildingSite["plan"],
  range: BuildingSite["range"],
  survey: Survey,
  doors: Building["doors"],
  wallThickness: number | null,
): FoundationPlaces {
  const pits = pitSpots(
    survey,
    walls.map(({ start }): Point => [...start]),
  );
  const offsets = walls.map((wall, i) => stationsOf(wall, doors, i));
  const points = walls.flatMap((wall, i) =>
    Array.from(offsets[i] ?? [], (offset) => [...onWall(wall, offset)] as Point),
  );
  const places = placesAt(points, height);
  let from = 0;
  const lines = walls.map((wall, i): BareLine => {
    const distance = offsets[i] as Float64Array;
    const to = from + distance.length;
    const own = points.slice(from, to);
    const existing = places.existing.slice(from, to);
    from = to;
    return {
      wall: i,
      name: wall.name,
      start: wall.start,
      along: wall.along,
      length: wall.length,
      distance,
      existing,
      guessed: Uint8Array.from(own, ([x, y]) => (groundAt(ground, x, y)?.guessed === false ? 0 : 1)),
      ...layersAlong(pits, own, existing),
    };
  });
  const others = plan.drives.filter(({ sillBelowFloor }) => sillBelowFloor === null);
  return {
    places,
    prepared: prepare(places, plan, range),
    undriven: others.length < plan.drives.length ? prepare(places, { ...plan, drives: others }, range) : null,
    lines,
    fillUnderWalls: fillUnderWalls(ground, ring, wallThickness),
  };
}

function fillUnderWalls(
  ground: BuildingSite["ground"],
  ring: BuildingSite["footprint"]["ring"],
  thickness: number | null,
) {
  const strips = thickness ? wallStrips(ring, thickness) : null;
  return strips && fillOver(ground, strips);
}

/** Even steps with the corners and the edges of doors among them. */
function stationsOf({ length }: Wall, doors: Building["doors"], wall: number): Float64Array {
  const count = Math.min(mostStations, Math.max(1, Math.ceil(length / step)));
  const even = Array.from({ length: count + 1 }, (_, i) => (length * i) / count);
  const edges = doors
    .filter((door) => door.wall === wall)
    .flatMap(({ offset, width }) => [offset, offset + width / 2, offset + width])
    .filter((offset) => offset > 0 && offset < length);
  const sorted = [...even, ...edges].sort((a, b) => a - b);
  return Float64Array.from(
    sorted.filter((offset, i) => i === 0 || offset - (sorted[i - 1] as number) > 1e-6),
  );
}

function layersAlong(
  pits: readonly PitSpot[],
  points: readonly Point[],
  existing: Float64Array,
): Pick<BareLine, "firm" | "rock" | "water"> {
  const top = (layer: Layer) => {
    const [first] = points;
    if (!first || pitDepthAt(pits, layer, first) === null) return null;
    return Float64Array.from(
      points,
      (at, i) => (existing[i] as number) - (pitDepthAt(pits, layer, at)?.depth ?? Number.NaN),
    );
  };
  const [first] = points;
  const firm =
    first && firmGround(pits, first, 0)
      ? Float64Array.from(
          points,
          (at, i) => firmGround(pits, at, existing[i] as number)?.height ?? Number.NaN,
        )
      : null;
  return { firm, rock: top("rock"), water: top("water") };
}

export function foundationAt(
  standing: FoundationPlaces,
  site: Pick<BuildingSite, "building" | "footprint" | "curve" | "spots">,
  project: Pick<Project, "materials" | "rules" | "grading">,
  floor: number,
  corners: readonly CornerResult[],
  drives: readonly DriveResult[],
  words: Words,
): FoundationResult {
  const { building, footprint, curve, spots } = site;
  const z = finishHeights(standing.prepared, floor, new Float64Array(standing.places.x.length));
  const driven = drivenPlaces(standing, floor, z);
  let from = 0;
  const lines = standing.lines.map((line): WallLine => {
    const to = from + line.distance.length;
    const own = { finished: z.slice(from, to), driven: driven.slice(from, to) };
    from = to;
    return { ...line, ...own, openings: openingsIn(building, line.wall, floor) };
  });
  return foundationResult({
    building,
    floor,
    lines,
    strip: project.materials.stripDepth,
    intoUndisturbed: project.rules.intoUndisturbed,
    swell: project.materials.swell,
    shrink: project.materials.shrink,
    sidingLap: project.rules.sidingLap,
    corners,
    lowestInside: spots.lowestInside,
    highestInside: curve.highest?.z ?? spots.lowestInside.height,
    apron: project.grading.apron,
    drives: project.grading.drives,
    driveResults: drives,
    place: (at) => placeName(footprint, at, words),
    fillUnderWalls: standing.fillUnderWalls?.(
      floor - earthBelowFloor(building) + project.materials.stripDepth,
    ),
  });
}

/** Earth isn't laid closer, m. */
const laid = 1e-3;

function drivenPlaces({ places, undriven }: FoundationPlaces, floor: number, z: Float64Array): Uint8Array {
  if (!undriven) return new Uint8Array(z.length);
  const without = finishHeights(undriven, floor, new Float64Array(places.x.length));
  return Uint8Array.from(z, (height, i) => (height > (without[i] as number) + laid ? 1 : 0));
}

function openingsIn({ doors, windows }: Building, wall: number, floor: number): ElevationOpening[] {
  return [
    ...doors
      .filter((door) => door.wall === wall)
      .map(({ id, name, offset, width, sillBelowFloor }) => ({
        id,
        name,
        kind: "door" as const,
        from: offset,
        to: offset + width,
        sill: floor - sillBelowFloor,
        head: null,
      })),
    ...windows
      .filter((window) => window.wall === wall)
      .map(({ id, name, offset, width, height, sillAboveFloor }) => ({
        id,
        name,
        kind: "window" as const,
        from: offset,
        to: offset + width,
        sill: floor + sillAboveFloor,
        head: floor + sillAboveFloor + height,
      })),
  ];
}
