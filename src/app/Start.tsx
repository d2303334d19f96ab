/** Feeds the start screen: demos with their pictures, recent files, recovered work. */
import { useEffect, useState } from "react";
import { openProject } from "../document";
import type { Host, RecentFile, RecoveredWork } from "../host";
import type { RunCommand } from "../panels/command";
import { type DemoCard, StartScreen } from "../panels/opening/StartScreen";
import { thumbnail } from "../panels/opening/thumbnail";
import { unitSetOf } from "../panels/units";
import { counted } from "../panels/words";
import { createSolver } from "../solve/pipeline";
import "../panels/start.css";
import { type Demo, demos } from "./demos";
import type { Files } from "./files";
import { tourSeen } from "./tour";

export interface StartProps {
  readonly host: Host;
  readonly files: Files;
  readonly run: RunCommand;
}

export function Start({ host, files, run }: StartProps) {
  const cards = useDemoCards();
  const [recent, setRecent] = useState<readonly RecentFile[]>([]);
  const [recovered, setRecovered] = useState<RecoveredWork | null>(null);
  useEffect(() => {
    let here = true;
    host.recentFiles().then((files) => here && setRecent(files));
    host.recovered().then((work) => here && setRecovered(work));
    return () => {
      here = false;
    };
  }, [host]);
  const recover = () => {
    if (recovered) void files.openRecovered(recovered);
  };
  return (
    <StartScreen
      demos={cards}
      recent={recent}
      noRecent={noRecentWords(host)}
      recovered={recovered && { name: recovered.name, when: new Date(recovered.when).toLocaleString() }}
      onNew={() => run("plan.new")}
      onOpen={() => run("plan.open")}
      onOpenRecent={(token) => void files.openRecent(token)}
      onOpenDemo={(id) => {
        const demo = demos.find((each) => each.id === id);
        if (demo) void files.openDemo(demo);
      }}
      onRecover={recover}
      onForget={() => setRecovered(null)}
      onTour={() => run("help.tour")}
      tourSeen={tourSeen()}
    />
  );
}

/** Without pickers a browser hands a page the text of a file, and no way back to it. */
function noRecentWords({ kind }: Host): string {
  return kind === "browser" && !("showOpenFilePicker" in window && window.showOpenFilePicker)
    ? "This browser can't open a file again by itself. Open plans from your folder, or drop them here."
    : "Plans that you open or save will be listed here.";
}

/** The cards at once, their pictures one after the other: each needs its plan solved. */
function useDemoCards(): readonly DemoCard[] {
  const [cards, setCards] = useState<readonly DemoCard[]>(() =>
    demos.map(({ id }) => ({ id, name: id.replaceAll("-", " "), about: "", figures: "", picture: null })),
  );
  useEffect(() => {
    let here = true;
    const draw = async () => {
      for (const demo of demos) {
        const card = await demoCard(demo);
        if (!here) return;
        if (card) setCards((shown) => shown.map((each) => (each.id === card.id ? card : each)));
        await new Promise((resolve) => setTimeout(resolve));
      }
    };
    void draw();
    return () => {
      here = false;
    };
  }, []);
  return cards;
}

async function demoCard(demo: Demo): Promise<DemoCard | null> {
  const opened = openProject(await demo.text());
  if (!opened.ok) return null;
  const { project } = opened;
  const results = createSolver().solve(project);
  const units = unitSetOf(project.display)?.name.toLowerCase() ?? "mixed units";
  const figures = [
    counted(project.survey.shots.filter(({ kind }) => kind !== "mark").length, "shot"),
    counted(project.survey.setups.length, "set-up"),
    units,
  ];
  return {
    id: demo.id,
    name: project.name,
    about: project.about,
    figures: figures.join(", "),
    picture: thumbnail(project, results),
  };
}
