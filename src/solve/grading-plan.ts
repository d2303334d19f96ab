/** The document's building and grading → the plan that grading works from, and what doesn't fit, in words. */
import type { Building, Door, Drainage, Drive, Grading, GroundPad, Swale } from "../document/schema";
import {
  between,
  containsPoint,
  cornerDistances,
  crossingShares,
  distance,
  distanceToSegment,
  type Point,
  pointAlong,
  segmentsMeet,
  selfCrossing,
  signedArea,
} from "../geometry";
import {
  type DriveLine,
  doorGap,
  type Footprint,
  type GradingPlan,
  layBerm,
  layDrive,
  layPad,
  laySwale,
  layWall,
  onWall,
  type PadPlane,
  type SideRule,
  type SwaleLine,
  withoutRepeats,
} from "../grading";
import type { Problem } from "./results";
import type { Words } from "./words";

/** A line shorter than this has no direction, m. */
const shortestLine = 0.1;
/** Cosine of 150°: a turn sharper than this lays a line on itself. */
const hairpin = -0.866;

export type HeightAt = (at: Point) => number;

export interface PlanInput {
  readonly footprint: Footprint;
  readonly doors: readonly Door[];
  readonly topOfWallAboveFloor: Building["topOfWallAboveFloor"];
  readonly grading: Grading;
  /** How swales come past drives that they cross. */
  readonly crossing: Drainage["pipe"]["crossing"];
  readonly height: HeightAt;
  readonly words: Words;
}

export function gradingPlan(input: PlanInput): {
  readonly plan: GradingPlan;
  readonly problems: readonly Problem[];
} {
  const { footprint, grading, topOfWallAboveFloor } = input;
  const problems: Problem[] = [];
  const doors = usableDoors(input, problems);
  const { apron, slopes } = grading;
  const usual = {
    edgeAboveFloor: topOfWallAboveFloor - apron.showing,
    fall: apron.fall,
    width: apron.width,
    fillSlope: slopes.fill,
    cutSlope: slopes.cut,
  };
  const leave = new Uint8Array(footprint.walls.length);
  for (const wall of apron.leave) {
    if (wall < leave.length) leave[wall] = 1;
    else problems.push(missingSide(wall));
  }
  const plan: GradingPlan = {
    footprint,
    pad: {
      ...usual,
      leave,
      corners: slopes.corners,
      ...(apron.sides.length > 0 ? { sides: sideRules(input, usual, problems) } : {}),
    },
    drives: grading.drives.flatMap((drive) => driveLine(drive, doors, input, problems)),
    swales: grading.swales.flatMap((swale) => swaleLine(swale, input, problems)),
    pads: grading.pads.flatMap((pad) => padPlane(pad, input, problems)),
    berms: grading.berms.flatMap((berm) =>
      usableLine(berm.id, berm.name, berm.line, problems) ? [layBerm(berm, input.height)] : [],
    ),
    walls: grading.walls.flatMap((wall) =>
      usableLine(wall.id, wall.name, wall.line, problems)
        ? [layWall(wall, input.height, grading.slopes)]
        : [],
    ),
    points: grading.points,
    piped: input.crossing === "pipe",
    order: grading.order,
  };
  return { plan, problems };
}

/** The rule of each side: the usual one with what is typed for it. */
function sideRules(
  { footprint, grading, topOfWallAboveFloor }: PlanInput,
  usual: SideRule,
  problems: Problem[],
): SideRule[] {
  const rules = footprint.walls.map(() => usual);
  for (const side of grading.apron.sides) {
    if (side.wall >= rules.length) {
      problems.push(missingSide(side.wall));
      continue;
    }
    rules[side.wall] = {
      edgeAboveFloor: side.showing === null ? usual.edgeAboveFloor : topOfWallAboveFloor - side.showing,
      fall: side.fall ?? usual.fall,
      width: side.width ?? usual.width,
      fillSlope: side.fill ?? usual.fillSlope,
      cutSlope: side.cut ?? usual.cutSlope,
    };
  }
  return rules;
}

