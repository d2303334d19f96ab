/**
 * Dimensions of what is selected, to be clicked and typed over.
 *
 * Units  metres.
 * Rules  a piece keeps its beginning and its direction, its end moves; walls keep the directions of their neighbours,
 *        areas of right angles keep these. A drive that ends at a door keeps that end.
 */
import {
  buildingEdits,
  type Edit,
  gradingEdits,
  isArea,
  isLocked,
  kindWord,
  type Point,
  type Project,
  siteEdits,
  windowEdits,
} from "../../document";
import { chooseTies, tieWind } from "../../drawing/ties";
import { distance, isRightAngled } from "../../geometry";
import type { Selected } from "../../store/state";
import { shortWind } from "../../units";
import { setLine } from "../tools/select/setLine";
import { type LineRef, linePoints, type OpeningRef } from "./handles";
import { cornerName, findOpening, wallEnds, wallName } from "./places";
import { pullWall, wallOutward } from "./shape";

export interface LiveDimension {
  readonly key: string;
  /** What is measured: "wall A–B". */
  readonly label: string;
  readonly m: number;
  /** Between these; the figure stands in the middle. */
  readonly ends: readonly [Point, Point];
  /** The figure stands to the left of the way between the ends, to the right, or on it. */
  readonly side: "left" | "right" | "on";
  /** It goes from a thing to another one: to which, in words that stand after the figure, the longest first. */
  readonly to?: readonly string[];
  change(project: Project, m: number): Edit;
}

/** Dimensions of one selected thing; several have none, and what is locked has none. */
export function liveDimensions(project: Project, selection: readonly Selected[]): LiveDimension[] {
  const [only] = selection;
  if (!only || selection.length > 1 || isLocked(project, only)) return [];
  return dimensionsOf(project, only).map((dimension) => ({
    ...dimension,
    change: (now, m) =>
      m > 0 ? dimension.change(now, m) : { ok: false, why: "A length must be more than nothing." },
  }));
}

function dimensionsOf(project: Project, only: Selected): LiveDimension[] {
  switch (only.kind) {
    case "building":
      return [...wallDimensions(project), ...tieDimensions(project)];
    case "door":
    case "window":
      return openingDimensions(project, { kind: only.kind, id: only.id });
    case "lot":
      return pieceDimensions(project, { kind: "lot" });
    case "drive":
      return [
        ...pieceDimensions(project, { kind: "drive", id: only.id }),
        ...widthDimension(project, "drive", only.id),
      ];
    case "swale":
    case "berm":
      return [
        ...pieceDimensions(project, { kind: only.kind, id: only.id }),
        ...widthDimension(project, only.kind, only.id),
      ];
    case "breakline":
    case "pad":
    case "retaining-wall":
    case "section":
      return pieceDimensions(project, { kind: only.kind, id: only.id });
    case "feature":
      return featureDimensions(project, only.id);
    default:
      return [];
  }
}

function wallDimensions(project: Project): LiveDimension[] {
  const outline = project.building?.outline ?? [];
  return outline.flatMap((_, wall): LiveDimension[] => {
    const ends = wallEnds(outline, wall);
    const outward = wallOutward(outline, wall);
    if (!ends || !outward) return [];
    const [a, b] = ends;
    const label = `wall ${wallName(outline, wall)}`;
    const left = outward[0] * (a[1] - b[1]) + outward[1] * (b[0] - a[0]) > 0;
    // Inside: outside stand the plan's own dimensions.
    return [
      {
        key: label,
        label,
        m: distance(a, b),
        ends,
        side: left ? "right" : "left",
        change: setWall(wall, label),
      },
    ];
  });
}

function setWall(wall: number, label: string): LiveDimension["change"] {
  return (project, m) => {
    const outline = project.building?.outline ?? [];
    const ends = wallEnds(outline, wall);
    const next = (wall + 1) % outline.length;
    const outward = wallOutward(outline, next);
    if (!ends || !outward) return { ok: false, why: "That wall is gone." };
    const [a, b] = ends;
    const now = distance(a, b);
    const lean = ((b[0] - a[0]) * outward[0] + (b[1] - a[1]) * outward[1]) / now;
    const pulled = pullWall(outline, next, (m - now) * lean);
    if (!pulled)
      return {
        ok: false,
        why: "With that length another wall would shrink to nothing. Type one that leaves it room.",
      };
    return buildingEdits.setOutline.run(project, { outline: pulled, what: `${label} by its length` });
  };
}

