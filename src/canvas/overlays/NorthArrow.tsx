/** Where north is; it turns with the plan. Pulled round it turns the plan, a click gives turns by name and by figure. */
import { type PointerEvent, useRef, useState } from "react";
import { useStore } from "zustand";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { planView, turnPlan } from "../view/planView";
import { useCloseOutside } from "./LayerMenu";
import { TurnCard } from "./TurnCard";

/** A press that moves less than this is a click, px. */
const slip = 4;

export function NorthArrow() {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  useCloseOutside(box, open, () => setOpen(false));
  const pull = usePull();
  return (
    <div className="north" ref={box}>
      <button
        type="button"
        className="north-button"
        aria-expanded={open}
        aria-label="North arrow: turn the plan"
        onPointerDown={pull.down}
        onPointerMove={pull.move}
        onClick={() => {
          if (!pull.pulled()) setOpen(!open);
        }}
      >
        <Arrow />
        {open ? null : <span className="plan-tip left">Turn the plan: pull, or click for more</span>}
      </button>
      {open ? <TurnCard /> : null}
    </div>
  );
}

function Arrow() {
  const north = useApp((state) => shownProject(state).lot.north);
  const angle = useStore(planView, ({ view }) => view.angle);
  const degrees = ((north - angle) * 180) / Math.PI;
  return (
    <svg className="north-arrow" width="36" height="52" viewBox="-18 -26 36 52" aria-hidden="true">
      <g transform={`rotate(${degrees.toFixed(2)})`} data-testid="north">
        <path d="M0 24 V-6" className="north-line" />
        <path d="M0 -9 L5 5 L0 1 Z" className="north-full" />
        <path d="M0 -9 L-5 5 L0 1 Z" className="north-half" />
        <text y={-13} textAnchor="middle">
          N
        </text>
      </g>
    </svg>
  );
}

/** The arrow under the hand: the plan turns as the hand goes round the arrow's middle. */
function usePull() {
  const hand = useRef<{ angle: number; x: number; y: number; pulled: boolean } | null>(null);
  const angleAt = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    return Math.atan2(box.top + box.height / 2 - event.clientY, event.clientX - box.left - box.width / 2);
  };
  return {
    down(event: PointerEvent<HTMLElement>) {
      hand.current = { angle: angleAt(event), x: event.clientX, y: event.clientY, pulled: false };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    move(event: PointerEvent<HTMLElement>) {
      const now = hand.current;
      if (!now || event.buttons === 0) return;
      now.pulled ||= Math.hypot(event.clientX - now.x, event.clientY - now.y) > slip;
      if (!now.pulled) return;
      const angle = angleAt(event);
      const by = Math.atan2(Math.sin(angle - now.angle), Math.cos(angle - now.angle));
      now.angle = angle;
      const { view } = planView.getState();
      turnPlan(by, [view.width / 2, view.height / 2]);
    },
    pulled: () => hand.current?.pulled ?? false,
  };
}
