/** Heights beside the rod, each with its name, none on another. */
import { memo } from "react";
import type { RodTick } from "./rodMarks";
import { type RodRange, rodY } from "./rodScale";
import { type Interval, spreadRound } from "./spread";

export interface TicksProps {
  readonly ticks: readonly RodTick[];
  readonly range: RodRange;
  readonly height: number;
  /** Left edge of the scale. */
  readonly x: number;
  /** The floor's flag lies over the labels. */
  readonly flag: Interval | null;
}

const labelHeight = 15;
const reach = 7;
const leader = 9;

export const Ticks = memo(function Ticks({ ticks, range, height, x, flag }: TicksProps) {
  const rule = { range, height };
  const shown = ticks.filter(({ z }) => z >= range.low && z <= range.high);
  const ys = shown.map(({ z }) => rodY(rule, z));
  const places = spreadRound(ys, labelHeight, { from: -4, to: height + 4 }, flag);
  return (
    <g>
      {shown.map(({ id, label, kind, guessed }, i) => {
        const y = ys[i] as number;
        const at = places[i] as number;
        const start = x - reach - leader;
        return (
          <g key={id} className={`rod-tick ${kind}`}>
            <path d={`M${x} ${y.toFixed(1)}h${-reach}L${start} ${at.toFixed(1)}h-2`} />
            <text x={start - 5} y={at + 4} textAnchor="end">
              {guessed ? `${label}?` : label}
            </text>
          </g>
        );
      })}
    </g>
  );
});
