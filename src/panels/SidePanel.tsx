/** The panel on the right: what the present step asks for and what it answers. */
import { type ComponentType, memo } from "react";
import type { StepName } from "../store/state";
import { useApp } from "../store/useApp";
import type { RunCommand } from "./command";
import { BuildingPanel } from "./steps/BuildingPanel";
import { DrivePanel } from "./steps/DrivePanel";
import { FloorPanel } from "./steps/FloorPanel";
import { FoundationPanel } from "./steps/FoundationPanel";
import { LotPanel } from "./steps/LotPanel";
import { QuantitiesPanel } from "./steps/QuantitiesPanel";
import { SetoutPanel } from "./steps/SetoutPanel";
import { SheetsPanel } from "./steps/SheetsPanel";
import { ShotsPanel } from "./steps/ShotsPanel";
import { WaterPanel } from "./steps/WaterPanel";
import { usePanelsWait } from "./useLags";

export interface StepPanelProps {
  readonly run: RunCommand;
}

/** Each is drawn by what it reads itself: that it has to wait changes nothing in it. */
const panels: Readonly<Record<StepName, ComponentType<StepPanelProps>>> = {
  lot: memo(LotPanel),
  shots: memo(ShotsPanel),
  building: memo(BuildingPanel),
  drive: memo(DrivePanel),
  water: memo(WaterPanel),
  floor: memo(FloorPanel),
  foundation: memo(FoundationPanel),
  quantities: memo(QuantitiesPanel),
  setout: memo(SetoutPanel),
  sheets: memo(SheetsPanel),
};

export function SidePanel({ run }: StepPanelProps) {
  const step = useApp((state) => state.step);
  const Panel = panels[step];
  const waits = usePanelsWait();
  return (
    <aside className={waits ? "side side-waits" : "side"} data-tour="panel" aria-label="This step" key={step}>
      {waits ? <p className="side-waits-word">Figures follow when the hand rests.</p> : null}
      <Panel run={run} />
    </aside>
  );
}
