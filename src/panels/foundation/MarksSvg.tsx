/** Drawing marks as SVG: the same marks that the sheets paint, in the page's own inks. */
import { useId } from "react";
import type { DrawingMark, LineMark, SymbolMark, TextMark } from "../../drawing";
import { type Style, styles, symbolShapes } from "../../drawing";
import { inkVariable } from "../../look/tokens";
import { useApp } from "../../store/useApp";

/** Pixels of the page for a millimetre of paper. */
export const pxPerMm = 96 / 25.4;

/** How metres come to lie in the SVG: x right from `left`, y down from `top`, both px. */
export interface SvgScale {
  readonly pxPerMetre: number;
  readonly left: number;
  readonly top: number;
  readonly minX: number;
  readonly maxY: number;
}

export function svgX(scale: SvgScale, x: number): number {
  return scale.left + (x - scale.minX) * scale.pxPerMetre;
}

export function svgY(scale: SvgScale, y: number): number {
  return scale.top + (scale.maxY - y) * scale.pxPerMetre;
}

const ink = (name: string | undefined) => (name === undefined ? "none" : `var(${inkVariable(name)})`);

export function MarksSvg({ marks, scale }: { marks: readonly DrawingMark[]; scale: SvgScale }) {
  const prefix = useId();
  const hatches = [
    ...new Set(marks.flatMap((mark) => (mark.kind === "area" && hatchOf(mark.style) ? [mark.style] : []))),
  ];
  return (
    <g className="marks">
      <defs>
        {hatches.map((name) => (
          <Hatch key={name} id={`${prefix}${name}`} style={styles[name]} />
        ))}
      </defs>
      {marks.map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a mark is known by its order
        <Mark key={i} mark={mark} scale={scale} prefix={prefix} />
      ))}
    </g>
  );
}

function hatchOf(name: keyof typeof styles): Style["hatch"] {
  return styles[name].hatch;
}

function Hatch({ id, style }: { id: string; style: Style }) {
  if (!style.hatch) return null;
  const spacing = style.hatch.spacing * pxPerMm;
  return (
    <pattern
      id={id}
      width={spacing}
      height={spacing}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${-style.hatch.angle})`}
    >
      <path
        d={`M0 ${spacing / 2}H${spacing}`}
        stroke={ink(style.stroke)}
        strokeWidth={(style.width ?? 0.13) * pxPerMm}
        strokeOpacity={style.opacity ?? 1}
      />
    </pattern>
  );
}

function Mark({ mark, scale, prefix }: { mark: DrawingMark; scale: SvgScale; prefix: string }) {
  if (mark.kind === "line") return <Line mark={mark} scale={scale} />;
  if (mark.kind === "text") return <Text mark={mark} scale={scale} />;
  if (mark.kind === "symbol") return <Sign mark={mark} scale={scale} />;
  const style = styles[mark.style];
  const d = mark.rings.map((ring) => `${pathOf(ring, scale)}Z`).join("");
  return (
    <path
      d={d}
      fillRule="evenodd"
      fill={style.hatch ? `url(#${prefix}${mark.style})` : ink(style.fill)}
      fillOpacity={style.hatch ? 1 : (style.opacity ?? 1)}
      stroke={style.hatch ? "none" : ink(style.stroke)}
      strokeWidth={(style.width ?? 0) * pxPerMm}
    />
  );
}

function Line({ mark, scale }: { mark: LineMark; scale: SvgScale }) {
  const style = styles[mark.style];
  return (
    <path
      d={pathOf(mark.points, scale) + (mark.closed ? "Z" : "")}
      fill="none"
      stroke={ink(style.stroke)}
      strokeOpacity={style.opacity ?? 1}
      strokeWidth={(style.width ?? 0.2) * pxPerMm}
      strokeDasharray={style.dash?.map((mm) => mm * pxPerMm).join(" ")}
      strokeLinejoin="round"
    />
  );
}

const anchors = { start: "start", middle: "middle", end: "end" } as const;

function Text({ mark, scale }: { mark: TextMark; scale: SvgScale }) {
  const words = useApp(({ preferences }) => preferences.textSize) * pxPerMm;
  const { size = 2.6, weight = 400, fill = "ink" } = styles[mark.style];
  const [right, up] = mark.shift ?? [0, 0];
  return (
    <text
      x={svgX(scale, mark.at[0]) + right * words}
      y={svgY(scale, mark.at[1]) - up * words}
      textAnchor={anchors[mark.anchor ?? "start"]}
      style={{ fontSize: `calc(${(size * pxPerMm * 1.12).toFixed(2)}px * var(--text))` }}
      fontWeight={weight}
      fill={ink(fill)}
      stroke="var(--sheet)"
      strokeWidth={mark.halo ? 3 : 0}
      paintOrder="stroke"
    >
      {mark.text}
    </text>
  );
}

function Sign({ mark, scale }: { mark: SymbolMark; scale: SvgScale }) {
  const { strokes, closed, filled } = symbolShapes[mark.symbol];
  const size = mark.size * pxPerMm;
  const [c, s] = [Math.cos(mark.angle ?? 0) * size, Math.sin(mark.angle ?? 0) * size];
  const [x, y] = [svgX(scale, mark.at[0]), svgY(scale, mark.at[1])];
  const runs = strokes.map((stroke) =>
    Array.from({ length: stroke.length / 2 }, (_, i) => {
      const [u, v] = [stroke[2 * i] as number, stroke[2 * i + 1] as number];
      return `${(x + u * c - v * s).toFixed(2)} ${(y - u * s - v * c).toFixed(2)}`;
    }).join("L"),
  );
  const style = styles[mark.style];
  return (
    <path
      d={runs.map((run) => `M${run}${closed ? "Z" : ""}`).join("")}
      fill={filled ? ink(style.fill) : "none"}
      stroke={ink(style.stroke)}
      strokeOpacity={style.opacity ?? 1}
      strokeWidth={(style.width ?? 0.3) * pxPerMm}
    />
  );
}

function pathOf(points: ArrayLike<number>, scale: SvgScale): string {
  let d = "";
  for (let i = 0; i + 1 < points.length; i += 2)
    d += `${i === 0 ? "M" : "L"}${svgX(scale, points[i] as number).toFixed(1)} ${svgY(scale, points[i + 1] as number).toFixed(1)}`;
  return d;
}
