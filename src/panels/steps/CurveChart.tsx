import { memo, type PointerEvent, useMemo, useState } from "react";
import type { Display } from "../../document";
import { curveAt } from "../../solve/one-step";
import type { CurvePoint, HeightSpan } from "../../solve/results";
import { type Notation, notationOf } from "../notation";
import { useWidth } from "../useWidth";
import { Axis, Band, chartHeight, edge, Pointed, type Scales, scalesOf } from "./chart";

export interface CurveChartProps {
  readonly curve: readonly CurvePoint[];
  readonly floor: number;
  /** Volumes at that floor as every other place tells them: on the finer grid, so a hair off the curve. */
  readonly here: { readonly cut: number; readonly fill: number } | null;
  /** Heights that all limits allow. */
  readonly spans: readonly HeightSpan[];
  readonly display: Display;
}

/** Volume against floor height, with the present floor on it. Each line carries its name; a pointer reads it off. */
export function CurveChart({ curve, floor, here, spans, display }: CurveChartProps) {
  const [ref, width] = useWidth<HTMLDivElement>(300);
  const [pointed, setPointed] = useState<number | null>(null);
  const notation = notationOf(display);
  const scales = useMemo(() => scalesOf(curve.map(range), mostOf(curve), width), [curve, width]);
  const read = pointed === null && here ? { floor, ...here } : curveAt(curve, pointed ?? floor);
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
        height={chartHeight}
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
        {pointed === null ? null : <Pointed at={pointed} scales={scales} />}
      </svg>
    </div>
  );
}

function readWords({ floor, cut, fill }: CurvePoint, pointed: boolean, notation: Notation): string {
  return `${pointed ? "at " : "floor at "}${notation.length(floor)}: ${notation.volume(fill)} of fill, ${notation.volume(cut)} of cut`;
}

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

const range = ({ floor }: CurvePoint) => floor;

function mostOf(curve: readonly CurvePoint[]): number {
  return curve.reduce((top, { cut, fill }) => Math.max(top, cut, fill), 1e-6);
}

function FloorLine({ floor, scales, read }: { floor: number; scales: Scales; read: CurvePoint | null }) {
  if (floor < scales.from || floor > scales.to) return null;
  const x = scales.x(floor);
  return (
    <>
      <line className="curve-floor" x1={x} x2={x} y1={edge.top} y2={chartHeight - edge.bottom} />
      {read ? <circle className="curve-dot curve-fill-dot" cx={x} cy={scales.y(read.fill)} r={4} /> : null}
      {read ? <circle className="curve-dot curve-cut-dot" cx={x} cy={scales.y(read.cut)} r={4} /> : null}
    </>
  );
}
