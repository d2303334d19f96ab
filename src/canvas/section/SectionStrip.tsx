/** Sections under the plan: ground as it is and finished, building, footing; they move with the floor. */
import { memo, useEffect, useMemo, useRef } from "react";
import { useStore } from "zustand";
import { appStore, shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatLength, roundingFor } from "../../units";
import { useSize } from "../useSize";
import { planView } from "../view/planView";
import { SectionDrawing } from "./SectionDrawing";
import {
  cutLine,
  type SectionKey,
  type ShownSection,
  sectionChoice,
  sectionEntries,
  shownSection,
} from "./sectionChoice";
import { sectionShown } from "./sectionOnPlan";
import "../canvas.css";
import "./section.css";

export function SectionStrip() {
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(box);
  const shown = useShownSection();
  useFollowSelection();
  useMarksOnPlan(shown);
  const name = useChosenName();
  return (
    <section className="section-strip" aria-label="Section">
      <SectionHead over={shown?.over ?? null} />
      <div className="section-box" ref={box}>
        {shown && width > 80 && height > 60 ? (
          <SectionDrawing shown={shown} width={width} height={height} />
        ) : (
          <p className="section-empty soft">
            {name === null
              ? "The section through the building shows here once there are shots and a building."
              : `${name} there is no ground yet: it shows here once there are shots around it.`}
          </p>
        )}
      </div>
    </section>
  );
}

/** Which section, and how heights are drawn. */
const SectionHead = memo(function SectionHead({ over }: { over: ShownSection["over"] }) {
  const project = useApp(shownProject);
  const { key, trueHeights } = useStore(sectionChoice);
  const entries = sectionEntries(project);
  if (entries.length === 0) return null;
  return (
    <div className="section-head">
      <select
        aria-label="Section to show"
        value={entries.some((entry) => entry.key === key) ? key : entries[0]?.key}
        onChange={(event) => sectionChoice.setState({ key: event.target.value as SectionKey })}
      >
        {entries.map((entry) => (
          <option key={entry.key} value={entry.key}>
            {entry.words}
          </option>
        ))}
      </select>
      {over ? <OverPlace over={over} /> : null}
      <label>
        <input
          type="checkbox"
          checked={trueHeights}
          onChange={(event) => sectionChoice.setState({ trueHeights: event.target.checked })}
        />
        heights true to scale
      </label>
    </div>
  );
});

/** Where across the drive, pulled along it. */
function OverPlace({ over }: { over: NonNullable<ShownSection["over"]> }) {
  const display = useApp((state) => shownProject(state).display);
  const words = formatLength(over.distance, display.length, roundingFor(display.length, display));
  return (
    <label className="section-over">
      <input
        type="range"
        aria-label="Place along the drive"
        aria-valuetext={`${words} from the road`}
        min={0}
        max={over.length}
        step={overStep}
        value={over.distance}
        onChange={(event) => sectionChoice.setState({ overAt: Number(event.target.value) })}
      />
      <span>
        {words}
        <span className="from-where"> from the road</span>
      </span>
    </label>
  );
}

/** Of the slider, m. */
const overStep = 0.1;

function useShownSection(): ShownSection | null {
  const project = useApp(shownProject);
  const results = useApp((state) => state.results);
  const floor = useApp(shownFloor);
  const turn = useStore(planView, ({ view }) => view.angle);
  const chosen = useStore(sectionChoice, ({ key }) => key);
  const overAt = useStore(sectionChoice, (choice) => choice.overAt);
  return useMemo(() => {
    const [first] = sectionEntries(project);
    const there = sectionEntries(project).some(({ key }) => key === chosen);
    return shownSection(there ? chosen : (first?.key ?? "along"), project, results, floor, turn, overAt);
  }, [chosen, project, results, floor, turn, overAt]);
}

/** "Along section P", for the words where it has no ground; null for the sections through the building. */
function useChosenName(): string | null {
  const project = useApp(shownProject);
  const key = useStore(sectionChoice, (choice) => choice.key);
  if (key === "along" || key === "across") return null;
  return sectionEntries(project).find((entry) => entry.key === key)?.words ?? null;
}

/** A section line or a drive that is selected on the plan is shown. */
function useFollowSelection(): void {
  useEffect(() => {
    const follow = ({ selection: [only, ...others] } = appStore.getState()) => {
      if (others.length > 0 || (only?.kind !== "section" && only?.kind !== "drive")) return;
      if (sectionChoice.getState().key === `over:${only.id}`) return;
      sectionChoice.setState({ key: `${only.kind}:${only.id}` });
    };
    follow();
    return appStore.subscribe((state, before) => {
      if (state.selection !== before.selection) follow(state);
    });
  }, []);
}

/** The line on the plan, while the section is shown. */
function useMarksOnPlan(shown: ShownSection | null): void {
  const cut = cutLine(shown);
  const places = cut && [...cut.start, ...cut.end].map((value) => value.toFixed(4)).join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: a cut at the same places is the same cut
  useEffect(() => {
    sectionShown.setState({ cut }, true);
    return () => sectionShown.setState({ cut: null }, true);
  }, [places]);
}
