/**
 * The long section of a drive: from the road over its grade breaks to the landing in front of the door.
 *
 * Units   metres; grades rise over run, positive climbs towards the building.
 * Method  The sill lies under the floor and the landing falls away from the door; straight grades join road, typed
 *         breaks and landing, rounded by parabolic curves (equal tangents): between their ends the grade changes
 *         evenly. Heights of the nodes are base + share · floor, and a parabola is linear in its tangents, so every
 *         height along it is base + share · floor too: nothing is laid out again for another floor.
 * Source  First principles; the parabola with equal tangents is the usual vertical curve of road work.
 */
import type { Drive } from "../document/schema";
import { cornerDistances, type Point, pointAlong } from "../geometry";
import { type Segments, segmentsOf } from "./wall-distance";

/** A drive's last point may lie this far off its door, m: it is drawn by hand. */
export const doorGap = 0.6;
/** Breaks nearer than this to an end or to each other are one place, m. */
const leastPiece = 0.05;

export interface DriveNode {
  readonly kind: "road" | "break" | "landing" | "door" | "end";
  readonly at: number;
  readonly base: number;
  readonly share: number;
  /** Half the length of its vertical curve as built in. */
  readonly half: number;
  /** Index among the document's breaks; -1 for others. */
  readonly index: number;
}

export interface DriveLine {
  readonly drive: Drive;
  readonly line: readonly Point[];
  readonly segments: Segments;
  /** Distance from the road of every point of the line. */
  readonly distances: Float64Array;
  readonly length: number;
  readonly roadHeight: number;
  /** Landing in front of the door as built in: 0 where there is no door or no room for it. */
  readonly landing: number;
  /** The sill below the floor; null: no door, the drive ends on the ground as it is. */
  readonly sillBelowFloor: number | null;
  /** Height where a drive without a door ends. */
  readonly endHeight: number;
  readonly nodes: readonly DriveNode[];
  /** Breaks of the document that have no place on it (beyond its run, or two at one place). */
  readonly passedOver: readonly number[];
  /** Nodes whose curve had to be shortened to leave room for its neighbours. */
  readonly shortened: readonly DriveNode[];
}

export interface DriveSite {
  readonly roadHeight: number;
  readonly endHeight: number;
  readonly sillBelowFloor: number | null;
  /** The ground as it is, for breaks that follow it; needed only where there are such. */
  readonly ground?: (at: Point) => number;
}

/** Lays a drive out. The line must have a length; points repeated on the spot are passed over. */
export function layDrive(drive: Drive, site: DriveSite): DriveLine {
  const line = withoutRepeats(drive.line);
  const distances = cornerDistances(line);
  const length = distances[distances.length - 1] ?? 0;
  const wanted = site.sillBelowFloor === null ? 0 : drive.landing.length;
  // A landing that takes the whole line would leave no run to join the road: then it is all one grade.
  const landing = wanted < length ? wanted : 0;
  const { nodes, passedOver } = drawnNodes(drive, site, line, length, landing);
  const fitted = fitCurves(nodes);
  return {
    drive,
    line,
    segments: segmentsOf(line.slice(1).map((end, i) => ({ start: line[i] as Point, end }))),
    distances,
    length,
    roadHeight: site.roadHeight,
    landing,
    sillBelowFloor: site.sillBelowFloor,
    endHeight: site.endHeight,
    nodes: fitted,
    passedOver,
    shortened: fitted.filter(({ half }, i) => half < (nodes[i]?.half ?? 0) - 1e-9),
  };
}

function drawnNodes(
  drive: Drive,
  site: DriveSite,
  line: readonly Point[],
  length: number,
  landing: number,
): { nodes: DriveNode[]; passedOver: number[] } {
  const run = length - landing;
  const nodes: DriveNode[] = [{ kind: "road", at: 0, base: site.roadHeight, share: 0, half: 0, index: -1 }];
  const passedOver: number[] = [];
  const sorted = drive.breaks.map((one, index) => ({ ...one, index })).sort((a, b) => a.at - b.at);
  for (const { at, height, curve, index } of sorted) {
    const before = nodes[nodes.length - 1] as DriveNode;
    if (at < before.at + leastPiece || at > run - leastPiece) {
      passedOver.push(index);
      continue;
    }
    const base = height ?? site.ground?.(pointAlong(line, at).at) ?? site.roadHeight;
    nodes.push({ kind: "break", at, base, share: 0, half: curve / 2, index });
  }
  if (site.sillBelowFloor === null) {
    nodes.push({ kind: "end", at: length, base: site.endHeight, share: 0, half: 0, index: -1 });
    return { nodes, passedOver };
  }
  const sill = -site.sillBelowFloor;
  const top = sill - drive.landing.fall * landing;
  if (landing > 0)
    nodes.push({ kind: "landing", at: run, base: top, share: 1, half: drive.landing.curve / 2, index: -1 });
  nodes.push({ kind: "door", at: length, base: sill, share: 1, half: 0, index: -1 });
  return { nodes, passedOver };
}

