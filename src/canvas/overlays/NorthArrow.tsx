/** Where north is; it turns with the plan. */
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { planView } from "../view/planView";

export function NorthArrow() {
  const north = useApp((state) => shownProject(state).lot.north);
  const angle = useStore(planView, ({ view }) => view.angle);
  const degrees = ((north - angle) * 180) / Math.PI;
  return (
    <svg
      className="north-arrow"
      width="36"
      height="52"
      viewBox="-18 -26 36 52"
      role="img"
      aria-label="North arrow"
    >
      <g transform={`rotate(${degrees.toFixed(2)})`}>
        <path d="M0 9 V-18" className="north-line" />
        <path d="M0 -22 L5 -8 L0 -12 Z" className="north-full" />
        <path d="M0 -22 L-5 -8 L0 -12 Z" className="north-half" />
        <text y="22" textAnchor="middle">
          N
        </text>
      </g>
    </svg>
  );
}
