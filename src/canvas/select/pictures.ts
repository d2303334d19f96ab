/** Pictures under the plan as things: which one lies at a place, and the edit that lays one anew. */
import { type Point, type Project, thingKey, type Underlay } from "../../document";
import { type Placement, showsPlace } from "../../underlay";

export function pictureById(project: Project, id: string): Underlay | null {
  return project.drawing.underlays.find((each) => each.id === id) ?? null;
}

/** The topmost picture at a place that can be taken hold of: a locked or hidden one is like the paper itself. */
export function pictureAt(project: Project, at: Point): Underlay | null {
  const { underlays, locked, hidden } = project.drawing;
  for (let i = underlays.length - 1; i >= 0; i--) {
    const underlay = underlays[i] as Underlay;
    const key = thingKey({ kind: "underlay", id: underlay.id });
    const loose = !locked.includes(key) && !hidden.includes(key) && underlay.strength > 0;
    if (loose && showsPlace(underlay, at)) return underlay;
  }
  return null;
}

/** The part of a picture that laying it changes. */
export function laid({ at, scale, turn }: Placement): Pick<Underlay, "at" | "scale" | "turn"> {
  return { at: [at[0], at[1]], scale, turn };
}
