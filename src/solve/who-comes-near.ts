/**
 * The shapes by which work comes too near to a line, in words: a slope of the building's is offered another slope or a wall, a
 * swale is to be moved.
 *
 * Method  A place that is told lies mostly where work ends, where nothing is changed yet: the nearest ring of places about
 *         it on which something is tells whose work it is.
 */
import { containsPoint, type Point } from "../geometry";
import { apronId, finishHeights, type GradingPlan, placesAt, prepare, shapesAt } from "../grading";
import { sentence } from "./grading-cautions";
import type { HeightAt } from "./grading-plan";
import type { Problem } from "./results";

/** Changes smaller than this are not work, m. */
const change = 0.01;
/** Rings about a place, m, and the places on each. */
const rings = [0, 0.15, 0.3, 0.6, 1];
const onRing = 12;

/** A problem of work that comes too near, with the shapes named that do it: from where it is, what it says to do and whom. */
export function withShapes(
  problem: Problem,
  plan: GradingPlan,
  height: HeightAt,
  floor: number,
  /** What it says where no slope of the building is to blame. */
  how: string,
): Problem {
  const ids = problem.at ? shapesAbout(plan, height, floor)(problem.at) : [];
  const named = shapesOf(plan).filter(({ id }) => ids.includes(id));
  if (named.length === 0) return problem;
  const alone = !ids.includes(apronId);
  const told = whatToDo(named, alone);
  return {
    ...problem,
    how: alone ? `${told} ${how}`.trim() : `${problem.how} ${told}`,
    ids: [...(problem.ids ?? []), ...named.map(({ id }) => id)],
  };
}

function shapesAbout(plan: GradingPlan, height: HeightAt, floor: number): (at: Point) => string[] {
  const shapes = shapesAt(plan, height, floor);
  return (at) => {
    for (const radius of rings) {
      const places = ringAbout(at, radius).filter(([x, y]) => !containsPoint(plan.footprint.ring, x, y));
      const asked = placesAt(places, height);
      const finished = finishHeights(
        prepare(asked, plan, { low: floor, high: floor }),
        floor,
        new Float64Array(places.length),
      );
      const depths = places.map((_, i) => (finished[i] as number) - (asked.existing[i] as number));
      const most = depths.reduce((m, d, i) => (Math.abs(d) > Math.abs(depths[m] ?? 0) ? i : m), 0);
      const depth = depths[most] ?? 0;
      if (Math.abs(depth) > change) return shapes(places[most] as Point, depth);
    }
    return [];
  };
}

function ringAbout([x, y]: Point, radius: number): Point[] {
  if (radius === 0) return [[x, y]];
  return Array.from({ length: onRing }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / onRing;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

interface Shape {
  readonly id: string;
  readonly name: string;
  /** What else would do than moving it. */
  readonly or: string;
}

function shapesOf({ drives, swales, pads = [], berms = [], walls = [], points = [] }: GradingPlan): Shape[] {
  const shape = ({ id, name }: { readonly id: string; readonly name: string }, or: string): Shape => ({
    id,
    name,
    or,
  });
  return [
    ...swales.map(({ swale }) => shape(swale, "make it shallower or its banks steeper")),
    ...drives.map(({ drive }) => shape(drive, "take steeper side slopes for it")),
    ...pads.map(({ pad }) => shape(pad, "make it smaller or its side slopes steeper")),
    ...berms.map(({ berm }) => shape(berm, "make it lower or its sides steeper")),
    ...points.map((point) => shape(point, "take steeper slopes for it")),
    ...walls.map(({ wall }) => shape(wall, "let it show less")),
  ];
}

function whatToDo(shapes: readonly Shape[], alone: boolean): string {
  const [first] = shapes as [Shape];
  if (shapes.length === 1)
    return `${sentence(first.name)} ${alone ? "is what comes there" : "comes there too"}: move it away, or ${first.or}.`;
  const names = `${shapes
    .slice(0, -1)
    .map(({ name }) => name)
    .join(", ")} and ${shapes[shapes.length - 1]?.name}`;
  return `${sentence(names)} ${alone ? "are what comes there" : "come there too"}: move them away, or make them smaller or their slopes steeper.`;
}
