/** A bar of a round length, as long as it is on the plan. */
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { planView } from "../view/planView";
import { scaleBarLength } from "./scaleBar";

const room = 130;

export function ScaleBar() {
  const notation = useApp((state) => shownProject(state).display.length);
  const scale = useStore(planView, ({ view }) => view.scale);
  const { px, text } = scaleBarLength(notation, scale, room);
  const half = px / 2;
  return (
    <svg className="scale-bar" width={px + 46} height={18} role="img" aria-label={`The bar is ${text} long`}>
      <path d={`M1 9 v5 h${half} v-5`} className="scale-bar-full" />
      <path d={`M${1 + half} 14 h${half} v-5`} className="scale-bar-line" />
      <text x={px + 7} y={14}>
        {text}
      </text>
    </svg>
  );
}
