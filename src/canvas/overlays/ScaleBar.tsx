/** A bar of a round length, as long as it is on the plan. */
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { useTextSize } from "../useTextSize";
import { planView } from "../view/planView";
import { barRoomOn, scaleBarLength } from "./scaleBar";

export function ScaleBar() {
  const notation = useApp((state) => shownProject(state).display.length);
  const scale = useStore(planView, ({ view }) => view.scale);
  const room = useStore(planView, ({ view }) => barRoomOn(view.width));
  const { px, text } = scaleBarLength(notation, scale, room);
  const half = px / 2;
  const words = useTextSize();
  const base = 14 * words;
  return (
    <svg
      className="scale-bar"
      width={room + 46 * words}
      height={base + 4}
      role="img"
      aria-label={`The bar is ${text} long`}
    >
      <path d={`M1 ${base - 5} v5 h${px} v-5`} className="scale-bar-clear" />
      <path d={`M1 ${base - 5} v5 h${half} v-5`} className="scale-bar-full" />
      <path d={`M${1 + half} ${base} h${half} v-5`} className="scale-bar-line" />
      <text x={px + 7} y={base}>
        {text}
      </text>
    </svg>
  );
}
