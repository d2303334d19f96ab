/** Zoom, fit and the list of layers. */
import { fitBuilding, fitPlan, fitSelection, zoomByStep, zoomStep } from "../view/planView";
import { Icon, type IconName } from "./icons";

const buttons: readonly { icon: IconName; label: string; act: () => void }[] = [
  { icon: "zoom-in", label: "Zoom in", act: () => zoomByStep(zoomStep) },
  { icon: "zoom-out", label: "Zoom out", act: () => zoomByStep(1 / zoomStep) },
  { icon: "fit", label: "Show the whole plan", act: fitPlan },
  { icon: "fit-building", label: "Show the building", act: fitBuilding },
  { icon: "fit-selection", label: "Show what is selected", act: fitSelection },
];

export function ViewButtons() {
  return (
    <div className="plan-card view-buttons">
      {buttons.map(({ icon, label, act }) => (
        <button key={icon} type="button" className="plan-button" aria-label={label} onClick={act}>
          <Icon name={icon} />
          <span className="plan-tip left">{label}</span>
        </button>
      ))}
    </div>
  );
}
