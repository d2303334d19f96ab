/** The project as it is seen: things that a person hid are neither drawn nor picked, but still count. */
import type { Building, Drawing, Grading, Lot, Project, Survey } from "./schema";
import { type Thing, thingKey } from "./thing";

const seen = new WeakMap<Project, Project>();
/** Shortened lists by the list they come from, so that what didn't change stays the same object. */
const lists = new WeakMap<
  object,
  { readonly hidden: readonly string[]; readonly left: readonly unknown[] }
>();

/** The project without its hidden things; the very same object where none is hidden. */
export function visibleProject(project: Project): Project {
  if (project.drawing.hidden.length === 0) return project;
  const known = seen.get(project);
  if (known) return known;
  const visible = withoutHidden(project);
  seen.set(project, visible);
  return visible;
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
