/** The heights that all limits allow, as a zone beside the rod, with the limits that end it. */

import { rodLines } from "./rodLabels";
import type { RodBand } from "./rodMarks";
import { type RodRange, rodY } from "./rodScale";
import { spreadRound } from "./spread";

export interface BandProps {
  readonly band: RodBand;
  readonly range: RodRange;
  readonly height: number;
  /** Left edge of the zone. */
  readonly x: number;
  /** From there to the rod's rim, px. */
  readonly room: number;
  /** How much larger than usual words are. */
  readonly words: number;
  /** How far the floor is from a height, in the plan's notation; null while there is no floor. */
  readonly margin: ((end: number) => string) | null;
}

const width = 8;
const usualLine = 12;

export function Band({ band, range, height, x, room, words, margin }: BandProps) {
  const lineHeight = usualLine * words;
  const { low, high, spans, empty } = band;
  if (low === null && high === null) return null;
  const rule = { range, height };
  const hold = (y: number) => Math.max(0, Math.min(height, y));
  const lowY = low === null ? height : rodY(rule, low);
  const highY = high === null ? 0 : rodY(rule, high);
  const zones = (empty ? [[low, high] as const] : spans).map(([from, to]) => {
    const ys = [from === null ? height : rodY(rule, from), to === null ? 0 : rodY(rule, to)].map(hold);
    return { top: Math.min(...ys), bottom: Math.max(...ys) };
  });
  const ends = [
    { key: "high", y: hold(highY), name: band.highName, tip: "not above", end: high },
    { key: "low", y: hold(lowY), name: band.lowName, tip: "not below", end: low },
  ].filter(({ name }) => name !== "");
  // Names of two words take two lines, the margin one more; all get the room of the tallest.
  const lines = ends.map(({ name, end }) => [
    ...rodLines(name, (room - width - 7) / words),
    ...(margin && end !== null && !empty ? [margin(end)] : []),
  ]);
  const labelHeight = lineHeight * Math.max(1, ...lines.map(({ length }) => length)) + 3;
  const outward = empty ? 0 : labelHeight / 3;
  const places = spreadRound(
    ends.map(({ y, key }) => y + (key === "high" ? -outward : outward)),
    labelHeight,
    { from: -8, to: height + 8 },
    null,
  );
  return (
    <g className={empty ? "rod-band empty" : "rod-band"}>
      {zones.map(({ top, bottom }) => (
        <rect key={top} x={x} y={top} width={width} height={Math.max(2, bottom - top)} rx={2} />
      ))}
      {ends.map(({ key, y, name, tip }, i) => (
        <g key={key}>
          <path
            d={`M${x} ${y.toFixed(1)}h${width + 1}L${x + width + 4} ${(places[i] as number).toFixed(1)}`}
          />
          <text>
            <title>{`${tip}: ${name}`}</title>
            {(lines[i] ?? []).map((word, k, all) => (
              <tspan
                // biome-ignore lint/suspicious/noArrayIndexKey: a line is known by its order
                key={k}
                className={margin && !empty && k === all.length - 1 ? "rod-margin" : undefined}
                x={x + width + 5}
                y={(places[i] as number) + 4 * words + (k - (all.length - 1) / 2) * lineHeight}
              >
                {word}
              </tspan>
            ))}
          </text>
        </g>
      ))}
    </g>
  );
}
