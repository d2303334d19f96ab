/** What the plan shows: each part can be switched off. */
import { useEffect, useRef, useState } from "react";
import { toggleLayer } from "../../store/actions";
import { type PlanLayer, planLayers } from "../../store/state";
import { useApp } from "../../store/useApp";
import { Icon } from "./icons";

const names: Readonly<Record<PlanLayer, string>> = {
  existing: "Ground as it is",
  finished: "Finished ground",
  depth: "Cut and fill",
  arrows: "Where water runs",
  ponds: "Standing water",
  shots: "Shots",
  dimensions: "Dimensions",
  lot: "Lot and features",
};

export function LayerMenu() {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  useCloseOutside(box, open, () => setOpen(false));
  return (
    <div className="layer-menu" ref={box}>
      <div className="plan-card">
        <button
          type="button"
          className="plan-button"
          aria-expanded={open}
          aria-label="What the plan shows"
          onClick={() => setOpen(!open)}
        >
          <Icon name="layers" />
          {open ? null : <span className="plan-tip left">What the plan shows</span>}
        </button>
      </div>
      {open ? <LayerList /> : null}
    </div>
  );
}

function LayerList() {
  const hidden = useApp((state) => state.hidden);
  return (
    <fieldset className="plan-card layer-list">
      <legend>Shown on the plan</legend>
      {planLayers.map((layer) => (
        <label key={layer}>
          <input type="checkbox" checked={!hidden.has(layer)} onChange={() => toggleLayer(layer)} />
          {names[layer]}
        </label>
      ))}
    </fieldset>
  );
}

/** Closes on Esc and on a press anywhere else. */
function useCloseOutside(box: React.RefObject<HTMLElement | null>, open: boolean, close: () => void): void {
  useEffect(() => {
    if (!open) return;
    const press = (event: PointerEvent) => {
      if (event.target instanceof Node && !box.current?.contains(event.target)) close();
    };
    const key = (event: KeyboardEvent) => {
      if (event.key === "Escape") close();
    };
    document.addEventListener("pointerdown", press, true);
    document.addEventListener("keydown", key, true);
    return () => {
      document.removeEventListener("pointerdown", press, true);
      document.removeEventListener("keydown", key, true);
    };
  });
}
