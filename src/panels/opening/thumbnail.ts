/** A plan at the size of a stamp: its own contours, lot, building, drive and swale as SVG paths. */
import type { Point, Project } from "../../document";
import { type Bounds, boundsOf } from "../../geometry";
import type { Results } from "../../solve/results";

export interface Thumbnail {
  readonly viewBox: string;
  readonly minor: string;
  readonly major: string;
  readonly lot: string;
  readonly building: string;
  readonly drives: readonly { readonly path: string; readonly width: number }[];
  readonly swales: string;
  /** Width over height. */
  readonly shape: number;
  /** Width of a hairline in plan metres at the size it is shown. */
  readonly hair: number;
  /** Cut and fill by class, shallow first. */
  readonly depth?: readonly DepthArea[];
}

export interface DepthArea {
  /** Name of its colour: "fill0" … "cut3". */
  readonly ink: string;
  readonly path: string;
}

/** Width over height of the picture. */
export const thumbnailShape = 2.1;
const margin = 0.06;

/** `of`: what to show and its width over height; else the whole plan in the usual shape. */
export function thumbnail(
  project: Project,
  results: Results,
  of: { readonly bounds: Bounds | null; readonly shape: number } = {
    bounds: shownBounds(project, results),
    shape: thumbnailShape,
  },
): Thumbnail | null {
  if (!of.bounds) return null;
  const box = padded(of.bounds, of.shape);
  const contours = (major: boolean) =>
    results.existingContours
      .filter((contour) => contour.major === major)
      .flatMap((contour) => contour.lines.map((line) => flatPath(line)))
      .join("");
  return {
    viewBox: `${round(box.minX)} ${round(-box.maxY)} ${round(box.maxX - box.minX)} ${round(box.maxY - box.minY)}`,
    shape: of.shape,
    minor: contours(false),
    major: contours(true),
    lot: ringPath(project.lot.outline),
    building: ringPath(project.building?.outline ?? []),
    drives: project.grading.drives.map(({ line, width }) => ({ path: linePath(line), width })),
    swales: project.grading.swales.map(({ line }) => linePath(line)).join(""),
    hair: (box.maxX - box.minX) / 320,
  };
}

function shownBounds(project: Project, results: Results): Bounds | null {
  const places: Point[] = [...project.lot.outline, ...(project.building?.outline ?? [])];
  for (const { at } of results.survey.points) if (at) places.push([at[0], at[1]]);
  return places.length === 0 ? null : boundsOf(places);
}

/** Grown by a margin and to the picture's shape. */
function padded({ minX, minY, maxX, maxY }: Bounds, shape: number): Bounds {
  const width = Math.max(1, maxX - minX, (maxY - minY) * shape) * (1 + 2 * margin);
  const height = width / shape;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
}

function ringPath(ring: readonly Point[]): string {
  return ring.length < 3 ? "" : `${linePath(ring)}Z`;
}

function linePath(line: readonly Point[]): string {
  return line.length === 0 ? "" : `M${line.map(([x, y]) => `${round(x)} ${round(-y)}`).join("L")}`;
}

/** Flat rings as one path; rings within rings are holes. */
export function ringsPath(rings: readonly ArrayLike<number>[]): string {
  return rings.map((ring) => `${flatPath(ring)}Z`).join("");
}

function flatPath(line: ArrayLike<number>): string {
  const places: string[] = [];
  for (let i = 0; i + 1 < line.length; i += 2)
    places.push(`${round(line[i] ?? 0)} ${round(-(line[i + 1] ?? 0))}`);
  return places.length < 2 ? "" : `M${places.join("L")}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
