/** Stations along a drive or swale: a tick across the line, and the name that the tables use. */
import { type Point, pointAlong } from "../geometry";
import { capOf } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, seenWay } from "./context";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, TextMark, XY } from "./marks";

/** Half a tick across the line, mm. */
const tick = 1.3;
/** Free paper between the line's edge and the name, mm. */
const gap = 2.2;

/** Names beside the line: by the line itself, then beyond its edge, left and right. */
function places(at: Point, direction: XY, name: string, halfWidth: number): readonly LabelTexts[] {
  return [gap, halfWidth + gap, gap + 2.2, halfWidth + gap + 2.2, gap + 4.4].flatMap((off) =>
    [off, -off].map((side): LabelTexts => {
      const [right, up] = [-direction[1] * side, direction[0] * side];
      const anchor: TextMark["anchor"] = right > 0.8 ? "start" : right < -0.8 ? "end" : "middle";
      const near = anchor === "middle" ? 0 : Math.sign(right) * -1.2;
      const shift: [number, number] = [right + near, up - capOf("station-label") / 2];
      return [{ kind: "text", at, text: name, style: "station-label", anchor, shift, halo: true }];
    }),
  );
}

/** The name by its tick, or at the end of a leader. */
function stationName(
  at: Point,
  direction: Point,
  name: string,
  half: number,
  group: string,
  context: DrawContext,
): readonly DrawingMark[] {
  const along = Math.atan2(direction[1], direction[0]);
  const near = placeLabel(context, group, places(at, seenWay(along, context.turn), name, half), "over-lines");
  if (near.length > 0) return near;
  const across = [along + Math.PI / 2, along - Math.PI / 2];
  const led = across.flatMap((out) => ledPlaces(at, out, { text: name, style: "station-label" }, context));
  return placeLed(context, group, at, led, { style: "station", over: "over-lines" });
}

/** `halfWidth` is how far the works reach beside the line, m. */
export function stationMarks(
  line: readonly Point[],
  stations: readonly { readonly name: string; readonly station: { readonly distance: number } }[],
  halfWidth: number,
  group: string,
  context: DrawContext,
): DrawingMark[] {
  const reach = tick * context.metresPerMm;
  return stations.flatMap(({ name, station }): DrawingMark[] => {
    const { at, direction } = pointAlong(line, station.distance);
    const [x, y] = [-direction[1] * reach, direction[0] * reach];
    const half = halfWidth / context.metresPerMm;
    return [
      { kind: "line", points: [at[0] - x, at[1] - y, at[0] + x, at[1] + y], style: "station" },
      ...stationName(at, direction, name, half, group, context),
    ];
  });
}
