/**
 * Acts along a line: drives, swales and berms.
 *
 * Method  The nearest place on the centreline gives the height along it, inside a bend gone over from piece to piece;
 *         the distance across gives crown, shoulder and side slopes. Bends are round, ends are cut square.
 * Source  First principles. Side slopes are run for one of rise.
 */
import { boundsOf } from "../geometry";
import { grown } from "./boxes";
import { type Crossing, reachOverPipe } from "./crossings";
import { type DriveLine, doorGap, driveHeight } from "./drive-line";
import type { BermLine } from "./ground-shapes";
import type { Limits, Operator } from "./operator";
import { alongLine, besideStrip, offCentre, stripEdges } from "./strip";
import { bedHeight, bedRange, type SwaleLine } from "./swale-line";
import { nearestSegment, nowhere } from "./wall-distance";

export function driveOperator(line: DriveLine): Operator {
  const { drive } = line;
  const half = drive.width / 2;
  const { shoulder } = drive;
  const edge = half + shoulder.width;
  const runOn = runOnAtDoor(line);
  const cutSlope = drive.cutSlope ?? drive.sideSlope;
  const found = nowhere();
  const mostAcross = drive.across.kind === "level" ? 0 : drive.across.fall * half;
  const drop = mostAcross + shoulder.fall * shoulder.width;
  return {
    id: drive.id,
    bounds: grown(boundsOf(line.line), edge + runOn),
    edges: [half, ...(shoulder.width > 0 ? [edge] : [])].flatMap((out) => stripEdges(line.line, out, runOn)),
    flattest: Math.max(drive.sideSlope, cutSlope),
    ends(low, high) {
      // Sags lie under and crests over their nodes by no more than the nodes lie apart: stations hold them.
      const at = (floor: number, t: number) => {
        const { base, share } = driveHeight(line, t);
        return base + share * floor;
      };
      const places = line.nodes.flatMap((node) => [node.at - node.half, node.at, node.at + node.half]);
      const nodes = line.nodes.map(({ base, share }) => ({ base, share }));
      return {
        leastUpper:
          Math.min(...places.map((t) => at(low, t)), ...nodes.map((n) => n.base + n.share * low)) - drop,
        mostLower:
          Math.max(...places.map((t) => at(high, t)), ...nodes.map((n) => n.base + n.share * high)) +
          mostAcross,
      };
    },
    limitsAt(x, y, _existing, limits) {
      nearestSegment(line.segments, x, y, found);
      const height = driveHeight(line, alongLine(line.segments, line.distances, x, y, found));
      const beside = besideStrip(found, line.distances, edge, runOn);
      const out = Math.min(Math.max(0, offCentre(found, line.distances) - half), shoulder.width);
      const base = height.base - fallAcross(drive, found.across) - out * shoulder.fall;
      limits.lower = base - beside / drive.sideSlope;
      limits.upper = base + beside / cutSlope;
      limits.share = height.share;
      limits.core = beside === 0;
      limits.stone = beside === 0 && out === 0 ? drive.gravel : 0;
    },
  };
}

/** How much lower than its middle a drive is at a distance across, positive to the left. */
function fallAcross(drive: DriveLine["drive"], across: number): number {
  const { kind, fall } = drive.across;
  if (kind === "level") return 0;
  const held = Math.min(Math.max(across, -drive.width / 2), drive.width / 2);
  if (kind === "crown") return fall * Math.abs(held);
  return kind === "left" ? fall * held : -fall * held;
}

/** A drive that ends at a door goes on under the wall, so that no gap is left where it meets it at an angle. */
function runOnAtDoor({ sillBelowFloor, drive }: DriveLine): number {
  return sillBelowFloor === null ? 0 : drive.width / 2 + doorGap;
}

/** `leastHalfWidth`: the bed is taken at least this wide to each side, so that a coarse grid can't miss it. */
export function swaleOperator(line: SwaleLine, leastHalfWidth: number): Operator {
  const { swale } = line;
  const drawn = swale.bottomWidth / 2;
  const half = Math.max(drawn, leastHalfWidth);
  const found = nowhere();
  return {
    id: swale.id,
    bounds: grown(boundsOf(line.line), half),
    flattest: swale.sideSlope,
    ends: () => ({ leastUpper: bedRange(line).low, mostLower: Number.NEGATIVE_INFINITY }),
    limitsAt(x, y, _existing, limits) {
      nearestSegment(line.segments, x, y, found);
      const bed = bedHeight(line, alongLine(line.segments, line.distances, x, y, found));
      const beside = besideStrip(found, line.distances, half);
      open(limits);
      limits.upper = bed + riseBeside(swale, beside, Math.min(offCentre(found, line.distances), half), half);
      limits.core = beside === 0;
    },
  };
}

/**
 * A drive's earth over the pipe that takes a swale under it: where the swale has cut, it fills up again to the drive and its
 * side slopes. Comes right after the swale.
 */
export function overPipeOperator(line: DriveLine, swale: SwaleLine, at: readonly Crossing[]): Operator {
  const whole = driveOperator(line);
  const reaches = at.map((crossing) => reachOverPipe(crossing, line, swale));
  return {
    ...whole,
    edges: [],
    ends: (low, high) => ({ ...whole.ends(low, high), leastUpper: Number.POSITIVE_INFINITY }),
    limitsAt(x, y, existing, limits) {
      const near = at.some(({ at: [cx, cy] }, i) => Math.hypot(x - cx, y - cy) <= (reaches[i] as number));
      if (!near) return open(limits);
      whole.limitsAt(x, y, existing, limits);
      limits.upper = Number.POSITIVE_INFINITY;
    },
  };
}

/** Rise of a swale's section over its bed: straight sides, or a parabola that runs into them without a break. */
function riseBeside(swale: SwaleLine["swale"], beside: number, within: number, half: number): number {
  const sides = beside / swale.sideSlope;
  if (swale.shape !== "dish" || half === 0) return sides;
  return sides + (within * within) / (2 * half * swale.sideSlope);
}

export function bermOperator(line: BermLine): Operator {
  const { berm } = line;
  const half = berm.topWidth / 2;
  const found = nowhere();
  const most = Math.max(...line.crest);
  return {
    id: berm.id,
    bounds: grown(boundsOf(line.line), half),
    flattest: berm.sideSlope,
    ends: () => ({ leastUpper: Number.POSITIVE_INFINITY, mostLower: most }),
    limitsAt(x, y, _existing, limits) {
      nearestSegment(line.segments, x, y, found);
      const along = alongLine(line.segments, line.distances, x, y, found);
      const beside = besideStrip(found, line.distances, half);
      open(limits);
      limits.lower = line.crestAt(along) - beside / berm.sideSlope;
      limits.core = beside === 0;
    },
  };
}

/** No limit either way: what an act says where it leaves the ground alone. */
export function open(limits: Limits): void {
  limits.lower = Number.NEGATIVE_INFINITY;
  limits.upper = Number.POSITIVE_INFINITY;
  limits.share = 0;
  limits.core = false;
  limits.stone = 0;
}
