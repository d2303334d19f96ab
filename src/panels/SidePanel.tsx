/** The panel on the right: what the present step asks for and what it answers. */
import { type ComponentType, memo, type RefObject, useEffect, useRef } from "react";
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
  const panel = useRef<HTMLElement>(null);
  useSelectedInSight(panel, step);
  return (
    <aside
      className={waits ? "side side-waits" : "side"}
      data-tour="panel"
      aria-label="This step"
      key={step}
      ref={panel}
    >
      {waits ? <p className="side-waits-word">Figures follow when the hand rests.</p> : null}
      <Panel run={run} />
    </aside>
  );
}

/** What the step tells of a thing comes into sight when the thing is selected; a step that is gone to begins at its head. */
function useSelectedInSight(panel: RefObject<HTMLElement | null>, step: StepName): void {
  const selection = useApp((state) => state.selection);
  const before = useRef({ step, selection });
  useEffect(() => {
    const stayed = before.current.step === step && before.current.selection !== selection;
    before.current = { step, selection };
    if (stayed) panel.current?.querySelector(".told-selected")?.scrollIntoView?.({ block: "nearest" });
  }, [panel, step, selection]);
}
