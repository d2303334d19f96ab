/** What the plan shows: each layer can be switched off, weakened, and closed to the hand. */
import { useEffect, useRef, useState } from "react";
import {
  followStep,
  lockLayer,
  resetLayers,
  setLayerStrength,
  setMapGround,
  showLayer,
} from "../../store/layerActions";
import { lockableLayers, type MapGround, mapLayers, type PlanLayer } from "../../store/layers";
import { useApp } from "../../store/useApp";
import { Icon } from "./icons";

const names: Readonly<Record<PlanLayer, string>> = {
  existing: "Ground as it is",
  finished: "Finished ground",
  shots: "Shots",
  breaklines: "Breaklines",
  arrows: "Where water runs",
  ponds: "Standing water",
  runs: "Runs of water",
  depth: "Cut and fill",
  heights: "Heights",
  slopes: "Steepness",
  building: "Building",
  drives: "Drives",
  swales: "Swales",
  lot: "Lot lines",
  features: "Features",
  underlay: "Pictures",
  dimensions: "Dimensions",
  notes: "Notes",
  sections: "Section lines",
  grid: "Grid",
};

const groups: readonly { readonly title: string; readonly layers: readonly PlanLayer[] }[] = [
  { title: "Ground", layers: ["existing", "finished", "shots", "breaklines", "arrows", "ponds", "runs"] },
  { title: "Map in colour, one at a time", layers: mapLayers },
  { title: "Works", layers: ["building", "drives", "swales"] },
  { title: "Site", layers: ["lot", "features", "underlay"] },
  { title: "Drawn beside", layers: ["dimensions", "notes", "sections", "grid"] },
];

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
  const follows = useApp((state) => state.layersFollow);
  return (
    <section className="plan-card layer-list" aria-label="Layers of the plan">
      <label className="layer-follow">
        <input type="checkbox" checked={follows} onChange={(event) => followStep(event.target.checked)} />
        Follow the step of the job
      </label>
      {groups.map(({ title, layers }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {layers.map((layer) => (
            <LayerRow key={layer} layer={layer} />
          ))}
          {layers === mapLayers ? <WhichGround /> : null}
        </fieldset>
      ))}
      <button type="button" className="layer-reset" onClick={resetLayers}>
        As at first
      </button>
    </section>
  );
}

function LayerRow({ layer }: { readonly layer: PlanLayer }) {
  const shown = useApp((state) => !state.hidden.has(layer));
  const strength = useApp((state) => state.strengths[layer] ?? 1);
  const locked = useApp((state) => state.lockedLayers.has(layer));
  const percent = Math.round(strength * 100);
  const lockable = (lockableLayers as readonly PlanLayer[]).includes(layer);
  return (
    <div className="layer-row">
      <label>
        <input type="checkbox" checked={shown} onChange={(event) => showLayer(layer, event.target.checked)} />
        {names[layer]}
      </label>
      <input
        type="range"
        min={0}
        max={100}
        step={5}
        value={percent}
        disabled={!shown}
        aria-label={`Strength of ${names[layer].toLowerCase()}`}
        aria-valuetext={`${percent} %`}
        title={`${percent} %`}
        onChange={(event) => setLayerStrength(layer, Number(event.target.value) / 100)}
      />
      {lockable ? (
        <button
          type="button"
          className="layer-lock"
          aria-pressed={locked}
          aria-label={`Lock ${names[layer].toLowerCase()}`}
          title={locked ? "Locked: seen, but not picked" : "Can be picked"}
          onClick={() => lockLayer(layer, !locked)}
        >
          <Icon name={locked ? "locked" : "unlocked"} />
        </button>
      ) : (
        <span />
      )}
    </div>
  );
}

const grounds: readonly { readonly value: MapGround; readonly words: string }[] = [
  { value: "existing", words: "as it is" },
  { value: "finished", words: "finished" },
];

/** Of heights and steepness: which ground. */
function WhichGround() {
  const now = useApp((state) => state.mapGround);
  const built = useApp((state) => state.results.surface !== null);
  return (
    <div className="layer-ground" role="radiogroup" aria-label="Heights and steepness of the ground">
      {grounds.map(({ value, words }) => (
        <label key={value}>
          <input
            type="radio"
            name="map-ground"
            checked={now === value}
            disabled={value === "finished" && !built}
            onChange={() => setMapGround(value)}
          />
          {words}
        </label>
      ))}
    </div>
  );
}

/** Closes on Esc, which does nothing else then, and on a press anywhere else. */
export function useCloseOutside(
  box: React.RefObject<HTMLElement | null>,
  open: boolean,
  close: () => void,
): void {
  useEffect(() => {
    if (!open) return;
    const press = (event: PointerEvent) => {
      if (event.target instanceof Node && !box.current?.contains(event.target)) close();
    };
    const key = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      close();
    };
    document.addEventListener("pointerdown", press, true);
    document.addEventListener("keydown", key, true);
    return () => {
      document.removeEventListener("pointerdown", press, true);
      document.removeEventListener("keydown", key, true);
    };
  });
}
