/** All that grading needs to know of a project but the floor height. */
import type { GradePoint } from "../document/schema";
import { nearestOnPolyline, type Point } from "../geometry";
import type { DriveLine } from "./drive-line";
import type { Footprint } from "./footprint";
import type { BermLine, PadPlane, WallLine } from "./ground-shapes";
import type { SwaleLine } from "./swale-line";

/** How the ground is shaped in front of one side. */
export interface SideRule {
  /** Height of the finished ground at the wall above the floor, m (mostly negative). */
  readonly edgeAboveFloor: number;
  /** Apron: fall away from the wall, rise over run, over this width, m. */
  readonly fall: number;
  readonly width: number;
  /** Run for one of rise beyond the apron, down in fill and up in cut. */
  readonly fillSlope: number;
  readonly cutSlope: number;
}

/** The apron and side slopes round the walls: the rule for all sides, and where sides differ the rule of each. */
export interface PadRule extends SideRule {
  /** For each wall: 1 = the ground in front of it is left as it is. */
  readonly leave: Uint8Array;
  readonly corners?: "round" | "mitred";
  /** For each wall; missing: all as above. */
  readonly sides?: readonly SideRule[];
}

export interface GradingPlan {
  readonly footprint: Footprint;
  readonly pad: PadRule;
  readonly drives: readonly DriveLine[];
  /** A swale only ever cuts. */
  readonly swales: readonly SwaleLine[];
  readonly pads?: readonly PadPlane[];
  readonly berms?: readonly BermLine[];
  readonly walls?: readonly WallLine[];
  readonly points?: readonly GradePoint[];
  /** Pipes take swales under the drives that they cross; missing: drives are cut down to the swale's bed. */
  readonly piped?: boolean;
  /** Ids in their order; missing: the usual one. */
  readonly order?: readonly string[];
}

/** The floor heights that a layout is made for, m. */
export interface FloorRange {
  readonly low: number;
  readonly high: number;
}

/** Whether a place lies on a drive, or on the shoulder by which it stands above the apron. */
export function onDrive({ drives, pad }: GradingPlan, at: Point): boolean {
  return drives.some(({ line, drive, sillBelowFloor }) => {
    const reach = drive.width / 2 + aboveApron(drive, sillBelowFloor, pad) * drive.sideSlope;
    return nearestOnPolyline(line, at[0], at[1]).distance <= reach;
  });
}

/** How far a drive stands above the apron where that ends, m: more than at the door, for it falls less. */
function aboveApron(drive: DriveLine["drive"], sillBelowFloor: number | null, pad: PadRule): number {
  if (sillBelowFloor === null) return 0;
  const falls = Math.max(0, pad.fall - drive.landing.fall) * Math.min(pad.width, drive.landing.length);
  return Math.max(0, -sillBelowFloor - pad.edgeAboveFloor + falls);
}