function padPlane(pad: GroundPad, { height, footprint }: PlanInput, problems: Problem[]): PadPlane[] {
  const crossed = selfCrossing(pad.outline);
  if (liesWithin(pad.outline, footprint.ring))
    problems.push({
      code: "pad-under-building",
      severity: "caution",
      where: pad.name,
      what: "It lies wholly under the building, where the floor decides, so it does nothing.",
      how: "Move it out from under the building, or remove it.",
      at: [...(pad.outline[0] as Point)],
      ids: [pad.id],
    });
  if (!crossed && Math.abs(signedArea(pad.outline)) > 0.01) return [layPad(pad, height)];
  problems.push({
    code: "pad-outline",
    severity: "error",
    where: pad.name,
    what: crossed
      ? "Its outline crosses or touches itself, so it is left out."
      : "Its outline encloses no ground, so it is left out.",
    how: "Move its corners apart until no side crosses another.",
    ...(pad.outline[0] ? { at: crossed ? crossingOf(pad.outline, crossed) : [...pad.outline[0]] } : {}),
    ids: [pad.id],
  });
  return [];
}

/** Where two sides cross; sides on one line meet at a corner of one of them. */
function crossingOf(outline: readonly Point[], [i, j]: readonly [number, number]): [number, number] {
  const [a, b, c, d] = [i, i + 1, j, j + 1].map((k) => outline[k % outline.length] as Point) as [
    Point,
    Point,
    Point,
    Point,
  ];
  const share = crossingShares(a, b, c, d)?.[0];
  if (share !== undefined) return [...between(a, b, share)];
  const onSide = (from: Point, to: Point, [x, y]: Point) => distanceToSegment(from, to, x, y) < 1e-6;
  return [...([c, d].find((corner) => onSide(a, b, corner)) ?? a)];
}

function liesWithin(outline: readonly Point[], ring: readonly Point[]): boolean {
  const crosses = outline.some((a, i) =>
    ring.some((c, k) =>
      segmentsMeet(a, outline[(i + 1) % outline.length] as Point, c, ring[(k + 1) % ring.length] as Point),
    ),
  );
  return !crosses && outline.every(([x, y]) => containsPoint(ring, x, y));
}

/** Doors that stand on a wall. */
function usableDoors({ doors, footprint, words }: PlanInput, problems: Problem[]): ReadonlyMap<string, Door> {
  const usable = new Map<string, Door>();
  for (const door of doors) {
    const wall = footprint.walls[door.wall];
    if (!wall) {
      problems.push({
        code: "door-without-wall",
        severity: "error",
        where: door.name,
        what: "It stands on a wall that the building doesn't have.",
        how: "Put the door on another wall.",
        ids: [door.id],
      });
      continue;
    }
    usable.set(door.id, door);
    if (door.offset + door.width <= wall.length + 1e-6) continue;
    problems.push({
      code: "door-past-wall",
      severity: "error",
      where: `${door.name}, wall ${wall.name}`,
      what: `It reaches ${words.length(door.offset + door.width - wall.length)} past the end of the wall.`,
      how: "Move it along the wall or make it narrower.",
      at: [...wall.end],
      ids: [door.id],
    });
  }
  return usable;
}

function driveLine(
  drive: Drive,
  doors: ReadonlyMap<string, Door>,
  { footprint, height, words }: PlanInput,
  problems: Problem[],
): DriveLine[] {
  const line = usableLine(drive.id, drive.name, drive.line, problems);
  if (!line) return [];
  const door = drive.door === null ? undefined : doors.get(drive.door);
  const [road, end] = [line[0] as Point, line[line.length - 1] as Point];
  if (drive.door !== null && !door) problems.push(driveWithoutDoor(drive, end));
  if (door) {
    const wall = footprint.walls[door.wall];
    const gap = wall ? distance(onWall(wall, door.offset + door.width / 2), end) - door.width / 2 : 0;
    if (gap > doorGap) problems.push(driveOffDoor(drive, door, gap, end, words));
    const length = cornerDistances(line)[line.length - 1] ?? 0;
    if (drive.landing.length >= length) problems.push(driveShort(drive, length, end, words));
  }
  const site = {
    roadHeight: drive.roadHeight ?? height(road),
    endHeight: height(end),
    sillBelowFloor: door ? door.sillBelowFloor : null,
    ground: height,
  };
  const laid = layDrive(drive, site);
  problems.push(...breakProblems(laid, words));
  return [laid];
}

function swaleLine(swale: Swale, { height }: PlanInput, problems: Problem[]): SwaleLine[] {
  const line = usableLine(swale.id, swale.name, swale.line, problems);
  if (!line) return [];
  const [start, outlet] = [line[0] as Point, line[line.length - 1] as Point];
  return [laySwale(swale, { startGround: height(start), outletGround: height(outlet), ground: height })];
}

