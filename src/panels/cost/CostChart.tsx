/** What the priced items come to at every floor, stacked by kind of thing, with the cheapest floor that the limits allow. */
import { memo, type PointerEvent, useMemo, useState } from "react";
import { buildingEdits } from "../../document";
import { costGroups } from "../../solve/cost-curve";
import type { CostAgainstFloor, CostGroup, CostPoint } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { shownFloor } from "../../store/store";
import { useApp } from "../../store/useApp";
import { Action } from "../fields/Choice";
import { Section } from "../parts";
import { Axis, Band, chartHeight, edge, Pointed, type Scales, scalesOf } from "../steps/chart";
import { useNotation, useProject, useResults } from "../useProject";
import { useWidth } from "../useWidth";
import "./cost.css";

const groupWords: Readonly<Record<CostGroup, string>> = {
  concrete: "concrete and forms",
  stone: "stone",
  "earth-in": "earth in",
  "earth-out": "earth out",
  topsoil: "topsoil and seed",
  work: "digging, machine and truck",
  other: "other",
};

export function CostChart() {
  const costs = useResults((results) => results.costs);
  const floor = useApp(shownFloor);
  if (!costs || floor === null) return null;
  return <Chart costs={costs} floor={floor} />;
}

function Chart({ costs, floor }: { costs: CostAgainstFloor; floor: number }) {
  const [ref, width] = useWidth<HTMLDivElement>(300);
  const [pointed, setPointed] = useState<number | null>(null);
  const spans = useResults(({ band }) => band.spans);
  const display = useProject((project) => project.display);
  const notation = useNotation();
  const { points } = costs;
  const groups = useMemo(
    () => costGroups.filter((group) => points.some(({ parts }) => parts[group] > 0)),
    [points],
  );
  const scales = useMemo(
    () =>
      scalesOf(
        points.map((point) => point.floor),
        Math.max(1e-6, ...points.map(({ total }) => total)),
        width,
      ),
    [points, width],
  );
  const read = pointed === null ? costs.here : costAt(points, pointed);
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const px = event.clientX - event.currentTarget.getBoundingClientRect().left;
    setPointed(Math.min(scales.to, Math.max(scales.from, scales.floorAt(px))));
  };
  const words = read
    ? `${pointed === null ? "floor at" : "at"} ${notation.length(read.floor)}: ${notation.money(read.total)}`
    : "the floor is beyond this curve";
  return (
    <Section title="Cost as the floor moves" follows="layout">
      <div className="curve" ref={ref}>
        <p className="curve-read">{words}</p>
        <svg
          width={width}
          height={chartHeight}
          role="img"
          aria-label={words}
          onPointerMove={onPointerMove}
          onPointerLeave={() => setPointed(null)}
        >
          <Stack points={points} groups={groups} scales={scales} />
          {spans.map((span) => (
            <Band key={String(span)} span={span} scales={scales} />
          ))}
          <Axis scales={scales} display={display} width={width} />
          <FloorMark floor={floor} scales={scales} />
          {pointed === null ? null : <Pointed at={pointed} scales={scales} />}
        </svg>
      </div>
      <ul className="cost-parts">
        {groups.map((group) => (
          <li key={group}>
            <span className={`cost-swatch cost-${group}`} aria-hidden="true" />
            {groupWords[group]}
            <span className="cost-part">{read ? notation.money(read.parts[group]) : ""}</span>
          </li>
        ))}
      </ul>
      <Least costs={costs} />
    </Section>
  );
}

/** The areas of the parts, one upon the other. */
const Stack = memo(function Stack({
  points,
  groups,
  scales,
}: {
  points: readonly CostPoint[];
  groups: readonly CostGroup[];
  scales: Scales;
}) {
  let below = points.map(() => 0);
  return groups.map((group) => {
    const above = points.map(({ parts }, i) => (below[i] as number) + parts[group]);
    const at = (level: readonly number[]) => (point: CostPoint, i: number) =>
      `${scales.x(point.floor).toFixed(1)} ${scales.y(level[i] as number).toFixed(1)}`;
    const up = points.map(at(above));
    const down = points.map(at(below)).reverse();
    below = above;
    return <path key={group} className={`cost-area cost-${group}`} d={`M${[...up, ...down].join("L")}Z`} />;
  });
});

function FloorMark({ floor, scales }: { floor: number; scales: Scales }) {
  if (floor < scales.from || floor > scales.to) return null;
  const x = scales.x(floor);
  return <line className="curve-floor" x1={x} x2={x} y1={edge.top} y2={chartHeight - edge.bottom} />;
}

/** Where it is least, with a step to it. */
function Least({ costs }: { costs: CostAgainstFloor }) {
  const notation = useNotation();
  const { leastAllowed, least } = costs;
  if (!leastAllowed)
    return (
      <p className="soft small">{`Least at ${notation.length(least.floor)}; no floor keeps every limit.`}</p>
    );
  const { floor, total } = leastAllowed;
  const nearer = Math.abs(least.floor - floor) > 0.002;
  return (
    <p className="small balance">
      <span>
        Least within the limits at <strong>{notation.length(floor)}</strong>
        {`: ${notation.money(total)}.`}
        {nearer ? ` Without them it would be ${notation.length(least.floor)}.` : ""}
      </span>
      <Action
        look="quiet"
        onPress={() => tryRun(buildingEdits.setFloor, { floor, label: "floor to where it costs least" })}
      >
        Set the floor to the cheapest
      </Action>
    </p>
  );
}

/** Costs between two points of the curve in a straight line; null outside it. */
function costAt(points: readonly CostPoint[], floor: number): CostPoint | null {
  const next = points.findIndex((point) => point.floor >= floor);
  const [a, b] = [points[next - 1], points[next]];
  if (!b) return null;
  if (!a) return b.floor === floor ? b : null;
  const share = (floor - a.floor) / (b.floor - a.floor);
  const mix = (from: number, to: number) => from + share * (to - from);
  const parts = Object.fromEntries(
    costGroups.map((group) => [group, mix(a.parts[group], b.parts[group])]),
  ) as Record<CostGroup, number>;
  return { floor, total: mix(a.total, b.total), parts };
}