/** From the building to the lot lines, as the plan shows them. */
function tieDimensions(project: Project): LiveDimension[] {
  const outline = project.building?.outline ?? [];
  if (project.lot.outline.length < 3) return [];
  return chooseTies(outline, project.lot.outline).flatMap(([tie]): LiveDimension[] => {
    if (!tie) return [];
    const [corner, foot] = [tie.corner, tie.foot].map(([x, y]): Point => [x, y]) as [Point, Point];
    const name = cornerName(outline.findIndex(([x, y]) => x === corner[0] && y === corner[1]));
    const wind = tieWind(tie, project.lot);
    const label = `corner ${name} to the ${wind} lot line`;
    const along: Point = [(foot[0] - corner[0]) / tie.length, (foot[1] - corner[1]) / tie.length];
    return [
      {
        key: `${label} ${tie.lotSide}`,
        label,
        m: tie.length,
        ends: [corner, foot],
        side: "on",
        to: [`to ${wind} line`, `to ${shortWind(wind)} line`],
        change(now, m) {
          const by = tie.length - m;
          const edit = buildingEdits.moveBuilding.run(now, { dx: along[0] * by, dy: along[1] * by });
          return edit.ok ? { ...edit, label: "move building by its distance to the lot line" } : edit;
        },
      },
    ];
  });
}

function openingDimensions(project: Project, of: OpeningRef): LiveDimension[] {
  const opening = findOpening(project, of);
  const outline = project.building?.outline ?? [];
  const ends = opening && wallEnds(outline, opening.wall);
  if (!opening || !ends) return [];
  const length = distance(ends[0], ends[1]);
  const at = (s: number): Point => [
    ends[0][0] + ((ends[1][0] - ends[0][0]) * s) / length,
    ends[0][1] + ((ends[1][1] - ends[0][1]) * s) / length,
  ];
  const { offset, width, wall } = opening;
  const change = (patch: { offset?: number; width?: number }) => (now: Project) =>
    of.kind === "door"
      ? buildingEdits.changeDoor.run(now, { id: of.id, patch })
      : windowEdits.changeWindow.run(now, { id: of.id, patch });
  const rest = length - offset - width;
  const first = cornerName(wall);
  const last = cornerName((wall + 1) % outline.length);
  const outward = wallOutward(outline, wall) ?? [0, 1];
  const left = outward[0] * (ends[0][1] - ends[1][1]) + outward[1] * (ends[1][0] - ends[0][0]) > 0;
  const inner = left ? "right" : "left";
  const rows: readonly (readonly [string, number, Point, Point, (m: number) => (now: Project) => Edit])[] = [
    [`from corner ${first}`, offset, at(0), at(offset), (m) => change({ offset: m })],
    [`width of the ${opening.name}`, width, at(offset), at(offset + width), (m) => change({ width: m })],
    [
      `from corner ${last}`,
      rest,
      at(offset + width),
      at(length),
      (m) =>
        m > length - width
          ? () => ({ ok: false, why: "The wall isn't that long." })
          : change({ offset: length - width - m }),
    ],
  ];
  return rows
    .filter(([, m]) => m > 1e-6)
    .map(([label, m, a, b, put]) => ({
      key: label,
      label,
      m,
      ends: [a, b],
      side: inner,
      change: (now, to) => put(to)(now),
    }));
}

function pieceDimensions(project: Project, line: LineRef): LiveDimension[] {
  const { points, closed } = linePoints(project, line);
  return points.flatMap((a, i): LiveDimension[] => {
    const b = points[i + 1] ?? (closed && points.length > 2 ? points[0] : undefined);
    if (!b) return [];
    const label = line.kind === "lot" ? `lot line ${i + 1}` : `piece ${i + 1} of the ${kindWord(line.kind)}`;
    return [
      { key: label, label, m: distance(a, b), ends: [a, b], side: "left", change: setPiece(line, i, label) },
    ];
  });
}