/** Curves that would overlap share the room between their breaks in proportion to what they want. */
function fitCurves(nodes: readonly DriveNode[]): DriveNode[] {
  return nodes.map((node, i) => {
    if (node.half === 0) return node;
    const room = [nodes[i - 1], nodes[i + 1]].map((next) => {
      if (!next) return 0;
      const gap = Math.abs(next.at - node.at);
      return node.half + next.half <= gap ? node.half : (gap * node.half) / (node.half + next.half);
    });
    return { ...node, half: Math.min(node.half, ...room) };
  });
}

/** Height along the drive is base + share · floor. */
export interface LinearHeight {
  readonly base: number;
  readonly share: number;
}

export function driveHeight({ nodes, length }: DriveLine, distance: number): LinearHeight {
  const t = Math.min(Math.max(distance, 0), length);
  let i = 1;
  while (i < nodes.length - 1 && t > (nodes[i] as DriveNode).at) i++;
  const before = nodes[i - 1] as DriveNode;
  const after = nodes[i] as DriveNode;
  const part = (t - before.at) / (after.at - before.at);
  let base = before.base * (1 - part) + after.base * part;
  let share = before.share * (1 - part) + after.share * part;
  for (let k = i - 1; k <= i; k++) {
    const node = nodes[k] as DriveNode;
    const into = node.half - Math.abs(t - node.at);
    if (into <= 0) continue;
    const bend = gradeChange(nodes, k);
    // The parabola lies A · x² / (2 L) off its tangent, x from the curve's nearer end.
    base += (bend.base * into * into) / (4 * node.half);
    share += (bend.share * into * into) / (4 * node.half);
  }
  return { base, share };
}

/** Change of grade at a node, as base + share · floor: positive is a sag. */
export function gradeChange(nodes: readonly DriveNode[], k: number): LinearHeight {
  const node = nodes[k] as DriveNode;
  const before = nodes[k - 1];
  const after = nodes[k + 1];
  if (!before || !after) return { base: 0, share: 0 };
  const [up, on] = [node.at - before.at, after.at - node.at];
  return {
    base: (after.base - node.base) / on - (node.base - before.base) / up,
    share: (after.share - node.share) / on - (node.share - before.share) / up,
  };
}

/** Straight grade between two nodes at a floor height. */
function gradeBetween(a: DriveNode, b: DriveNode, floor: number): number {
  return (b.base + b.share * floor - a.base - a.share * floor) / (b.at - a.at);
}

/** Straight pieces between the nodes, from the road on, with their grades at a floor height. */
export function drivePieces(
  { nodes }: DriveLine,
  floor: number,
): { from: number; to: number; grade: number }[] {
  return nodes.slice(1).map((end, i) => {
    const start = nodes[i] as DriveNode;
    return { from: start.at, to: end.at, grade: gradeBetween(start, end, floor) };
  });
}

/** Grade from the road to the landing as a whole at a floor height. */
export function mainGrade(line: DriveLine, floor: number): number {
  const top = topOfRun(line);
  return gradeBetween(line.nodes[0] as DriveNode, top, floor);
}

/**
 * The floor height at which the piece that climbs to the landing has this grade: the one piece that follows the floor.
 * Null for a drive without a door.
 */
export function floorForGrade(line: DriveLine, grade: number): number | null {
  if (line.sillBelowFloor === null) return null;
  const top = topOfRun(line);
  const foot = line.nodes[line.nodes.indexOf(top) - 1] as DriveNode;
  return foot.base + grade * (top.at - foot.at) - top.base;
}

/** Where the run from the road ends, the grade that takes over there, and whether a vertical curve eases the change. */
export function endOfRun(line: DriveLine): {
  readonly where: "landing" | "door";
  readonly grade: number;
  readonly curved: boolean;
} {
  const { kind, half } = topOfRun(line);
  const where = kind === "landing" ? "landing" : "door";
  return { where, grade: where === "landing" ? line.drive.landing.fall : 0, curved: half > 0 };
}

function topOfRun({ nodes }: DriveLine): DriveNode {
  return (nodes.find(({ kind }) => kind === "landing") ?? nodes[nodes.length - 1]) as DriveNode;
}

/** The line without points that repeat the one before; fewer than two are left when it has no length. */
export function withoutRepeats(line: readonly Point[]): readonly Point[] {
  return line.filter((point, i) => {
    const before = line[i - 1];
    return !before || Math.hypot(point[0] - before[0], point[1] - before[1]) > 1e-9;
  });
}
