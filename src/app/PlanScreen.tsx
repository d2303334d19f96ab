/** The plan's window: head, steps, sentence, plan with its rod, dock and panel. */
import { PlanCanvas, Rod, SectionStrip } from "../canvas";
import type { AppCommand, RunCommand } from "../panels/command";
import { Dock } from "../panels/Dock";
import { Header } from "../panels/Header";
import { Inspector } from "../panels/inspector/Inspector";
import { LevelBook } from "../panels/levelbook/LevelBook";
import { SentenceBar } from "../panels/SentenceBar";
import { SidePanel } from "../panels/SidePanel";
import { StepsRail } from "../panels/StepsRail";
import { useApp } from "../store/useApp";

export interface PlanScreenProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

export function PlanScreen({ commands, run }: PlanScreenProps) {
  const inShots = useApp((state) => state.step === "shots");
  return (
    <div className="plan-screen">
      <Header commands={commands} run={run} />
      <StepsRail />
      <SentenceBar />
      <main className="plan-cell" data-tour="plan">
        <PlanCanvas />
      </main>
      <div className="rod-cell" data-tour="rod">
        <Rod />
      </div>
      <Dock kind={inShots ? "levelbook" : "section"} label={inShots ? "level book" : "section"}>
        {inShots ? <LevelBook /> : <SectionStrip />}
      </Dock>
      <div className="side-column">
        <SidePanel run={run} />
        <Inspector commands={commands} run={run} />
      </div>
    </div>
  );
}
