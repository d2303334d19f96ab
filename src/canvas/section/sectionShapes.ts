/**
 * The section as shapes: ground as it is and finished, what is cut and filled between them, the building.
 *
 * Units  metres inside: distance along the section and height; pixels out, y down.
 */
import type { Foundation } from "../../document";
import { bottomBelowTop } from "../../document/foundationMeasures";
import { remember } from "../../solve/memo";
import { oncePer } from "../../solve/once-per";
import type { SectionLine } from "../../solve/results";
import type { SectionEarth } from "../../solve/section-earth";

export interface SectionRange {
  readonly length: number;
  readonly low: number;
  readonly high: number;
}

export interface SectionFit {
  readonly range: SectionRange;
  /** Pixels for a metre along, and how many times heights are drawn. */
  readonly scale: number;
  readonly exaggeration: number;
  readonly left: number;
  readonly top: number;
  /** The room it was fitted to. */
  readonly width: number;
  readonly height: number;
}

/** Heights are drawn by one of these factors, so that it can be said. */
const factors = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20] as const;

export interface SectionBuilding {
  readonly from: number;
  readonly to: number;
  readonly floor: number;
  readonly topOfWall: number;
  readonly foundation: Foundation;
  /** Bottom of the deepest hole, where it stands on posts. */
  readonly holes?: number | null;
}

/** Bottom of the footing, the edge or the holes. */
export function footingBottom({ topOfWall, foundation, holes }: SectionBuilding): number {
  return holes ?? topOfWall - (bottomBelowTop(foundation) ?? foundation.posts.holeDepth);
}

/** Lengths and heights that must be seen. */
export function sectionRange(section: SectionLine, building: SectionBuilding | null): SectionRange {
  let [low, high] = [Infinity, -Infinity];
  const see = (z: number) => {
    if (!Number.isFinite(z)) return;
    if (z < low) low = z;
    if (z > high) high = z;
  };
  for (let i = 1; i < section.existing.length; i += 2) {
    see(section.existing[i] as number);
    see(section.finished[i] as number);
  }
  if (building) for (const z of [building.floor, building.topOfWall, footingBottom(building)]) see(z);
  return { length: section.existing[section.existing.length - 2] ?? 1, low, high };
}

export interface Room {
  readonly width: number;
  readonly height: number;
  /** Kept free at the sides, above for the title, and below (where it isn't said: as at the sides). */
  readonly padding: number;
  readonly above: number;
  readonly below?: number;
}

/** The largest round exaggeration, up to `most`, that still shows everything; `keep` stays while it does. */
export function fitSection(range: SectionRange, room: Room, keep?: SectionFit, most = Infinity): SectionFit {
  const width = Math.max(1, room.width - 2 * room.padding);
  const inner = Math.max(1, room.height - (room.below ?? room.padding) - room.above);
  const rise = Math.max(0.1, range.high - range.low);
  // A long way down a steep hill is drawn smaller rather than flattened.
  const scale = Math.min(width / range.length, inner / rise);
  const isRoom = (factor: number) => factor <= most && factor * rise * scale <= inner + 1e-6;
  const exaggeration = [...factors].reverse().find(isRoom) ?? 1;
  const left = room.padding + (width - range.length * scale) / 2;
  const { above: top, height } = room;
  const fit = centred({ range, scale, exaggeration, left, top, width: room.width, height }, inner);
  if (keep?.width !== room.width || keep.height !== room.height || keep.exaggeration > most) return fit;
  const fits = sectionY(keep, range.high) >= room.above / 2 && sectionY(keep, range.low) <= room.height;
  return fits ? keep : fit;
}

/** Room that is left over lies above and below alike. */
function centred(fit: SectionFit, inner: number): SectionFit {
  const used = (fit.range.high - fit.range.low) * fit.scale * fit.exaggeration;
  return { ...fit, top: fit.top + Math.max(0, inner - used) / 2 };
}

export function sectionX(fit: SectionFit, distance: number): number {
  return fit.left + distance * fit.scale;
}

export function sectionY(fit: SectionFit, z: number): number {
  return fit.top + (fit.range.high - z) * fit.scale * fit.exaggeration;
}

