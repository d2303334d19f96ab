/**
 * Sections that every plan has: through the building both ways, along each drive and across it at its stations, and the
 * lines that a person drew; with what is cut and filled in each.
 *
 * Units   metres; m2 of section.
 * Method  The lines are read as the pointer reads a place (`section-along.ts`); areas as in `section-earth.ts`.
 */
import { earthBelowFloor } from "../document/foundationMeasures";
import type { Drive, Project } from "../document/schema";
import { centroid, type Point, pointAlong } from "../geometry";
import type { DriveResult, Results, SectionLine } from "./results";
import { sectionAlong } from "./section-along";
import { type SectionEarth, sectionEarth } from "./section-earth";

/** Beyond the edge of a drive, its slopes are followed no farther than this, m. */
const mostBeside = 15;
/** Ground shown beyond the foot of the slopes, m. */
const beyond = 1;

export interface SectionAreas {
  readonly name: string;
  readonly kind: "down the fall" | "across the fall" | "along a drive" | "across a drive" | "drawn";
  /** Document id of the drive or the drawn line; null for the sections through the building. */
  readonly id: string | null;
  /** Of a section across a drive: its place, m from the road. */
  readonly distance: number | null;
  readonly start: readonly [number, number];
  readonly end: readonly [number, number];
  readonly length: number;
  readonly cut: number;
  readonly fill: number;
  /** Share of the section's samples on guessed ground, 0 to 1. */
  readonly guessedShare: number;
}

/** Empty without a ground. */
export function standardSections(project: Project, results: Results): SectionAreas[] {
  const { floor } = results;
  const made: SectionAreas[] = [];
  const add = (
    head: Pick<SectionAreas, "name" | "kind"> & Partial<SectionAreas>,
    section: SectionLine | null,
  ) => {
    if (section) made.push({ id: null, distance: null, ...head, ...areasOf(section, project, floor) });
  };
  if (project.building) {
    add({ name: "Through the building, down the fall", kind: "down the fall" }, results.section);
    add(
      { name: "Through the building, across the fall", kind: "across the fall" },
      acrossBuilding(project, results, floor),
    );
  }
  for (const drive of project.grading.drives) {
    const { id, name, line } = drive;
    add({ name: `Along ${name}`, kind: "along a drive", id }, sectionAlong(line, project, results, floor));
    const result = results.drives.find((one) => one.id === id);
    for (const { distance } of result?.stations ?? [])
      add(
        { name: `Across ${name}`, kind: "across a drive", id, distance },
        acrossDrive(drive, result, distance, project, results, floor),
      );
  }
  for (const { id, name, line } of project.drawing.sections)
    add({ name: `Along ${name}`, kind: "drawn", id }, sectionAlong(line, project, results, floor));
  return made;
}

/** What is dug and filled along a section; one beside the building doesn't ask for the floor. */
export function earthAlong(section: SectionLine, project: Project, floor: number | null): SectionEarth {
  const { building, materials } = project;
  const inside = building && floor !== null ? floor - earthBelowFloor(building) : 0;
  return sectionEarth(section, inside, materials.stripDepth);
}

/** Through the middle of the building, square to the section down the fall and about as long. */
export function acrossBuilding(project: Project, results: Results, floor: number | null): SectionLine | null {
  const { building } = project;
  const { section } = results;
  if (!building || !section) return null;
  const [x, y] = centroid(building.outline);
  const [dx, dy] = [section.end[0] - section.start[0], section.end[1] - section.start[1]];
  const half = Math.hypot(dx, dy) / 2;
  const [ux, uy] = [-dy / (2 * half), dx / (2 * half)];
  return sectionAlong(squareLine([x, y], [ux, uy], half), project, results, floor);
}

/**
 * Square to a drive at a distance from the road, from its left to its right as one drives to the building, as far out as
 * its side slopes may reach there.
 */
export function acrossDrive(
  drive: Drive,
  result: DriveResult | undefined,
  distance: number,
  project: Project,
  results: Results,
  floor: number | null,
) {
  const { at, direction } = pointAlong(drive.line, distance);
  const deepest = Math.max(
    0,
    ...(result?.stations ?? []).map((one) => Math.abs(one.finished - one.existing)),
  );
  const slope = Math.max(drive.sideSlope, drive.cutSlope ?? 0);
  // Ground that falls across lets a slope run out farther than on level ground: twice as far is taken.
  const beside = Math.min(mostBeside, 2 * slope * deepest + beyond);
  const half = drive.width / 2 + drive.shoulder.width + beside;
  return sectionAlong(squareLine(at, [direction[1], -direction[0]], half), project, results, floor);
}

/** Where along a drive, before its landing, most is cut or filled, m from the road. */
export function mostMovedAt({ stations, nodes, length }: DriveResult): number {
  const landing = nodes.find(({ kind }) => kind === "landing")?.distance ?? length;
  const depth = (one: DriveResult["stations"][number]) => Math.abs(one.finished - one.existing);
  const run = stations.filter(({ distance }) => distance <= landing + 1e-6);
  return run.reduce((most, one) => (depth(one) > depth(most) ? one : most)).distance;
}

function squareLine([x, y]: Point, [ux, uy]: Point, half: number): Point[] {
  return [
    [x - ux * half, y - uy * half],
    [x + ux * half, y + uy * half],
  ];
}

function areasOf(section: SectionLine, project: Project, floor: number | null) {
  const { existing, guessed, start, end } = section;
  const { cut, fill } = earthAlong(section, project, floor);
  return {
    start: [start[0], start[1]] as const,
    end: [end[0], end[1]] as const,
    length: existing[existing.length - 2] ?? 0,
    cut,
    fill,
    guessedShare: guessed.reduce((sum, one) => sum + one, 0) / Math.max(1, guessed.length),
  };
}
