/** The plan's window: head, steps, sentence, plan with its rod, dock and panel. */
import type { ReactNode } from "react";
import { PlanCanvas, Rod, SectionStrip } from "../canvas";
import type { AppCommand, RunCommand } from "../panels/command";
import { Dock } from "../panels/Dock";
import type { DockKind } from "../panels/dockRoom";
import { Elevations } from "../panels/foundation/Elevations";
import { Profile } from "../panels/grading/Profile";
import { Header } from "../panels/Header";
import { Inspector } from "../panels/inspector/Inspector";
import { LevelBook } from "../panels/levelbook/LevelBook";
import { SentenceBar } from "../panels/SentenceBar";
import { SidePanel } from "../panels/SidePanel";
import { StepsRail } from "../panels/StepsRail";
import { useStepsAbove } from "../panels/useStepsAbove";
import type { StepName } from "../store/state";
import { useApp } from "../store/useApp";

export interface PlanScreenProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

/** Below the plan stands what the step works with; the section in all others, and where a section line is selected. */
const dockOf: Readonly<Partial<Record<StepName, DockKind>>> = {
  shots: "levelbook",
  drive: "profile",
  foundation: "elevations",
};
const dockWords: Readonly<Record<DockKind, string>> = {
  section: "section",
  levelbook: "level book",
  elevations: "walls in elevation",
  profile: "long section of the drive",
};

const docked: Readonly<Record<DockKind, () => ReactNode>> = {
  section: () => <SectionStrip />,
  levelbook: () => <LevelBook />,
  elevations: () => <Elevations />,
  profile: () => <Profile />,
};

export function PlanScreen({ commands, run }: PlanScreenProps) {
  const dock = useApp(({ step, results, selection: [only, ...others] }) => {
    if (only?.kind === "section" && others.length === 0) return "section";
    const own = dockOf[step] ?? "section";
    return own === "profile" && results.drives.length === 0 ? "section" : own;
  });
  const stepsAbove = useStepsAbove();
  return (
    <div className={stepsAbove ? "plan-screen steps-above" : "plan-screen"}>
      <Header commands={commands} run={run} />
      <StepsRail />
      <SentenceBar />
      <main className="plan-cell" data-tour="plan">
        <PlanCanvas />
      </main>
      <div className="rod-cell" data-tour="rod">
        <Rod />
      </div>
      <Dock kind={dock} label={dockWords[dock]}>
        {docked[dock]()}
      </Dock>
      <div className="side-column">
        <SidePanel run={run} />
        <Inspector commands={commands} run={run} />
      </div>
    </div>
  );
}