export interface SectionPaths {
  readonly existing: string;
  readonly guessed: string;
  /** Outside the building; inside it the floor stands. */
  readonly finished: string;
  readonly earth: string;
  /** The ground once the topsoil is off, where anything is done. */
  readonly stripped: string;
  readonly cut: string;
  readonly fill: string;
}

/** Paths of the ground lines and of what lies between them. */
export function sectionPaths(
  section: SectionLine,
  fit: SectionFit,
  building: SectionBuilding | null,
  done: SectionEarth,
): SectionPaths {
  const { existing, finished } = section;
  const ground = groundShapes(existing, section.guessed, fit);
  const at = (i: number) => existing[2 * i] as number;
  const outside = (i: number) => building === null || at(i) <= building.from || at(i) >= building.to;
  const placeAt = (z: number, i: number) => `${ground.xs[i]} ${sectionY(fit, z).toFixed(1)}`;
  const earth = Array.from(done.earth, placeAt);
  return {
    existing: ground.existing,
    guessed: ground.guessed,
    earth: ground.earth,
    finished: runsOf(ground.xs.length, outside, (i) => placeAt(finished[2 * i + 1] as number, i)),
    stripped: runsOf(
      ground.xs.length,
      (i) => done.stripped[i] !== existing[2 * i + 1],
      (i) => placeAt(done.stripped[i] as number, i),
    ),
    ...between(existing, done.earth, { ground: ground.places, earth }, fit),
  };
}

/** The ground as it is, which a floor under the hand leaves alone: its places as they stand in a path, and its lines. */
const groundShapes = remember((existing: Float64Array, guessed: Uint8Array, fit: SectionFit) => {
  const count = existing.length / 2;
  const last = count - 1;
  const xs = Array.from({ length: count }, (_, i) => sectionX(fit, existing[2 * i] as number).toFixed(1));
  const places = xs.map((x, i) => `${x} ${sectionY(fit, existing[2 * i + 1] as number).toFixed(1)}`);
  const measured = (i: number) => guessed[i] === 0;
  const line = (keep: (i: number) => boolean) => runsOf(count, keep, (i) => places[i] as string);
  return {
    xs,
    places,
    existing: line((i) => measured(i) || measured(Math.min(last, i + 1))),
    guessed: line((i) => !measured(i) || !measured(Math.min(last, i + 1))),
    earth: `${line(() => true)}L${xs[last]} ${fit.height}L${xs[0]} ${fit.height}Z`,
  };
});

/** The samples that are kept, as runs of a path. */
function runsOf(count: number, keep: (i: number) => boolean, place: (i: number) => string): string {
  let path = "";
  let open = false;
  for (let i = 0; i < count; i++) {
    const kept = keep(i);
    if (kept) path += `${open ? "L" : "M"}${place(i)}`;
    open = kept;
  }
  return path;
}

/** The samples of the two lines as they stand in a path. */
interface Places {
  readonly ground: readonly string[];
  readonly earth: readonly string[];
}

/** Cut and fill as closed strips between the lines, each as long as it goes, parted exactly where the lines cross. */
function between(
  existing: Float64Array,
  earth: Float64Array,
  places: Places,
  fit: SectionFit,
): { cut: string; fill: string } {
  const strips = { cut: "", fill: "" };
  let open: { readonly side: "cut" | "fill"; readonly from: number; readonly start: string } | null = null;
  const close = (to: number, end = "") => {
    if (open) strips[open.side] += stripPath(places, open, to, end);
    open = null;
  };
  const goOn = (side: "cut" | "fill", from: number, start = "") => {
    if (open?.side === side) return;
    close(from);
    open = { side, from, start };
  };
  const last = existing.length / 2 - 1;
  for (let i = 0; i < last; i++) {
    const a = (earth[i] as number) - (existing[2 * i + 1] as number);
    const b = (earth[i + 1] as number) - (existing[2 * i + 3] as number);
    if (Math.abs(a) < 1e-9 && Math.abs(b) < 1e-9) close(i);
    else if (a >= 0 === b >= 0 || a === 0 || b === 0) goOn(a + b > 0 ? "fill" : "cut", i);
    else {
      const cross = crossing(existing, i, a / (a - b), fit);
      goOn(a > 0 ? "fill" : "cut", i);
      close(i, cross);
      goOn(b > 0 ? "fill" : "cut", i + 1, cross);
    }
  }
  close(last);
  return strips;
}

