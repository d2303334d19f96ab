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
  /** Width of a hairline in plan metres at the size it is shown. */
  readonly hair: number;
}

/** Width over height of the picture. */
export const thumbnailShape = 2.1;
const margin = 0.06;

export function thumbnail(project: Project, results: Results): Thumbnail | null {
  const bounds = shownBounds(project, results);
  if (!bounds) return null;
  const box = padded(bounds);
  const contours = (major: boolean) =>
    results.existingContours
      .filter((contour) => contour.major === major)
      .flatMap((contour) => contour.lines.map((line) => flatPath(line)))
      .join("");
  return {
    viewBox: `${round(box.minX)} ${round(-box.maxY)} ${round(box.maxX - box.minX)} ${round(box.maxY - box.minY)}`,
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
function padded({ minX, minY, maxX, maxY }: Bounds): Bounds {
  const width = Math.max(1, maxX - minX, (maxY - minY) * thumbnailShape) * (1 + 2 * margin);
  const height = width / thumbnailShape;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
}

function ringPath(ring: readonly Point[]): string {
  return ring.length < 3 ? "" : `${linePath(ring)}Z`;
}

function linePath(line: readonly Point[]): string {
  return line.length === 0 ? "" : `M${line.map(([x, y]) => `${round(x)} ${round(-y)}`).join("L")}`;
}

function flatPath(line: Float64Array): string {
  const places: string[] = [];
  for (let i = 0; i + 1 < line.length; i += 2)
    places.push(`${round(line[i] ?? 0)} ${round(-(line[i + 1] ?? 0))}`);
  return places.length < 2 ? "" : `M${places.join("L")}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
