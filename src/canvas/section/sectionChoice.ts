/** Which section is shown below the plan: through the building one way or the other, along a drive, or a person's own. */
import { createStore } from "zustand/vanilla";
import type { Project } from "../../document";
import type { Point } from "../../geometry";
import type { Results, SectionLine } from "../../solve/results";
import { sectionAlong } from "../../solve/section-along";
import { acrossBuilding, acrossDrive, mostMovedAt } from "../../solve/standard-sections";
import { asOnPlan } from "./sectionShapes";

export type SectionKey = "along" | "across" | `drive:${string}` | `over:${string}` | `section:${string}`;

interface SectionChoice {
  readonly key: SectionKey;
  /** Heights are drawn as true as lengths. */
  readonly trueHeights: boolean;
  /** Where a section across a drive is cut, m from the road; null: where most is cut or filled. */
  readonly overAt: number | null;
}

export const sectionChoice = createStore<SectionChoice>(() => ({
  key: "along",
  trueHeights: false,
  overAt: null,
}));

export interface SectionEntry {
  readonly key: SectionKey;
  readonly words: string;
}

/** All sections that can be shown now. */
export function sectionEntries(project: Project): readonly SectionEntry[] {
  const { building, grading, drawing } = project;
  return [
    ...(building
      ? ([
          { key: "along", words: "Through the building, down the fall" },
          { key: "across", words: "Through the building, across the fall" },
        ] as const)
      : []),
    ...grading.drives.flatMap(({ id, name, line }): SectionEntry[] =>
      line.length < 2
        ? []
        : [
            { key: `drive:${id}`, words: `Along ${name}` },
            { key: `over:${id}`, words: `Across ${name}` },
          ],
    ),
    ...drawing.sections.map(
      ({ id, name }): SectionEntry => ({ key: `section:${id}`, words: `Along ${name}` }),
    ),
  ];
}

export interface ShownSection {
  readonly section: SectionLine;
  /** The line on the plan from the section's left end to its right one. */
  readonly line: readonly Point[];
  /** Of a drive or a person's own line; null for the sections through the building. */
  readonly name: string | null;
  /** Of one across a drive, its place, m from the road, and the drive's length; null for all others. */
  readonly over: { readonly distance: number; readonly length: number } | null;
  /** It has no marks of its own on the plan. */
  readonly unmarked: boolean;
}

/** The chosen section; null where there is no ground, or nothing to cut, for it. */
export function shownSection(
  key: SectionKey,
  project: Project,
  results: Results,
  floor: number | null,
  turn: number,
  overAt: number | null = null,
): ShownSection | null {
  if (key === "along" || key === "across") {
    const section = key === "along" ? results.section : acrossBuilding(project, results, floor);
    if (!section) return null;
    const seen = asOnPlan(section, turn);
    return { section: seen, line: [seen.start, seen.end], name: null, over: null, unmarked: true };
  }
  if (key.startsWith("over:")) return acrossShown(key.slice(5), project, results, floor, overAt);
  const [kind, id] = [key.slice(0, key.indexOf(":")), key.slice(key.indexOf(":") + 1)];
  const found =
    kind === "drive"
      ? project.grading.drives.find((drive) => drive.id === id)
      : project.drawing.sections.find((section) => section.id === id);
  if (!found || found.line.length < 2) return null;
  const section = sectionAlong(found.line, project, results, floor);
  return section && { section, line: section.line, name: found.name, over: null, unmarked: false };
}

/** Across a drive, from its left to its right on the way to the building, where it is asked for or most is moved. */
function acrossShown(
  id: string,
  project: Project,
  results: Results,
  floor: number | null,
  overAt: number | null,
): ShownSection | null {
  const drive = project.grading.drives.find((one) => one.id === id);
  const result = results.drives.find((one) => one.id === id);
  if (!drive || !result) return null;
  const distance = Math.min(overAt ?? mostMovedAt(result), result.length);
  const section = acrossDrive(drive, result, distance, project, results, floor);
  const over = { distance, length: result.length };
  return section && { section, line: section.line, name: drive.name, over, unmarked: true };
}

/** The straight line along which the plan is cut, for its marks there; null where the section has marks of its own. */
export function cutLine(shown: ShownSection | null): Pick<SectionLine, "start" | "end"> | null {
  return shown?.unmarked ? { start: shown.section.start, end: shown.section.end } : null;
}