/** Where the lines cross, at share `t` between sample i and the next. */
function crossing(existing: Float64Array, i: number, t: number, fit: SectionFit): string {
  const between = (k: number) =>
    (existing[k] as number) + t * ((existing[k + 2] as number) - (existing[k] as number));
  return `${sectionX(fit, between(2 * i)).toFixed(1)} ${sectionY(fit, between(2 * i + 1)).toFixed(1)}`;
}

/** One strip from sample to sample: along the earth there, along the ground back; the lines may meet before and behind. */
function stripPath(
  { ground, earth }: Places,
  { from, start }: { readonly from: number; readonly start: string },
  to: number,
  end: string,
): string {
  let path = start === "" ? `M${ground[from]}` : `M${ground[from]}L${start}`;
  for (let i = from; i <= to; i++) path += `L${earth[i]}`;
  if (end !== "") path += `L${end}`;
  for (let i = to; i > from; i--) path += `L${ground[i]}`;
  return `${path}Z`;
}

/**
 * The section as it is seen on the plan: what lies left on the plan is left in the section. One that runs straight up
 * and down the plan keeps its way.
 */
export function asOnPlan(section: SectionLine, turn = 0): SectionLine {
  if (!runsLeft(section, turn)) return section;
  const { start, end } = section;
  const length = section.existing[section.existing.length - 2] ?? 0;
  return {
    existing: turned(section.existing),
    finished: reversed(section.finished, length),
    guessed: backwards(section.guessed),
    start: end,
    end: start,
    building: section.building && [length - section.building[1], length - section.building[0]],
  };
}

/** Does a line run to the left on the screen, with the plan turned counter-clockwise by `turn`? */
export function runsLeft({ start, end }: Pick<SectionLine, "start" | "end">, turn: number): boolean {
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  return dx * Math.cos(turn) - dy * Math.sin(turn) < -1e-6 * Math.hypot(dx, dy);
}

/** The ground as it is stays the same object while the floor moves. */
const turned = oncePer((pairs: Float64Array) => reversed(pairs, pairs[pairs.length - 2] ?? 0));
const backwards = oncePer((flags: Uint8Array) => flags.slice().reverse());

/** Pairs of distance and height, told from the other end. */
function reversed(pairs: Float64Array, length: number): Float64Array {
  const last = pairs.length - 2;
  return pairs.map((_, i) =>
    i % 2 === 0 ? length - (pairs[last - i] as number) : (pairs[last - i + 2] as number),
  );
}

const windLetters = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"] as const;

/** "W" and "E": where the left and the right end of the section lie. */
export function sectionEnds(
  section: Pick<SectionLine, "start" | "end">,
  north: number,
): readonly [string, string] {
  const to = windOf(section, north);
  return [windLetters[(to + 4) % 8] as string, windLetters[to] as string];
}

const windNames = [
  "north",
  "north-east",
  "east",
  "south-east",
  "south",
  "south-west",
  "west",
  "north-west",
] as const;

/** "north to south": the way the section is drawn, left to right. */
export function sectionWay(section: SectionLine, north: number): string {
  const to = windOf(section, north);
  return `${windNames[(to + 4) % 8]} to ${windNames[to]}`;
}

/** Which of the eight winds the section runs to, clockwise from north. */
function windOf({ start, end }: Pick<SectionLine, "start" | "end">, north: number): number {
  const azimuth = Math.atan2(end[0] - start[0], end[1] - start[1]) - north;
  return ((Math.round(azimuth / (Math.PI / 4)) % 8) + 8) % 8;
}

/** "heights drawn 2½ times", "heights not stretched". */
export function exaggerationWords(exaggeration: number): string {
  if (exaggeration === 1) return "heights not stretched";
  return `heights drawn ${timesText(exaggeration)} times`;
}

/** The same where there is no room for it. */
export function exaggerationSign(exaggeration: number): string {
  return exaggeration === 1 ? "not stretched" : `drawn ×${timesText(exaggeration)}`;
}

function timesText(exaggeration: number): string {
  const whole = Math.floor(exaggeration);
  const half = exaggeration - whole === 0.5 ? "½" : "";
  return Number.isInteger(exaggeration) || half !== "" ? `${whole}${half}` : exaggeration.toFixed(1);
}
