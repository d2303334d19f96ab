/** The plan's marks, drawn again only where what they are made from has changed. */
import { type Project, visibleProject } from "../../document";
import { createDrawContext, type DrawContext, type MarkLayer } from "../../drawing";
import { crowdFrom } from "../../drawing/crowd";
import type { Ranked } from "../../drawing/importance";
import type { Box } from "../../drawing/labels";
import type { Bounds } from "../../geometry";
import type { Results } from "../../solve/results";
import type { PlanLayer, StepName } from "../../store/state";
import type { CutInView } from "../section/sectionOnPlan";
import {
  type CanvasName,
  followsFloor,
  followsView,
  type LayerSpec,
  layersByRank,
  paintingOrder,
} from "./layerList";

export interface SceneInput {
  readonly project: Project;
  readonly results: Results;
  readonly hidden: ReadonlySet<PlanLayer>;
  /** The step of the job that is open; missing: what belongs to a step is drawn too. */
  readonly step?: StepName;
  readonly metresPerMm: number;
  /** The plan is shown turned by this, radians counter-clockwise. */
  readonly turn: number;
  /** The part of the plan that is looked at; a crowd of shots is drawn there alone. */
  readonly seen?: Bounds;
  /** Paper that tools and keys lie over, as long as the view is the fitted one: texts keep off it. */
  readonly covered?: readonly Box[];
  /** The line that the section below the plan is cut along. */
  readonly section?: CutInView | null;
  /** Something is under the hand, or not all is worked out yet: labels that are placed stay where they are. */
  readonly labelsRest: boolean;
}

export interface PlanScene {
  /** Brings the marks up to date; the canvases that look different now. */
  update(input: SceneInput): ReadonlySet<CanvasName>;
  layers(canvas: CanvasName): readonly MarkLayer[];
  /** The part of the plan that each of these layers belongs to; none: always shown, at full strength. */
  parts(canvas: CanvasName): readonly (PlanLayer | undefined)[];
}

interface Drawn {
  readonly inputs: readonly unknown[];
  readonly underHand: readonly unknown[] | null;
  readonly layer: MarkLayer | null;
}

export function createPlanScene(): PlanScene {
  const drawn = new Map<string, Drawn>();
  let context: DrawContext | null = null;
  let covered: readonly Box[] = [];
  /** Labels were placed round things that have moved since: everything is placed anew when the hand rests. */
  let crowded = false;

  function staleNames(input: SceneInput): Set<Ranked> {
    const { project, results, section = null } = input;
    const stale = new Set<Ranked>();
    for (const spec of layersByRank) {
      const inputs = [isOff(spec, input), ...spec.inputs(project, results, section)];
      const underHand = spec.underHand ? [isOff(spec, input), ...spec.underHand(project, results)] : null;
      const before = drawn.get(spec.name);
      if (before && sameItems(before.inputs, inputs)) continue;
      if (input.labelsRest && before?.underHand && underHand && sameItems(before.underHand, underHand))
        continue;
      drawn.set(spec.name, { inputs, underHand, layer: before?.layer ?? null });
      stale.add(spec.name);
    }
    return stale;
  }

  return {
    update(whole) {
      // Hidden things are not drawn.
      const input = { ...whole, project: visibleProject(whole.project) };
      const stale = staleNames(input);
      const seen = whole.results.survey.points.length < crowdFrom ? null : (whole.seen ?? null);
      const rescaled =
        context?.metresPerMm !== input.metresPerMm ||
        context.turn !== input.turn ||
        !sameBounds(context.seen, seen);
      if ([...stale].some((name) => !followsFloor.has(name) && !followsView.has(name))) crowded = true;
      // A plan that is pushed aside keeps its texts where they are, under the tools too.
      const fitted = input.covered !== undefined && !sameBoxes(input.covered, covered);
      const anew = rescaled || ((crowded || fitted) && !input.labelsRest);
      if (anew) crowded = false;
      if (anew || !context) {
        covered = input.covered ?? [];
        context = createDrawContext({
          metresPerMm: input.metresPerMm,
          turn: input.turn,
          covered,
          ...(seen && { seen }),
        });
      }
      const changed = new Set<CanvasName>();
      for (const spec of layersByRank) {
        if (!anew && !stale.has(spec.name)) continue;
        const off = isOff(spec, input);
        if (off) context.labels.forget(spec.name);
        const layer = off ? null : spec.draw(input.project, input.results, context, input.section ?? null);
        const { inputs = [], underHand = null } = drawn.get(spec.name) ?? {};
        drawn.set(spec.name, { inputs, underHand, layer });
        changed.add(spec.canvas);
      }
      return changed;
    },
    layers(canvas) {
      return paintingOrder[canvas].flatMap((name) => drawn.get(name)?.layer ?? []);
    },
    parts(canvas) {
      return paintingOrder[canvas].flatMap((name) => (drawn.get(name)?.layer ? [partOf.get(name)] : []));
    },
  };
}

function isOff({ part, steps }: LayerSpec, { hidden, step }: SceneInput): boolean {
  if (part !== undefined && hidden.has(part)) return true;
  return steps !== undefined && step !== undefined && !steps.includes(step);
}

const partOf = new Map<string, PlanLayer | undefined>(layersByRank.map(({ name, part }) => [name, part]));

function sameBounds(a: Bounds | null, b: Bounds | null): boolean {
  if (!a || !b) return a === b;
  return a.minX === b.minX && a.maxX === b.maxX && a.minY === b.minY && a.maxY === b.maxY;
}

function sameBoxes(a: readonly Box[], b: readonly Box[]): boolean {
  return (
    a.length === b.length &&
    a.every((box, i) => {
      const { x, y, width, height, angle } = b[i] as Box;
      return (
        box.x === x && box.y === y && box.width === width && box.height === height && box.angle === angle
      );
    })
  );
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
