/** Stations along a drive or swale: a tick across the line, and the name that the tables use. */
import { type Point, pointAlong } from "../geometry";
import { capOf } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, seenWay } from "./context";
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

/** Lengths of a leader, mm, and directions tried round the tick, radians from straight across. */
const leaders = [5, 7.5, 10, 13, 17, 22];
const ways = [0, 0.5, -0.5, 1, -1, 1.4, -1.4].flatMap((turn) => [turn, turn + Math.PI]);

interface Led {
  readonly texts: LabelTexts;
  /** The leader's end by the name, mm right and up of the tick as seen. */
  readonly end: XY;
}

/** Names at the end of a leader, for where there is no room by the tick. */
function ledPlaces(at: Point, seen: XY, name: string): readonly Led[] {
  const across = Math.atan2(seen[1], seen[0]) + Math.PI / 2;
  return leaders.flatMap((length) =>
    ways.map((way): Led => {
      const end: XY = [Math.cos(across + way) * length, Math.sin(across + way) * length];
      const anchor = end[0] < 0 ? "end" : "start";
      const shift: XY = [end[0] + Math.sign(end[0] || 1) * 0.7, end[1] - capOf("station-label") / 2];
      return {
        texts: [{ kind: "text", at, text: name, style: "station-label", anchor, shift, halo: true }],
        end,
      };
    }),
  );
}

/** The name by its tick, or at the end of a leader. */
function stationName(
  at: Point,
  seen: XY,
  name: string,
  half: number,
  group: string,
  context: DrawContext,
): readonly DrawingMark[] {
  const near = placeLabel(context, group, places(at, seen, name, half), "over-lines");
  if (near.length > 0) return near;
  const led = ledPlaces(at, seen, name);
  const far = placeLabel(
    context,
    group,
    led.map((one) => one.texts),
    "over-lines",
  );
  const end = led.find((one) => one.texts === far)?.end;
  if (!end) return [];
  const [c, s] = [Math.cos(context.turn) * context.metresPerMm, Math.sin(context.turn) * context.metresPerMm];
  const to = [at[0] + end[0] * c + end[1] * s, at[1] + end[1] * c - end[0] * s] as const;
  return [{ kind: "line", points: [...at, ...to], style: "station" }, ...far];
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
    const seen = seenWay(Math.atan2(direction[1], direction[0]), context.turn);
    return [
      { kind: "line", points: [at[0] - x, at[1] - y, at[0] + x, at[1] + y], style: "station" },
      ...stationName(at, seen, name, half, group, context),
    ];
  });
}
