/** What charts against the floor height share: scales, the allowed heights, the axis, the line under the pointer. */
import { memo } from "react";
import type { Display } from "../../document";
import type { HeightSpan } from "../../solve/results";
import { axisHeights } from "../curve";
import { notationOf } from "../notation";

export const chartHeight = 156;
export const edge = { left: 8, right: 8, top: 10, bottom: 22 };

export interface Scales {
  readonly x: (floor: number) => number;
  readonly y: (amount: number) => number;
  readonly from: number;
  readonly to: number;
  readonly floorAt: (px: number) => number;
}

export function scalesOf(floors: readonly number[], most: number, width: number): Scales {
  const from = floors[0] ?? 0;
  const to = floors.at(-1) ?? 1;
  const across = Math.max(1, width - edge.left - edge.right);
  const up = chartHeight - edge.top - edge.bottom;
  return {
    from,
    to,
    x: (floor) => edge.left + ((floor - from) / (to - from)) * across,
    y: (amount) => chartHeight - edge.bottom - (amount / most) * up,
    floorAt: (px) => from + ((px - edge.left) / across) * (to - from),
  };
}

export function Pointed({ at, scales }: { at: number; scales: Scales }) {
  const x = scales.x(at);
  return <line className="curve-pointed" x1={x} x2={x} y1={edge.top} y2={chartHeight - edge.bottom} />;
}

/** The heights that all limits allow, under the lines. */
export const Band = memo(function Band({ span: [low, high], scales }: { span: HeightSpan; scales: Scales }) {
  if (low === null && high === null) return null;
  const x1 = scales.x(Math.max(scales.from, low ?? scales.from));
  const x2 = scales.x(Math.min(scales.to, high ?? scales.to));
  if (!(x2 > x1)) return null;
  return (
    <rect
      className="curve-band"
      x={x1}
      y={edge.top}
      width={x2 - x1}
      height={chartHeight - edge.top - edge.bottom}
    />
  );
});

export const Axis = memo(function Axis({
  scales,
  display,
  width,
}: {
  scales: Scales;
  display: Display;
  width: number;
}) {
  const feet = display.area === "ft2";
  const notation = notationOf(display);
  const ticks = axisHeights(scales.from, scales.to, feet, Math.max(2, Math.floor(width / 70)));
  const foot = chartHeight - edge.bottom;
  return (
    <>
      <line className="curve-axis" x1={edge.left} x2={width - edge.right} y1={foot} y2={foot} />
      {ticks.map((tick) => (
        <g key={tick}>
          <line className="curve-axis" x1={scales.x(tick)} x2={scales.x(tick)} y1={foot} y2={foot + 4} />
          <text
            className="curve-tick"
            x={scales.x(tick)}
            y={chartHeight - 4}
            textAnchor={anchor(scales.x(tick), width)}
          >
            {notation.length(tick).replace(/(?<=′) 0″$/, "")}
          </text>
        </g>
      ))}
    </>
  );
});

function anchor(x: number, width: number): "start" | "middle" | "end" {
  return x < 22 ? "start" : x > width - 22 ? "end" : "middle";
}
