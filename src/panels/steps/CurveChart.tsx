import { memo, type PointerEvent, useMemo, useState } from "react";
import type { Display } from "../../document";
import type { CurvePoint, HeightSpan } from "../../solve/results";
import { axisHeights, curveAt } from "../curve";
import { type Notation, notationOf } from "../notation";
import { useWidth } from "../useWidth";

export interface CurveChartProps {
  readonly curve: readonly CurvePoint[];
  readonly floor: number;
  /** Heights that all limits allow. */
  readonly spans: readonly HeightSpan[];
  readonly display: Display;
}

const height = 156;
const edge = { left: 8, right: 8, top: 10, bottom: 22 };

interface Scales {
  readonly x: (floor: number) => number;
  readonly y: (volume: number) => number;
  readonly from: number;
  readonly to: number;
  readonly floorAt: (px: number) => number;
}

/** Volume against floor height, with the present floor on it. Each line carries its name; a pointer reads it off. */
export function CurveChart({ curve, floor, spans, display }: CurveChartProps) {
  const [ref, width] = useWidth<HTMLDivElement>(300);
  const [pointed, setPointed] = useState<number | null>(null);
  const notation = notationOf(display);
  const scales = useMemo(() => scalesOf(curve, width), [curve, width]);
  const read = curveAt(curve, pointed ?? floor);
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const px = event.clientX - event.currentTarget.getBoundingClientRect().left;
    setPointed(Math.min(scales.to, Math.max(scales.from, scales.floorAt(px))));
  };
  return (
    <div className="curve" ref={ref}>
      <p className="curve-read">
        {read ? readWords(read, pointed !== null, notation) : "the floor is beyond this curve"}
      </p>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={read ? readWords(read, false, notation) : "Volume against floor height"}
        onPointerMove={onPointerMove}
        onPointerLeave={() => setPointed(null)}
      >
        {spans.map((span) => (
          <Band key={String(span)} span={span} scales={scales} />
        ))}
        <Lines curve={curve} scales={scales} />
        <Axis scales={scales} display={display} width={width} />
        <FloorLine floor={floor} scales={scales} read={curveAt(curve, floor)} />
        {pointed === null ? null : (
          <line
            className="curve-pointed"
            x1={scales.x(pointed)}
            x2={scales.x(pointed)}
            y1={edge.top}
            y2={height - edge.bottom}
          />
        )}
      </svg>
    </div>
  );
}

function readWords({ floor, cut, fill }: CurvePoint, pointed: boolean, notation: Notation): string {
  return `${pointed ? "at " : "floor at "}${notation.length(floor)}: ${notation.volume(fill)} of fill, ${notation.volume(cut)} of cut`;
}

function scalesOf(curve: readonly CurvePoint[], width: number): Scales {
  const from = curve[0]?.floor ?? 0;
  const to = curve.at(-1)?.floor ?? 1;
  const most = curve.reduce((top, { cut, fill }) => Math.max(top, cut, fill), 1e-6);
  const across = Math.max(1, width - edge.left - edge.right);
  const up = height - edge.top - edge.bottom;
  return {
    from,
    to,
    x: (floor) => edge.left + ((floor - from) / (to - from)) * across,
    y: (volume) => height - edge.bottom - (volume / most) * up,
    floorAt: (px) => from + ((px - edge.left) / across) * (to - from),
  };
}

/** The heights that all limits allow, under the lines. */
const Band = memo(function Band({ span: [low, high], scales }: { span: HeightSpan; scales: Scales }) {
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
      height={height - edge.top - edge.bottom}
    />
  );
});

const Lines = memo(function Lines({ curve, scales }: { curve: readonly CurvePoint[]; scales: Scales }) {
  const path = (volume: (point: CurvePoint) => number) =>
    `M${curve.map((point) => `${scales.x(point.floor).toFixed(1)} ${scales.y(volume(point)).toFixed(1)}`).join("L")}`;
  const last = curve.at(-1);
  const first = curve[0];
  return (
    <>
      <path className="curve-line curve-cut" d={path(({ cut }) => cut)} />
      <path className="curve-line curve-fill" d={path(({ fill }) => fill)} />
      {last ? (
        <text
          className="curve-name curve-fill-name"
          x={scales.x(last.floor) - 6}
          y={Math.max(20, scales.y(last.fill) + 4)}
          textAnchor="end"
          dx={-14}
        >
          fill
        </text>
      ) : null}
      {first ? (
        <text
          className="curve-name curve-cut-name"
          x={scales.x(first.floor) + 8}
          y={Math.max(20, scales.y(first.cut) - 6)}
        >
          cut
        </text>
      ) : null}
    </>
  );
});

const Axis = memo(function Axis({
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
  const foot = height - edge.bottom;
  return (
    <>
      <line className="curve-axis" x1={edge.left} x2={width - edge.right} y1={foot} y2={foot} />
      {ticks.map((tick) => (
        <g key={tick}>
          <line className="curve-axis" x1={scales.x(tick)} x2={scales.x(tick)} y1={foot} y2={foot + 4} />
          <text
            className="curve-tick"
            x={scales.x(tick)}
            y={height - 4}
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

function FloorLine({ floor, scales, read }: { floor: number; scales: Scales; read: CurvePoint | null }) {
  if (floor < scales.from || floor > scales.to) return null;
  const x = scales.x(floor);
  return (
    <>
      <line className="curve-floor" x1={x} x2={x} y1={edge.top} y2={height - edge.bottom} />
      {read ? <circle className="curve-dot curve-fill-dot" cx={x} cy={scales.y(read.fill)} r={4} /> : null}
      {read ? <circle className="curve-dot curve-cut-dot" cx={x} cy={scales.y(read.cut)} r={4} /> : null}
    </>
  );
}
