/** The long section under the plan: ground as it is and finished, building, footing; it moves with the floor. */
import { type PointerEvent, useEffect, useMemo, useRef } from "react";
import type { Project } from "../../document";
import { sectionLetter } from "../../drawing/section-lines";
import type { SectionLine } from "../../solve/results";
import { setPointer } from "../../store/actions";
import { shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatLength, roundingFor } from "../../units";
import { useSize } from "../useSize";
import { sectionAlong } from "./alongLine";
import { SectionWalls } from "./SectionWalls";
import { sectionShown } from "./sectionOnPlan";
import {
  asOnPlan,
  exaggerationWords,
  fitSection,
  type SectionBuilding,
  type SectionFit,
  sectionEnds,
  sectionPaths,
  sectionRange,
  sectionWay,
  sectionX,
  sectionY,
} from "./sectionShapes";
import "../canvas.css";
import "./section.css";

const padding = 20;
/** Room for the title and for the floor's label. */
const above = 46;

export function SectionStrip() {
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(box);
  const shown = useShownSection();
  // A person's own line has its own marks on the plan.
  const own = shown.name !== null;
  useEffect(() => {
    sectionShown.setState(!own, true);
    return () => sectionShown.setState(false, true);
  }, [own]);
  return (
    <section className="section-strip" aria-label="Section">
      <div className="section-box" ref={box}>
        {shown.section && width > 80 && height > 60 ? (
          <SectionDrawing section={shown.section} name={shown.name} width={width} height={height} />
        ) : (
          <p className="section-empty soft">
            {own
              ? `Along ${shown.name} there is no ground yet: it shows here once there are shots around it.`
              : "The section through the building shows here once there are shots and a building."}
          </p>
        )}
      </div>
    </section>
  );
}

interface Shown {
  readonly section: SectionLine | null;
  /** Of a line that a person drew; null for the section through the building. */
  readonly name: string | null;
}

/** The section line that is selected, else the section through the building. */
function useShownSection(): Shown {
  const project = useApp(shownProject);
  const results = useApp((state) => state.results);
  const floor = useApp(shownFloor);
  const chosen = useApp(({ selection: [only, ...others] }) =>
    only?.kind === "section" && others.length === 0 ? only.id : null,
  );
  const line = project.drawing.sections.find(({ id }) => id === chosen);
  return useMemo(() => {
    if (line) return { section: sectionAlong(line.line, project, results, floor), name: line.name };
    return { section: results.section && asOnPlan(results.section), name: null };
  }, [line, project, results, floor]);
}

interface DrawingProps {
  readonly section: SectionLine;
  readonly name: string | null;
  readonly width: number;
  readonly height: number;
}

function SectionDrawing({ section, name, width, height }: DrawingProps) {
  const project = useApp(shownProject);
  const floor = useApp(shownFloor);
  const dragging = useApp((state) => state.floorDrag !== null);
  const building = sectionBuilding(project, section, floor);
  const kept = useRef<SectionFit | undefined>(undefined);
  const room = { width, height, padding, above };
  const fit = fitSection(sectionRange(section, building), room, dragging ? kept.current : undefined);
  kept.current = fit;
  const paths = sectionPaths(section, fit, building);
  const way = sectionWay(section, project.lot.north);
  const what = name === null ? `Section ${way} through the building` : `Along ${name}, ${way}`;
  const words = `${what} · ${exaggerationWords(fit.exaggeration)}`;
  const letter = name === null ? null : sectionLetter(name);
  return (
    <>
      <p className="section-title soft">{words}</p>
      <SectionEnds ends={letter === null ? sectionEnds(section, project.lot.north) : [letter, letter]} />
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={words}
        onPointerMove={(event) => showOnPlan(event, section, fit)}
        onPointerLeave={() => setPointer(null)}
      >
        <path className="section-earth" d={paths.earth} />
        <path className="section-fill" d={paths.fill} />
        <path className="section-cut" d={paths.cut} />
        <path className="section-existing" d={paths.existing} />
        <path className="section-guessed" d={paths.guessed} />
        <path className="section-finished" d={paths.finished} />
        {building ? (
          <SectionWalls building={building} fit={fit} floorText={floorText(project, building.floor)} />
        ) : null}
        <SectionPointer section={section} fit={fit} />
      </svg>
    </>
  );
}

/** The letters that also stand at the ends of the line on the plan. */
function SectionEnds({ ends }: { ends: readonly [string, string] }) {
  return (
    <>
      <b className="section-end left">{ends[0]}</b>
      <b className="section-end right">{ends[1]}</b>
    </>
  );
}

function sectionBuilding(
  project: Project,
  section: SectionLine,
  floor: number | null,
): SectionBuilding | null {
  if (!project.building || !section.building || floor === null) return null;
  const [from, to] = section.building;
  const topOfWall = floor + project.building.topOfWallAboveFloor;
  return { from, to, floor, topOfWall, foundation: project.building.foundation };
}

function floorText({ display }: Project, floor: number): string {
  return `floor ${formatLength(floor, display.length, roundingFor(display.length, display))}`;
}

/** The place on the plan under the pointer on the section. */
function showOnPlan(event: PointerEvent<SVGSVGElement>, section: SectionLine, fit: SectionFit): void {
  const x = event.clientX - event.currentTarget.getBoundingClientRect().left;
  const share = (x - fit.left) / fit.scale / fit.range.length;
  if (share < 0 || share > 1) {
    setPointer(null);
    return;
  }
  const { start, end } = section;
  setPointer([start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share]);
}

/** Where the pointer on the plan lies along the section, when it is near it. */
function SectionPointer({ section, fit }: { section: SectionLine; fit: SectionFit }) {
  const pointer = useApp((state) => state.pointer);
  if (!pointer) return null;
  const { start, end } = section;
  const [dx, dy] = [end[0] - start[0], end[1] - start[1]];
  const length = Math.hypot(dx, dy);
  const along = ((pointer[0] - start[0]) * dx + (pointer[1] - start[1]) * dy) / length;
  const off = Math.abs((pointer[0] - start[0]) * dy - (pointer[1] - start[1]) * dx) / length;
  if (along < 0 || along > length || off > length / 40) return null;
  const x = sectionX(fit, along);
  return <path className="section-pointer" d={`M${x} ${sectionY(fit, fit.range.high) - 8}V${fit.height}`} />;
}
