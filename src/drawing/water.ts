/** Water on the finished ground: which way it runs, where it stands, and the walls it runs towards. */
import { soundLot } from "../document/lot";
import type { Project } from "../document/schema";
import { centroid, containsPoint, type Point } from "../geometry";
import type { Arrow, Pond, Results } from "../solve/results";
import { along, besidePoint } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel } from "./context";
import { drawingBounds } from "./extent";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { wallsOf } from "./walls";
import { lengthText } from "./words";
import { isClearOfWorks } from "./works";

/** Length of an arrow on ground less steep than this, mm; on steeper ground the last. */
const arrowLengths = [
  { under: 0.02, length: 3.2 },
  { under: 0.08, length: 4.2 },
] as const;
const longestArrow = 5.4;
/** Size of the mark for ground so flat that shots can't tell which way it falls, mm. */
const flatMark = 1.4;
/** Least distance between two arrows, mm. */
const arrowPitch = 12;
/** A wet wall's line lies this far outside the wall, mm. */
const wetOffset = 1.3;
/** Shares of a wall below this are a splash at its end, not a wall that water runs towards. */
const leastShare = 0.02;

/** Distance between neighbours of the arrows' lattice, m; 0 for fewer than two in a row. */
function latticeStep(arrows: readonly Arrow[]): number {
  const gaps = arrows.flatMap((arrow, i) => {
    const next = arrows[i + 1];
    return next && next.y === arrow.y && next.x > arrow.x ? [next.x - arrow.x] : [];
  });
  return gaps.length > 0 ? Math.min(...gaps) : 0;
}

/** Every so many-th arrow of the lattice, so that they lie about `arrowPitch` apart on paper. */
function thinned(arrows: readonly Arrow[], context: DrawContext): readonly Arrow[] {
  const step = latticeStep(arrows);
  const [first] = arrows;
  if (!first || step === 0) return arrows;
  const every = Math.max(1, Math.ceil((arrowPitch * context.metresPerMm) / step));
  const kept = (offset: number) => Math.round(offset / step) % every === 0;
  return arrows.filter((arrow) => kept(arrow.x - first.x) && kept(arrow.y - first.y));
}

/** Arrows on free paper: none crosses a text or a line. Longer where the ground is steeper, rings where it is flat. */
function arrowMarks(arrows: readonly Arrow[], context: DrawContext): DrawingMark[] {
  return thinned(arrows, context).flatMap((arrow): DrawingMark[] => {
    const isFlat = arrow.dx === 0 && arrow.dy === 0;
    const angle = isFlat ? 0 : Math.atan2(arrow.dy, arrow.dx);
    const size = isFlat ? flatMark : arrowSize(arrow.slope);
    const [x, y] = [arrow.x / context.metresPerMm, arrow.y / context.metresPerMm];
    const box = { x, y, width: size, height: 1.8, angle };
    if (!context.labels.fits(box)) return [];
    context.labels.take("water", box);
    const at = [arrow.x, arrow.y] as const;
    return [{ kind: "symbol", at, symbol: isFlat ? "ring" : "arrow", size, angle, style: "arrow" }];
  });
}

function arrowSize(slope: number): number {
  return arrowLengths.find(({ under }) => slope < under)?.length ?? longestArrow;
}

/** How far the middle of the drawing lies to the right of a place as the plan is turned, m. */
function side(at: Point, project: Project, results: Results, { turn }: DrawContext): number {
  const box = drawingBounds(project, results);
  if (!box) return 0;
  const [dx, dy] = [(box.minX + box.maxX) / 2 - at[0], (box.minY + box.maxY) / 2 - at[1]];
  return dx * Math.cos(turn) - dy * Math.sin(turn);
}

/** A pond's text where it has no free room by it: at the end of a leader, on paper at last wherever it may be. */
function pondAside(
  pond: Pond,
  text: string,
  clear: (texts: LabelTexts) => boolean,
  last: readonly LabelTexts[],
  context: DrawContext,
): readonly DrawingMark[] {
  const led = ledPlaces(pond.at, Math.PI / 2, { text, style: "pond-label" }, context);
  const free = led.filter(({ texts }) => clear(texts));
  const far = placeLed(context, "ponds", pond.at, free, { style: "note-leader", over: "over-thin-lines" });
  // On the screen one comes nearer, and the panel tells it; on paper nobody can.
  return far.length > 0 || context.medium === "screen" ? far : placeLabel(context, "ponds", last, true);
}

