/** The plan: ground, design and tools on one sheet, with its key, its read-out and its tools around it. */

import { Candidates } from "./overlays/Candidates";
import { ChoicesCard } from "./overlays/ChoicesCard";
import { EmptyPlan } from "./overlays/EmptyPlan";
import { GridNote } from "./overlays/GridNote";
import { HeightsNote } from "./overlays/HeightsNote";
import { HiddenNote } from "./overlays/HiddenNote";
import { HintStrip } from "./overlays/HintStrip";
import { LayerMenu } from "./overlays/LayerMenu";
import { Legend } from "./overlays/Legend";
import { LengthAsk } from "./overlays/LengthAsk";
import { LiveDimensions } from "./overlays/LiveDimensions";
import { NorthArrow } from "./overlays/NorthArrow";
import { ReadingCard } from "./overlays/ReadingCard";
import { ReadOut } from "./overlays/ReadOut";
import { ScaleBar } from "./overlays/ScaleBar";
import { ToolBar } from "./overlays/ToolBar";
import { TypedChip } from "./overlays/TypedChip";
import { ViewButtons } from "./overlays/ViewButtons";
import { WordsAsk } from "./overlays/WordsAsk";
import { PlanStage } from "./stage/PlanStage";
import { planSlot } from "./view/slots";
import "./canvas.css";
import "./overlays/buttons.css";
import "./overlays/said.css";
import "./overlays/key.css";
import "./overlays/empty.css";
import "./overlays/typing.css";
import "./overlays/tools.css";
import "./overlays/view.css";

export function PlanCanvas() {
  return (
    <section className="plan-canvas" aria-label="Plan">
      <PlanStage />
      <div className="plan-over">
        <div className="plan-slots">
          {/* Next to the plan, so that Tab goes from it to what the tool offers. */}
          <div className="slot-card">
            <ChoicesCard />
            <ReadingCard />
          </div>
          <div className="slot-tools">
            <ToolBar />
          </div>
          <div className="slot-view">
            <div className="slot-view-part" data-slot data-keys-to-plan ref={planSlot}>
              <NorthArrow />
              <ViewButtons />
              <LayerMenu />
            </div>
          </div>
          <EmptyPlan />
          <div className="slot-foot">
            <div className="scale-line" data-slot ref={planSlot}>
              <ScaleBar />
              <HeightsNote />
              <HiddenNote />
              <GridNote />
            </div>
            <Legend />
          </div>
        </div>
        <div className="plan-status">
          <HintStrip />
          <ReadOut />
        </div>
      </div>
      <LiveDimensions />
      <TypedChip />
      <Candidates />
      <LengthAsk />
      <WordsAsk />
    </section>
  );
}
