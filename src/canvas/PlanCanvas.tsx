/** The plan: ground, design and tools on one sheet, with its key, its read-out and its tools around it. */

import { Candidates } from "./overlays/Candidates";
import { ChoicesCard } from "./overlays/ChoicesCard";
import { EmptyPlan } from "./overlays/EmptyPlan";
import { GridNote } from "./overlays/GridNote";
import { HeightsNote } from "./overlays/HeightsNote";
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
import "./canvas.css";
import "./overlays/overlays.css";
import "./overlays/tools.css";
import "./overlays/view.css";

export function PlanCanvas() {
  return (
    <section className="plan-canvas" aria-label="Plan">
      <PlanStage />
      {/* Next to the plan, so that Tab goes from it to what the tool offers. */}
      <ChoicesCard />
      <div className="plan-left">
        <ToolBar />
      </div>
      <div className="plan-right">
        <NorthArrow />
        <ViewButtons />
        <LayerMenu />
      </div>
      <EmptyPlan />
      <LiveDimensions />
      <TypedChip />
      <Candidates />
      <LengthAsk />
      <ReadingCard />
      <WordsAsk />
      <div className="plan-foot">
        <div className="plan-bottom">
          <div className="plan-bottom-left">
            <div className="scale-line">
              <ScaleBar />
              <HeightsNote />
              <GridNote />
            </div>
            <Legend />
          </div>
          <ReadOut />
        </div>
        <HintStrip />
      </div>
    </section>
  );
}
