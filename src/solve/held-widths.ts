/** Widths that reach far beyond any such job are told and held, so that the ground can be made for all that is drawn. */
import type { Grading, Project, Rules } from "../document/schema";
import type { StageMaker } from "./memo";
import type { Problem } from "./results";
import { type Words, wordsFor } from "./words";

/** Widest that anything is worked out, m. Our own choice, far beyond any apron, drive or bank of a building plot. */
export const widestShape = 100;

export interface HeldWidths {
  readonly project: Project;
  readonly problems: readonly Problem[];
}

/** The project with every width held to what can be worked out, and what was held, in words. */
export function heldWidthsStage(stage: StageMaker): (project: Project) => HeldWidths {
  const words = stage(wordsFor);
  const grading = stage(heldGrading);
  const rules = stage(heldRules);
  return stage((project: Project): HeldWidths => {
    const say = words(project.display);
    const ground = grading(project.grading, say);
    const limits = rules(project.rules, say);
    const problems = [...ground.problems, ...limits.problems];
    return problems.length === 0
      ? { project, problems }
      : { project: { ...project, grading: ground.held, rules: limits.held }, problems };
  });
}

interface Held<T> {
  readonly held: T;
  readonly problems: readonly Problem[];
}

function heldGrading(grading: Grading, words: Words): Held<Grading> {
  const problems: Problem[] = [];
  const hold = holder(problems, words);
  const held: Grading = {
    ...grading,
    apron: {
      ...grading.apron,
      width: hold(grading.apron.width, "apron-held", "width", "the apron"),
      sides: grading.apron.sides.map((side) => ({
        ...side,
        width:
          side.width === null
            ? null
            : hold(side.width, "apron-held", "width", `the apron, side ${side.wall + 1}`),
      })),
    },
    drives: grading.drives.map((drive) => ({
      ...drive,
      width: hold(drive.width, "drive-held", "width", drive.name, drive),
      shoulder: {
        ...drive.shoulder,
        width: hold(drive.shoulder.width, "drive-held", "shoulder", drive.name, drive),
      },
    })),
    swales: grading.swales.map((swale) => ({
      ...swale,
      bottomWidth: hold(swale.bottomWidth, "swale-held", "bottom width", swale.name, swale),
    })),
    berms: grading.berms.map((berm) => ({
      ...berm,
      topWidth: hold(berm.topWidth, "grading-held", "width of its top", berm.name, berm),
    })),
  };
  return { held: problems.length === 0 ? grading : held, problems };
}

function heldRules(rules: Rules, words: Words): Held<Rules> {
  const problems: Problem[] = [];
  const uphillReach = holder(problems, words)(
    rules.uphillReach,
    "rule-held",
    "distance within which high ground counts",
    "the limits on the floor",
  );
  return { held: problems.length === 0 ? rules : { ...rules, uphillReach }, problems };
}

interface Thing {
  readonly id: string;
  readonly line: readonly (readonly [number, number])[];
}

function holder(problems: Problem[], words: Words) {
  return (value: number, code: string, figure: string, where: string, thing?: Thing): number => {
    if (value <= widestShape) return value;
    const start = thing?.line[0];
    problems.push({
      code,
      severity: "caution",
      where,
      what: `Its ${figure} says ${words.length(value)}; it is worked out as ${words.length(widestShape)}, the widest there is here.`,
      how: "Check the figure and its unit: a number without a unit takes the plan's.",
      ...(start ? { at: [...start] as [number, number] } : {}),
      ...(thing ? { ids: [thing.id] } : {}),
    });
    return widestShape;
  };
}

/** How far shapes reach to the side of what is drawn, before any side slope, m. */
export function widestReach({ apron, drives, swales, berms }: Grading): number {
  return Math.max(
    apron.width,
    ...apron.sides.map(({ width }) => width ?? 0),
    ...drives.map(({ width, shoulder }) => width / 2 + shoulder.width),
    ...swales.map(({ bottomWidth }) => bottomWidth / 2),
    ...berms.map(({ topWidth }) => topWidth / 2),
  );
}
