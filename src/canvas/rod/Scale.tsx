/** The rod itself: its lines and numbers. */
import { memo } from "react";
import type { LengthNotation } from "../../units";
import { formatLength } from "../../units";
import { isFeet, type RodRange, scaleTicks } from "./rodScale";

export interface ScaleProps {
  readonly range: RodRange;
  readonly height: number;
  readonly notation: LengthNotation;
  readonly x: number;
  readonly width: number;
  /** How much larger than usual words are. */
  readonly words: number;
}

export const Scale = memo(function Scale({ range, height, notation, x, width, words }: ScaleProps) {
  const ticks = scaleTicks({ range, height }, notation);
  const lines = (weight: number, length: number) =>
    ticks
      .filter((tick) => tick.weight === weight)
      .map(({ y }) => `M${x} ${y.toFixed(2)}h${length}`)
      .join("");
  return (
    <g>
      <rect className="rod-body" x={x} y={0} width={width} height={height} rx={3} />
      <path className="rod-fine" d={lines(0, 5)} />
      <path className="rod-half" d={lines(1, 9)} />
      <path className="rod-whole" d={lines(2, width)} />
      {ticks
        .filter(({ weight, y }) => weight === 2 && y > 12 * words)
        .map(({ z, y }) => (
          <text key={z} className="rod-number" x={x + width - 3} y={y - 3} textAnchor="end">
            {numberText(z, notation)}
          </text>
        ))}
    </g>
  );
});

/** Whole numbers of the unit, short: the flag shows the height in full. */
function numberText(z: number, notation: LengthNotation): string {
  if (isFeet(notation)) return formatLength(z, "ft", 0);
  return formatLength(z, "m", 1).replace(" m", "");
}
