/** What the hand snaps to while drawing: each kind can be switched off. */
import { useRef, useState } from "react";
import { useStore } from "zustand";
import {
  type SnapKind,
  snapKinds,
  snappingStore,
  toggleAllSnaps,
  toggleRightAngles,
  toggleSnap,
} from "../../store/snapping";
import { Icon } from "./icons";
import { useCloseOutside } from "./LayerMenu";
import "./snaps.css";

const names: Readonly<Record<SnapKind, string>> = {
  places: "Corners, doors, shots, marks",
  middles: "Middles",
  crossings: "Where lines cross",
  feet: "Square to a line",
  tangents: "Touching a circle",
  edges: "On a line",
  directions: "Parallel and square directions",
  extensions: "In line, beyond a line's end",
  grid: "Grid (G shows it too)",
  lengths: "Round lengths",
};

export function SnapMenu() {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const on = useStore(snappingStore, (state) => state.on);
  useCloseOutside(box, open, () => setOpen(false));
  return (
    <div className="snap-menu" data-keys-to-plan ref={box}>
      <button
        type="button"
        className={on.size > 0 ? "plan-button" : "plan-button snap-none"}
        aria-expanded={open}
        aria-label="What the hand snaps to"
        onClick={() => setOpen(!open)}
      >
        <Icon name="snaps" />
        {open ? null : (
          <span className="plan-tip">
            <b>Snaps</b>
            <span className="soft">
              {on.size > 0 ? "what the hand snaps to; Shift lets go" : "nothing is snapped to"}
            </span>
          </span>
        )}
      </button>
      {open ? <SnapList on={on} /> : null}
    </div>
  );
}

function SnapList({ on }: { on: ReadonlySet<SnapKind> }) {
  const rightAngles = useStore(snappingStore, (state) => state.rightAngles);
  return (
    <section className="plan-card snap-list" aria-label="Snaps">
      <fieldset>
        <legend>Snaps to; hold Shift to let go</legend>
        {snapKinds.map((kind) => (
          <label key={kind}>
            <input type="checkbox" checked={on.has(kind)} onChange={() => toggleSnap(kind)} />
            {names[kind]}
          </label>
        ))}
        <button type="button" onClick={toggleAllSnaps}>
          {on.size > 0 ? "None of them" : "As usual"}
        </button>
      </fieldset>
      <fieldset>
        <legend>Pulled walls and corners</legend>
        <label>
          <input type="checkbox" checked={rightAngles} onChange={toggleRightAngles} />
          Keep right angles; Alt the other way
        </label>
      </fieldset>
    </section>
  );
}