/** "holds 3″ of water" beside the deepest place. */
function pondMarks(pond: Pond, project: Project, results: Results, context: DrawContext): DrawingMark[] {
  const text = `holds ${lengthText(pond.depth, project.display)} of water`;
  const [ring] = pond.rings;
  const corners = ring
    ? Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0])
    : [];
  const middles: readonly Point[] = corners.length >= 3 ? [centroid(corners), pond.at] : [pond.at];
  const places = middles.flatMap((middle) =>
    [0, 3.4, -3.4, 6.8, -6.8].map((up) => along(middle, text, "pond-label", -context.turn, up)),
  );
  // Towards the middle of what is drawn: beyond its rim tools or the sheet's edge may lie.
  const inward = side(pond.at, project, results, context) > 0 ? "start" : "end";
  const round = [2, 8, 16, 24, 34].flatMap((off) => besidePoint(pond.at, text, "pond-label", off));
  const beside = [...round].sort((a, b) => Number(b[0]?.anchor === inward) - Number(a[0]?.anchor === inward));
  // Over a drive or the floor it would say that the water stands there.
  const clear = (texts: LabelTexts) => isClearOfWorks(texts, project, context);
  const all = [...places, ...beside];
  const apart = placeLabel(context, "ponds", all.filter(clear), "over-thin-lines");
  const label = apart.length > 0 ? apart : pondAside(pond, text, clear, all, context);
  return [{ kind: "area", rings: pond.rings, style: "pond" }, ...label];
}

/** Ponds with their depth, and a line along each wall that water runs towards. */
export function drawPonds(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("ponds");
  reserveLines(project, results, context);
  const walls = project.building ? wallsOf(project.building.outline) : [];
  const wet = results.water.walls.flatMap((water): DrawingMark[] => {
    const wall = walls.find((one) => one.index === water.wall);
    if (!wall || water.runsTowards < leastShare) return [];
    const [ox, oy] = wall.outward.map((part) => part * wetOffset * context.metresPerMm) as [number, number];
    const points = [wall.from[0] + ox, wall.from[1] + oy, wall.to[0] + ox, wall.to[1] + oy];
    return [{ kind: "line", points, style: "wall-wet" }];
  });
  const ponds = results.water.ponds.flatMap((pond) => pondMarks(pond, project, results, context));
  return { id: "water", marks: [...ponds, ...wet] };
}

/**
 * Downhill arrows on the lot, on what paper is left: draw them after every label. On paper only where the ground
 * was measured: which way water runs over a guess is nothing to build by.
 */
export function drawArrows(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("water");
  reserveLines(project, results, context);
  const { outline } = soundLot(project.lot);
  const flat = results.ground?.hull ?? [];
  const hull = Array.from(
    { length: flat.length / 2 },
    (_, i): Point => [flat[2 * i] ?? 0, flat[2 * i + 1] ?? 0],
  );
  const shown = results.arrows.filter(({ x, y }) => {
    const onLot = outline.length < 3 || containsPoint(outline, x, y);
    return onLot && (context.medium === "screen" || containsPoint(hull, x, y));
  });
  return { id: "water", marks: arrowMarks(shown, context) };
}

/** Ground that drains to a run, m2, from which it is drawn heavier. */
const heavier = [200, 800] as const;

/** Ways along which water gathers, heavier where more ground drains to them. */
export function drawGathered(_project: Project, { water }: Results): MarkLayer {
  const marks = [...water.gathered].reverse().map(({ line, area }): DrawingMark => {
    const style = area >= heavier[1] ? "run-most" : area >= heavier[0] ? "run-more" : "run-least";
    return { kind: "line", points: line, style };
  });
  return { id: "runs", marks: [...bareEarthMarks(water.bareEarth), ...marks] };
}

/** Steep bare slopes, and the silt barrier along the low side. */
function bareEarthMarks(bare: Results["water"]["bareEarth"]): DrawingMark[] {
  if (!bare) return [];
  return [
    ...bare.slopes.map(({ rings }): DrawingMark => ({ kind: "area", rings, style: "bare-slope" })),
    ...bare.barrier.map((points): DrawingMark => ({ kind: "line", points, style: "silt-barrier" })),
  ];
}
