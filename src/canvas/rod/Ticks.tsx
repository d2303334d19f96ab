/** Heights beside the rod, each with its name, none on another. */
import { memo } from "react";
import { gathered, tickLabel } from "./rodLabels";
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
  /** How much larger than usual words are. */
  readonly words: number;
}

const usualHeight = 15;
const reach = 7;
const leader = 9;

export const Ticks = memo(function Ticks({ ticks, range, height, x, flag, words }: TicksProps) {
  const labelHeight = usualHeight * words;
  const rule = { range, height };
  const seen = ticks.filter(({ z }) => z >= range.low && z <= range.high);
  const ends = { from: -4, to: height + 4 };
  const flagged = flag ? flag.to - flag.from + labelHeight : 0;
  const shown = gathered(seen, Math.floor((ends.to - ends.from - flagged) / labelHeight));
  const ys = shown.map(({ z }) => rodY(rule, z));
  const places = spreadRound(ys, labelHeight, ends, flag);
  return (
    <g>
      {shown.map((tick, i) => {
        const { id, label, kind } = tick;
        const y = ys[i] as number;
        const at = places[i] as number;
        const start = x - reach - leader;
        return (
          <g key={id} className={`rod-tick ${kind}`}>
            <path d={`M${x} ${y.toFixed(1)}h${-reach}L${start} ${at.toFixed(1)}h-2`} />
            <text x={start - 5} y={at + 4 * words} textAnchor="end">
              <title>{label}</title>
              {tickLabel(tick, (start - 7) / words)}
            </text>
          </g>
        );
      })}
    </g>
  );
});
