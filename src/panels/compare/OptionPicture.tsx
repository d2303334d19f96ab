import { useMemo } from "react";
import type { Project } from "../../document";
import { drawDepth } from "../../drawing";
import { type Bounds, boundsOf } from "../../geometry";
import type { Results } from "../../solve/results";
import { Stamp } from "../opening/Stamp";
import { type DepthArea, ringsPath, thumbnail } from "../opening/thumbnail";

/** Width over height of the pictures. */
const shape = 1.4;

interface OptionPictureProps {
  readonly project: Project;
  readonly results: Results;
  /** What all pictures show, so that they can be compared. */
  readonly bounds: Bounds | null;
}

/** An option's plan, drawn small with its cut and fill. */
export function OptionPicture({ project, results, bounds }: OptionPictureProps) {
  const picture = useMemo(() => {
    const plan = thumbnail(project, results, { bounds, shape });
    return plan && { ...plan, depth: depthAreas(project, results) };
  }, [project, results, bounds]);
  return <Stamp picture={picture} />;
}

/** The building and all that is graded about it, over several options. */
export function gradedBounds(
  options: readonly { readonly project: Project; readonly results: Results }[],
): Bounds | null {
  const places = options.flatMap(({ project, results }) => [
    ...(project.building?.outline ?? []),
    ...results.daylight.flatMap(pairs),
    ...project.grading.drives.flatMap(({ line }) => line),
  ]);
  return places.length === 0 ? null : boundsOf(places);
}

function pairs(flat: Float64Array): [number, number][] {
  const places: [number, number][] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) places.push([flat[i] ?? 0, flat[i + 1] ?? 0]);
  return places;
}

function depthAreas(project: Project, results: Results): DepthArea[] {
  return drawDepth(project, results).marks.flatMap((mark) =>
    mark.kind === "area" && /^(cut|fill)\d$/.test(mark.style)
      ? [{ ink: mark.style, path: ringsPath(mark.rings) }]
      : [],
  );
}