function setPiece(line: LineRef, piece: number, label: string): LiveDimension["change"] {
  return (project, m) => {
    const { points, closed } = linePoints(project, line);
    const end = (piece + 1) % points.length;
    const [a, b] = [points[piece], points[end]];
    const length = a && b ? distance(a, b) : 0;
    if (!a || !b || length === 0) return { ok: false, why: "That piece is gone." };
    const by: Point = [((b[0] - a[0]) * (m - length)) / length, ((b[1] - a[1]) * (m - length)) / length];
    const atDoor = line.kind === "drive" && project.grading.drives.find(({ id }) => id === line.id)?.door;
    const square = closed && line.kind !== "lot" && isRightAngled(points);
    const along = square ? (end + 1) % points.length : end;
    const moves = (i: number) => (closed ? i === end || i === along : atDoor ? i <= piece : i > piece);
    const sign = atDoor ? -1 : 1;
    const next = points.map(([x, y], i): Point => (moves(i) ? [x + sign * by[0], y + sign * by[1]] : [x, y]));
    return setLine.run(project, { line, points: next, what: `${label} by its length` });
  };
}

interface Wide {
  readonly line: readonly Point[];
  readonly label: string;
  readonly width: number;
  readonly change: (now: Project, m: number) => Edit;
}

/** What has a width of its own, typed over on the plan. */
function wideThing(project: Project, kind: "drive" | "swale" | "berm", id: string): Wide | null {
  const { drives, swales, berms } = project.grading;
  if (kind === "drive") {
    const drive = drives.find((each) => each.id === id);
    const change: Wide["change"] = (now, width) =>
      siteEdits.changeDrive.run(now, { id, patch: { width }, what: "drive's width" });
    return drive
      ? { line: drive.line, label: `width of the ${drive.name}`, width: drive.width, change }
      : null;
  }
  if (kind === "swale") {
    const swale = swales.find((each) => each.id === id);
    const change: Wide["change"] = (now, bottomWidth) =>
      siteEdits.changeSwale.run(now, { id, patch: { bottomWidth }, what: "swale's bottom width" });
    const label = `bottom width of the ${swale?.name}`;
    return swale ? { line: swale.line, label, width: swale.bottomWidth, change } : null;
  }
  const berm = berms.find((each) => each.id === id);
  const change: Wide["change"] = (now, topWidth) =>
    gradingEdits.changeBerm.run(now, { id, patch: { topWidth } });
  return berm
    ? { line: berm.line, label: `top width of the ${berm.name}`, width: berm.topWidth, change }
    : null;
}

/** Across the longest piece of the line. */
function widthDimension(project: Project, kind: "drive" | "swale" | "berm", id: string): LiveDimension[] {
  const wide = wideThing(project, kind, id);
  if (!wide || wide.width <= 0 || wide.line.length < 2) return [];
  const { line, label, width, change } = wide;
  const pieces = line.slice(1).map((b, i) => [line[i] as Point, b] as const);
  const [a, b] = pieces.reduce((best, piece) =>
    distance(piece[0], piece[1]) > distance(best[0], best[1]) ? piece : best,
  );
  const length = distance(a, b);
  // Off the middle, where the piece's own length stands.
  const at: Point = [a[0] + (b[0] - a[0]) * 0.3, a[1] + (b[1] - a[1]) * 0.3];
  const half = width / 2 / length;
  const [nx, ny] = [-(b[1] - a[1]) * half, (b[0] - a[0]) * half];
  return [
    {
      key: label,
      label,
      m: width,
      ends: [
        [at[0] - nx, at[1] - ny],
        [at[0] + nx, at[1] + ny],
      ],
      side: "on",
      change,
    },
  ];
}

function featureDimensions(project: Project, id: string): LiveDimension[] {
  const feature = project.lot.features.find((each) => each.id === id);
  if (!feature) return [];
  const [centre, ...others] = feature.points;
  if (!centre || others.length > 0 || isArea(feature))
    return pieceDimensions(project, { kind: "feature", id });
  if (feature.keepClear <= 0) return [];
  return [
    {
      key: "keep clear",
      label: "keep clear by",
      m: feature.keepClear,
      ends: [centre, [centre[0] + feature.keepClear, centre[1]]],
      side: "left",
      change: (now, m) => siteEdits.changeFeature.run(now, { id, patch: { keepClear: m } }),
    },
  ];
}