function usableLine(
  id: string,
  name: string,
  drawn: readonly Point[],
  problems: Problem[],
): readonly Point[] | null {
  const line = withoutRepeats(drawn);
  if (line.length >= 2 && (cornerDistances(line)[line.length - 1] ?? 0) >= shortestLine) {
    problems.push(...turnsOnItself(id, name, line));
    return line;
  }
  const first = drawn[0];
  problems.push({
    code: "line-without-length",
    severity: "error",
    where: name,
    what: "Its line has no length, so it is left out.",
    how: "Draw it again with at least two points apart from each other.",
    ...(first ? { at: [...first] as [number, number] } : {}),
    ids: [id],
  });
  return null;
}

/** A line that crosses itself or turns back has two heights at a place: the nearer piece counts there. */
function turnsOnItself(id: string, name: string, line: readonly Point[]): Problem[] {
  const common = { severity: "caution", where: name, ids: [id] } as const;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    const next = line[i + 1];
    if (next && cosine(a, b, next) < hairpin)
      return [
        {
          ...common,
          code: "line-turns-back",
          what: "It turns back on itself there, so that its two ways lie on each other.",
          how: "Draw the bend wider, with more points round it.",
          at: [...b],
        },
      ];
    for (let k = i + 2; k < line.length; k++) {
      const [c, d] = [line[k - 1] as Point, line[k] as Point];
      if (!segmentsMeet(a, b, c, d)) continue;
      return [
        {
          ...common,
          code: "line-crosses-itself",
          what: "Its line crosses itself: there it would have two heights, and only one of them is built.",
          how: "Move its points until no piece crosses another.",
          at: [...between(a, b, crossingShares(a, b, c, d)?.[0] ?? 0)],
        },
      ];
    }
  }
  return [];
}

/** Cosine of the turn at b on the way from a over b to c: 1 straight on, -1 straight back. */
function cosine(a: Point, b: Point, c: Point): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return (ux * vx + uy * vy) / (Math.hypot(ux, uy) * Math.hypot(vx, vy));
}

function missingSide(wall: number): Problem {
  return {
    code: "apron-side-missing",
    severity: "note",
    where: "the apron",
    what: `Side ${wall + 1} is to be left as it is, but the building has no such side.`,
    how: "Choose the sides to leave again.",
  };
}

/** Breaks that have no place on the run, and curves without room. */
function breakProblems(
  { drive, passedOver, shortened, line, distances }: DriveLine,
  words: Words,
): Problem[] {
  const at = (t: number): { at: [number, number] } => ({ at: [...pointAlong(line, t).at] });
  const end = distances[distances.length - 1] ?? 0;
  return [
    ...passedOver.map((index): Problem => {
      const place = drive.breaks[index]?.at ?? 0;
      return {
        code: "grade-break-without-place",
        severity: "caution",
        where: `${drive.name}, ${words.length(place)} from the road`,
        what: "This grade break lies on the landing, beyond the end or on another break, so it is left out.",
        how: "Move it on to the run between the road and the landing.",
        ...at(Math.min(place, end)),
        ids: [drive.id],
      };
    }),
    ...shortened.map(
      (node): Problem => ({
        code: "vertical-curve-short",
        severity: "note",
        where: `${drive.name}, ${words.length(node.at)} from the road`,
        what: `Its vertical curve has room for ${words.length(2 * node.half)} only.`,
        how: "Make it or its neighbour shorter, or move the breaks apart.",
        ...at(node.at),
        ids: [drive.id],
      }),
    ),
  ];
}

function driveWithoutDoor(drive: Drive, end: Point): Problem {
  return {
    code: "drive-without-door",
    severity: "caution",
    where: drive.name,
    what: "The door it was to serve isn't there; it ends on the ground as it is.",
    how: "Choose a door for it.",
    at: [...end],
    ids: [drive.id],
  };
}

function driveOffDoor(drive: Drive, door: Door, gap: number, end: Point, words: Words): Problem {
  return {
    code: "drive-off-door",
    severity: "caution",
    where: drive.name,
    what: `It ends ${words.length(gap)} away from ${door.name}.`,
    how: "Drag its last point to the middle of the door's sill.",
    at: [...end],
    ids: [drive.id, door.id],
  };
}

function driveShort(drive: Drive, length: number, end: Point, words: Words): Problem {
  return {
    code: "drive-shorter-than-landing",
    severity: "caution",
    where: drive.name,
    what: `It is ${words.length(length)} long, no longer than its landing of ${words.length(drive.landing.length)}; it runs in one grade from the road to the door, without a landing.`,
    how: "Make the drive longer or the landing shorter.",
    at: [...end],
    ids: [drive.id],
  };
}
