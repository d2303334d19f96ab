/** What of a project goes out to other programs: points, breaklines, contours and the triangles between the shots. Metres. */
import { isClosedBreakline, type Project } from "../../document";
import type { Results } from "../../solve/results";
import { liesOnGround } from "../../survey";
import type { Ground } from "../../terrain";

export interface OutgoingPoint {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** Null: no height is known. */
  readonly z: number | null;
}

export interface OutgoingLine {
  readonly name: string;
  readonly kind: string;
  readonly closed: boolean;
  readonly points: readonly (readonly [number, number, number | null])[];
}

export interface OutgoingContour {
  readonly height: number;
  readonly major: boolean;
  /** Flat x, y. */
  readonly lines: readonly Float64Array[];
}

export interface OutgoingSurface {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly triangles: Uint32Array;
}

export interface Outgoing {
  readonly name: string;
  /** Points of the ground. */
  readonly points: readonly OutgoingPoint[];
  /** Known heights that aren't ground: a nail, a slab. */
  readonly marks: readonly OutgoingPoint[];
  readonly lines: readonly OutgoingLine[];
  readonly contours: readonly OutgoingContour[];
  /** Guessed triangles are left out. */
  readonly surface: OutgoingSurface | null;
}

export function outgoing(
  project: Project,
  results: Pick<Results, "survey" | "ground" | "existingContours">,
): Outgoing {
  const rows = new Map(project.survey.shots.map((shot) => [shot.id, shot]));
  return {
    name: project.name,
    points: results.survey.points.flatMap(({ name, shot, at, height }) => {
      const row = rows.get(shot);
      if (at === null || row === undefined || !liesOnGround(row)) return [];
      return [
        { name: name || shot, x: tidy(at[0]), y: tidy(at[1]), z: height === null ? null : tidy(height) },
      ];
    }),
    marks: project.survey.marks.flatMap(({ name, id, at, height }) =>
      at === null ? [] : [{ name: name || id, x: tidy(at[0]), y: tidy(at[1]), z: tidy(height.m) }],
    ),
    lines: project.survey.breaklines.map(({ name, kind, points }) => ({
      name: name || kind,
      kind,
      closed: isClosedBreakline(kind),
      points,
    })),
    contours: results.existingContours.map(({ height, major, lines }) => ({ height, major, lines })),
    surface: results.ground && measuredSurface(results.ground),
  };
}

/** To a nanometre: takes off the rounding of binary sums, far below anything that was measured. */
function tidy(metres: number): number {
  return Number(metres.toFixed(9)) + 0;
}

/** The triangles that are no guess, over their own corners only. */
export function measuredSurface({ tin, guessed }: Pick<Ground, "tin" | "guessed">): OutgoingSurface {
  const renumbered = new Map<number, number>();
  const triangles: number[] = [];
  for (let t = 0; t < guessed.length; t++) {
    if (guessed[t]) continue;
    for (let k = 0; k < 3; k++) {
      const corner = tin.triangles[3 * t + k] as number;
      const number = renumbered.get(corner) ?? renumbered.size;
      renumbered.set(corner, number);
      triangles.push(number);
    }
  }
  const kept = [...renumbered.keys()];
  const of = (values: Float64Array) => Float64Array.from(kept, (corner) => tidy(values[corner] as number));
  return { x: of(tin.x), y: of(tin.y), z: of(tin.z), triangles: Uint32Array.from(triangles) };
}

/** A number in the fewest digits that read back as it is. */
export function plain(value: number): string {
  return String(value + 0);
}
