/** What the rod shows beside its scale: heights of the ground, the road, the swale, the mark, and the band's ends. */
import type { Project } from "../../document";
import type { BandResult, BandRule, Results } from "../../solve/results";

export interface RodTick {
  readonly id: string;
  readonly label: string;
  readonly z: number;
  readonly kind: "corner" | "ground" | "road" | "water" | "mark";
  readonly guessed: boolean;
}

/** Ticks of the ground and of what the floor must agree with. */
export function rodTicks(project: Project, results: Results): RodTick[] {
  const corners = results.corners.map(
    ({ name, ground, guessed }): RodTick => ({
      id: `corner ${name}`,
      label: name,
      z: ground,
      kind: "corner",
      guessed,
    }),
  );
  const roads = results.drives.flatMap(({ id, stations }, i): RodTick[] => {
    const first = stations[0];
    // The narrow rod has room for a number, not for a name: each is told apart, whole.
    const label = results.drives.length > 1 ? `drive ${i + 1}` : "road";
    return first ? [{ id: `road ${id}`, label, z: first.finished, kind: "road", guessed: false }] : [];
  });
  const outlets = results.water.swales.flatMap(({ id, stations }): RodTick[] => {
    const last = stations.at(-1);
    return last ? [{ id: `outlet ${id}`, label: "outlet", z: last.bed, kind: "water", guessed: false }] : [];
  });
  const { mark } = results.survey;
  const marks: RodTick[] = mark
    ? [{ id: "mark", label: "mark", z: mark.height, kind: "mark", guessed: false }]
    : [];
  return [...corners, ...uphillTick(project, results), ...roads, ...outlets, ...marks];
}

/** The highest ground beside the building: what the rule about water from uphill was measured against. */
function uphillTick(project: Project, results: Results): RodTick[] {
  const rule = results.band.rules.find(({ id }) => id === "aboveUphillGround");
  if (!project.building || !rule || rule.height === null) return [];
  const z = rule.height - rule.value + project.building.topOfWallAboveFloor;
  return [{ id: "uphill", label: "uphill", z, kind: "ground", guessed: false }];
}

/** Short names of the limits, for the narrow rod; the panel says them in full. */
const shortNames: Readonly<Record<string, string>> = {
  aboveUphillGround: "uphill ground",
  leastShowing: "wall shown",
  driveDown: "drive down",
  swaleBelowWall: "swale",
  pondFreeboard: "pond",
  aboveRoad: "road",
  aboveFlood: "flood",
  leastOut: "low wall",
  steepestDrive: "drive",
  intoUndisturbed: "firm soil",
  frostCover: "frost",
  fillUnderSlab: "slab fill",
  mostShowing: "tall wall",
  sidingClearance: "siding",
  besideDrive: "drive at wall",
  landing: "drive's break",
  landingDown: "drive's break",
  fallAway: "fall at wall",
  unbalancedFill: "fill on wall",
  greatestWall: "wall height",
  doorThreshold: "door sill",
  fillFits: "lot line",
  cutFits: "lot line",
  costLimit: "cost",
};

export interface RodBand {
  readonly low: number | null;
  readonly high: number | null;
  /** What is allowed between them, from the lowest up. */
  readonly spans: BandResult["spans"];
  readonly empty: boolean;
  /** Names of the rules that make the ends. */
  readonly lowName: string;
  readonly highName: string;
}

export function rodBand({ band }: Results): RodBand {
  const short = (rule: BandRule | null) => (rule ? (shortNames[rule.id] ?? rule.name) : "");
  return {
    low: band.low,
    high: band.high,
    spans: band.spans,
    empty: band.empty,
    lowName: short(band.lowRule),
    highName: short(band.highRule),
  };
}
