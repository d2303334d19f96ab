/**
 * Where the plan lies on the screen: from metres to pixels and back.
 *
 * Units  world metres (x east, y north), screen CSS pixels (x right, y down), angle in radians:
 *        the plan is turned counter-clockwise by it.
 */
import { type Bounds, boundsOf } from "../../geometry";

export type XY = readonly [number, number];

export interface View {
  /** The place in the middle of the screen, m. */
  readonly centre: XY;
  /** Pixels for one metre. */
  readonly scale: number;
  readonly angle: number;
  /** Size of the screen part, px. */
  readonly width: number;
  readonly height: number;
}

/** Room kept free on each side when the view is fitted, px. */
export interface Padding {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** One pixel for twenty metres: a whole valley; and ten pixels for a quarter of an inch. */
export const scaleLimits = { least: 0.05, most: 1600 } as const;
/** What a plan with nothing on it shows: a common small lot. */
export const emptyBounds: Bounds = { minX: -15, minY: -10, maxX: 15, maxY: 10 };

export function toScreen(view: View, [x, y]: XY): [number, number] {
  const dx = x - view.centre[0];
  const dy = y - view.centre[1];
  const c = Math.cos(view.angle) * view.scale;
  const s = Math.sin(view.angle) * view.scale;
  return [view.width / 2 + dx * c - dy * s, view.height / 2 - (dx * s + dy * c)];
}

export function toWorld(view: View, [px, py]: XY): [number, number] {
  const u = (px - view.width / 2) / view.scale;
  const v = (view.height / 2 - py) / view.scale;
  const c = Math.cos(view.angle);
  const s = Math.sin(view.angle);
  return [view.centre[0] + u * c + v * s, view.centre[1] - u * s + v * c];
}

/** Zooms by a factor; the place under the screen point stays under it. */
export function zoomAt(view: View, at: XY, factor: number): View {
  const scale = clampScale(view.scale * factor);
  const [x, y] = toWorld(view, at);
  const zoomed = { ...view, scale };
  const [nx, ny] = toWorld(zoomed, at);
  return { ...zoomed, centre: [view.centre[0] + x - nx, view.centre[1] + y - ny] };
}

/** Moves the plan by screen pixels. */
export function panBy(view: View, dx: number, dy: number): View {
  const centre = toWorld(view, [view.width / 2 - dx, view.height / 2 - dy]);
  return { ...view, centre };
}

/** Turns the plan by an angle, counter-clockwise; the place under the screen point stays under it. */
export function turnAt(view: View, at: XY, by: number): View {
  const [x, y] = toWorld(view, at);
  const sum = view.angle + by;
  const turned = { ...view, angle: Math.atan2(Math.sin(sum), Math.cos(sum)) };
  const [nx, ny] = toWorld(turned, at);
  return { ...turned, centre: [view.centre[0] + x - nx, view.centre[1] + y - ny] };
}

/** The same place in the middle of a screen part of another size. */
export function resized(view: View, width: number, height: number): View {
  return { ...view, width, height };
}

/** Shows all of the bounds, as large as the padding leaves room for. */
export function fitted(view: View, bounds: Bounds, padding: Padding): View {
  const box = usable(bounds);
  const [w, h] = turnedSize(box, view.angle);
  const roomX = Math.max(40, view.width - padding.left - padding.right);
  const roomY = Math.max(40, view.height - padding.top - padding.bottom);
  const scale = clampScale(Math.min(roomX / w, roomY / h));
  const middle: View = { ...view, scale, centre: [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] };
  return panBy(middle, (padding.left - padding.right) / 2, (padding.top - padding.bottom) / 2);
}

/** Makes the room to keep free of a width and a height that are to be shown, in any one unit. */
export type RoomFor = (span: XY) => Padding;

/** As `fitted`, for places: a plan that is turned is fitted as it lies. No place at all shows an empty plan. */
export function fittedTo(view: View, places: readonly XY[], room: RoomFor): View {
  const [c, s] = [Math.cos(view.angle), Math.sin(view.angle)];
  const box = usable(boundsOf(places.map(([x, y]): [number, number] => [x * c - y * s, x * s + y * c])));
  const padding = room([box.maxX - box.minX, box.maxY - box.minY]);
  const upright = fitted({ ...view, angle: 0 }, box, padding);
  const [u, v] = upright.centre;
  return { ...upright, angle: view.angle, centre: [u * c + v * s, v * c - u * s] };
}

/** Keeps the plan findable: the middle of the screen never leaves the bounds by more than half a screen. */
export function held(view: View, bounds: Bounds): View {
  const box = usable(bounds);
  const reach = Math.hypot(view.width, view.height) / 2 / view.scale;
  const x = Math.min(box.maxX + reach, Math.max(box.minX - reach, view.centre[0]));
  const y = Math.min(box.maxY + reach, Math.max(box.minY - reach, view.centre[1]));
  return x === view.centre[0] && y === view.centre[1] ? view : { ...view, centre: [x, y] };
}

/** World bounds of what the screen shows, m. */
export function seenBounds(view: View): Bounds {
  const corners = [
    toWorld(view, [0, 0]),
    toWorld(view, [view.width, 0]),
    toWorld(view, [view.width, view.height]),
    toWorld(view, [0, view.height]),
  ];
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

/** Is the place on the screen, at least a margin of pixels from its rim? */
export function isSeen(view: View, at: XY, margin: number): boolean {
  const [x, y] = toScreen(view, at);
  return x >= margin && y >= margin && x <= view.width - margin && y <= view.height - margin;
}

function clampScale(scale: number): number {
  return Math.min(scaleLimits.most, Math.max(scaleLimits.least, scale));
}

/** Bounds with some size: an empty plan, or a single place, still needs something to show. */
function usable(bounds: Bounds): Bounds {
  if (!(bounds.minX <= bounds.maxX && bounds.minY <= bounds.maxY)) return emptyBounds;
  const growX = Math.max(0, 4 - (bounds.maxX - bounds.minX)) / 2;
  const growY = Math.max(0, 4 - (bounds.maxY - bounds.minY)) / 2;
  return {
    minX: bounds.minX - growX,
    maxX: bounds.maxX + growX,
    minY: bounds.minY - growY,
    maxY: bounds.maxY + growY,
  };
}

function turnedSize(box: Bounds, angle: number): [number, number] {
  const c = Math.abs(Math.cos(angle));
  const s = Math.abs(Math.sin(angle));
  const w = box.maxX - box.minX;
  const h = box.maxY - box.minY;
  return [w * c + h * s, w * s + h * c];
}
