/** Marks that tools share while something is under the hand: measured pieces, snapped places, guides. */
import type { Point, Project } from "../../document";
import { textBox } from "../../drawing/context";
import type { DrawingMark, TextMark } from "../../drawing/marks";
import { perimeter, ringsSelfCross, signedArea } from "../../geometry";
import { formatAngle, formatArea, formatLength, parseLength, roundingFor } from "../../units";
import { writtenPxPerMm } from "../screen";
import type { Snap } from "../snap/snap";
import type { View } from "../view/view";
import { placeWithin } from "./ringPlace";

/** A length as the project writes it. */
export function lengthWords(m: number, project: Project): string {
  const { display } = project;
  return formatLength(m, display.length, roundingFor(display.length, display));
}

/** An area as the project writes it. */
export function areaWords(m2: number, project: Project): string {
  return formatArea(m2, project.display.area);
}

/** "15° clockwise", as bearings count; the angle inside is counter-clockwise. */
export function turnWords(angle: number): string {
  const size = formatAngle(Math.abs(angle));
  return Number.parseFloat(size) === 0 ? size : `${size} ${angle < 0 ? "clockwise" : "counter-clockwise"}`;
}

/** A text that floats beside a place, clear of the pointer. */
export function floating(at: Point, text: string, shift: readonly [number, number] = [4, 4]): TextMark {
  return { kind: "text", at, text, style: "preview-label", shift, halo: true };
}

/** Does a mark float beside the thing in hand? Then it may stand on any side of it. */
export function isFloating(mark: DrawingMark): mark is TextMark {
  return mark.kind === "text" && mark.style === "preview-label" && !mark.anchor && mark.angle === undefined;
}

/** A text along the middle of a piece, readable from below or from the right. */
export function alongPiece(a: Point, b: Point, text: string, side = 1): TextMark {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const flips = angle > Math.PI / 2 + 1e-6 || angle <= -Math.PI / 2 + 1e-6;
  return {
    kind: "text",
    at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    text,
    style: "preview-label",
    angle: flips ? angle + Math.PI : angle,
    anchor: "middle",
    shift: [0, side > 0 !== flips ? 1.6 : -3.8],
    halo: true,
  };
}

/** The ring, the guide and the word of a snap. */
export function snapMarks(snap: Snap | null | undefined): DrawingMark[] {
  if (!snap?.word) return [];
  const guide: DrawingMark[] = snap.guide
    ? [{ kind: "line", points: guidePoints(snap.guide, snap), style: "snap-guide" }]
    : [];
  return [
    ...guide,
    { kind: "symbol", at: snap.at, symbol: "ring", size: 2.6, style: "snap-ring" },
    { kind: "text", at: snap.at, text: snap.word, style: "snap-label", shift: [4, -5], halo: true },
  ];
}

/** From where the direction starts to the place; a held direction goes on to both sides. */
function guidePoints([x, y]: Point, { at, beyond }: Snap): number[] {
  if (!beyond) return [x, y, ...at];
  const [dx, dy] = beyond;
  return [x - dx, y - dy, x + dx, y + dy];
}

/** Room that two lines of words take above and below their place, and beside them, mm. */
const [twoLines, besideWords] = [4.6, 1.2];

/** The area of a ring that is being drawn and the way round it, inside and off its sides; none while its sides cross. */
export function ringWords(ring: readonly Point[], project: Project, view: View): readonly TextMark[] {
  const area = Math.abs(signedArea(ring));
  if (ring.length < 3 || area < 1e-6 || ringsSelfCross(ring)) return [];
  const metresPerMm = writtenPxPerMm() / view.scale;
  const words = [areaWords(area, project), `${lengthWords(perimeter(ring), project)} round`].map(
    (text, line): TextMark => ({
      kind: "text",
      at: ring[0] as Point,
      text,
      style: "preview-label",
      anchor: "middle",
      shift: [0, line === 0 ? 0.8 : -3.4],
      halo: true,
    }),
  );
  const wide = Math.max(...words.map((mark) => textBox(mark, metresPerMm, 0).width)) / 2 + besideWords;
  const at = placeWithin(ring, [wide * metresPerMm, twoLines * metresPerMm], view.angle);
  return words.map((mark) => ({ ...mark, at }));
}

/** Diagonals, sides and a tint of a ring that is being drawn. */
export function ringMarks(ring: readonly Point[]): DrawingMark[] {
  const flat = ring.flat();
  return [
    { kind: "area", rings: [flat], style: "preview-area" },
    { kind: "line", points: flat, closed: true, style: "preview-line" },
  ];
}

/** The length as the project writes it where that is exact, else in metres. */
export function exactText(m: number, project: Project): string {
  const text = lengthWords(m, project);
  const read = parseLength(text, project.display.length);
  return read.ok && Math.abs(read.m - m) < 1e-9 ? text : `${m} m`;
}
