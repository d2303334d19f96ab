/** The project as it is seen: things that a person hid are neither drawn nor picked, but still count. */
import type { Building, Drawing, Grading, Lot, Project, Survey } from "./schema";
import { type Thing, thingKey } from "./thing";

const seen = new WeakMap<Project, Project>();
/** Shortened lists by the list they come from, so that what didn't change stays the same object. */
const lists = new WeakMap<
  object,
  { readonly hidden: readonly string[]; readonly left: readonly unknown[] }
>();

/** The project without its hidden things and what has too few points to be drawn; the very same object where there are none. */
export function visibleProject(project: Project): Project {
  const known = seen.get(project);
  if (known) return known;
  const drawable = withoutPointless(project);
  const visible = project.drawing.hidden.length === 0 ? drawable : withoutHidden(drawable);
  seen.set(project, visible);
  return visible;
}

/** A drive of one point (from a file) can't be drawn; the list of what to look at tells it. */
function withoutPointless(project: Project): Project {
  const { drives, swales, pads, berms, walls } = project.grading;
  const kept = {
    drives: drawn(drives),
    swales: drawn(swales),
    pads: drawn(pads),
    berms: drawn(berms),
    walls: drawn(walls),
  };
  const whole =
    kept.drives === drives &&
    kept.swales === swales &&
    kept.pads === pads &&
    kept.berms === berms &&
    kept.walls === walls;
  return whole ? project : { ...project, grading: { ...project.grading, ...kept } };
}

type Drawn = { readonly line: readonly unknown[] } | { readonly outline: readonly unknown[] };

const drawnOf = new WeakMap<object, readonly unknown[]>();

function drawn<T extends Drawn>(list: T[]): T[] {
  const known = drawnOf.get(list);
  if (known) return known as T[];
  const left = list.filter((piece) => ("line" in piece ? piece.line.length > 1 : piece.outline.length > 2));
  const answer = left.length === list.length ? list : left;
  drawnOf.set(list, answer);
  return answer;
}

type Listed = Exclude<Thing["kind"], "building" | "lot">;

function withoutHidden(project: Project): Project {
  const { hidden } = project.drawing;
  const keys = new Set(hidden);
  const left = <T extends { readonly id: string }>(kind: Listed, list: T[]): T[] =>
    leftOf(kind, list, hidden, keys);
  const isHidden = (thing: Thing) => keys.has(thingKey(thing));
  const lot: Lot = {
    ...project.lot,
    outline: isHidden({ kind: "lot" }) ? [] : project.lot.outline,
    features: left("feature", project.lot.features),
  };
  const survey: Survey = {
    ...project.survey,
    marks: left("mark", project.survey.marks),
    shots: left("shot", project.survey.shots),
    breaklines: left("breakline", project.survey.breaklines),
    pits: left("pit", project.survey.pits),
  };
  const building: Building | null =
    project.building && !isHidden({ kind: "building" })
      ? {
          ...project.building,
          doors: left("door", project.building.doors),
          windows: left("window", project.building.windows),
        }
      : null;
  const grading: Grading = {
    ...project.grading,
    drives: left("drive", project.grading.drives),
    swales: left("swale", project.grading.swales),
    pads: left("pad", project.grading.pads),
    berms: left("berm", project.grading.berms),
    walls: left("retaining-wall", project.grading.walls),
    points: left("grade-point", project.grading.points),
  };
  const drawing: Drawing = {
    ...project.drawing,
    notes: left("note", project.drawing.notes),
    dimensions: left("dimension", project.drawing.dimensions),
    sections: left("section", project.drawing.sections),
    underlays: left("underlay", project.drawing.underlays),
  };
  return { ...project, lot, survey, building, grading, drawing };
}

function leftOf<T extends { readonly id: string }>(
  kind: Listed,
  list: T[],
  hidden: readonly string[],
  keys: ReadonlySet<string>,
): T[] {
  const known = lists.get(list);
  if (known?.hidden === hidden) return known.left as T[];
  const shown = list.filter(({ id }) => !keys.has(`${kind}:${id}`));
  const left = shown.length === list.length ? list : shown;
  lists.set(list, { hidden, left });
  return left;
}
