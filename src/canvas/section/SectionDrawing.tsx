/** One section, drawn: its grid with figures, the two grounds and what lies between them, the building, the pointer. */
import { useRef } from "react";
import { useStore } from "zustand";
import type { Project } from "../../document";
import { sectionLetter } from "../../drawing/section-lines";
import type { SectionLine } from "../../solve/results";
import type { SectionEarth } from "../../solve/section-earth";
import { earthAlong } from "../../solve/standard-sections";
import { shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatArea, formatLength, roundingFor } from "../../units";
import { useTextSize } from "../useTextSize";
import { SectionGrid } from "./SectionGrid";
import { leaveSection, pointOnSection, SectionPointer, SectionReadOut } from "./SectionPointer";
import { SectionWalls } from "./SectionWalls";
import { type ShownSection, sectionChoice } from "./sectionChoice";
import {
  exaggerationSign,
  exaggerationWords,
  fitSection,
  type SectionBuilding,
  type SectionFit,
  sectionEnds,
  sectionPaths,
  sectionRange,
  sectionWay,
} from "./sectionShapes";

/**
 * Room for words of usual size, px: at the sides for the heights' figures, above for what is read out and below that for
 * the floor's label, below for the lengths' figures.
 */
const usualRoom = { padding: 58, above: 38, below: 22 } as const;

interface DrawingProps {
  readonly shown: ShownSection;
  readonly width: number;
  readonly height: number;
}

export function SectionDrawing({ shown, width, height }: DrawingProps) {
  const { section, line, name, over, unmarked } = shown;
  const project = useApp(shownProject);
  const floor = useApp(shownFloor);
  const dragging = useApp((state) => state.floorDrag !== null);
  const trueHeights = useStore(sectionChoice, (choice) => choice.trueHeights);
  const holes = useApp(({ results: { foundation } }) =>
    foundation?.kind === "posts" ? foundation.heights.lowestBottom : null,
  );
  const building = sectionBuilding(project, section, floor, holes);
  const kept = useRef<SectionFit | undefined>(undefined);
  const words = useTextSize();
  const room = {
    width,
    height,
    padding: usualRoom.padding * words,
    above: usualRoom.above * words,
    below: usualRoom.below * words,
  };
  const keep = dragging ? kept.current : undefined;
  const fit = fitSection(sectionRange(section, building), room, keep, trueHeights ? 1 : Infinity);
  kept.current = fit;
  const done = earthAlong(section, project, floor);
  const paths = sectionPaths(section, fit, building, done);
  const way = sectionWay(section, project.lot.north);
  const what =
    name === null
      ? `Section ${way} through the building`
      : over
        ? `Across ${name}, ${lengthText(project, over.distance)} from the road`
        : `Along ${name}, ${way}`;
  const spoken = `${what} · ${exaggerationWords(fit.exaggeration)}`;
  const letter = name === null ? null : sectionLetter(name);
  const winds = sectionEnds(section, project.lot.north);
  const [left, right] = unmarked || letter === name || letter === null ? winds : [letter, letter];
  return (
    <>
      <p className="section-title soft" title={spoken}>
        <span className="section-name">{what}</span>
        <span className="section-stretch">&nbsp;· {exaggerationWords(fit.exaggeration)}</span>
        <span className="section-stretch short" aria-hidden="true">
          {exaggerationSign(fit.exaggeration)}
        </span>
      </p>
      <SectionReadOut section={section} line={line} fit={fit} />
      <p className="section-areas soft">{areasText(project, done)}</p>
      <b className="section-end left">{left}</b>
      <b className="section-end right">{right}</b>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={spoken}
        onPointerMove={(event) => pointOnSection(event, line, fit)}
        onPointerLeave={leaveSection}
      >
        <path className="section-earth" d={paths.earth} />
        <path className="section-fill" d={paths.fill} />
        <path className="section-cut" d={paths.cut} />
        <SectionGrid fit={fit} />
        <path className="section-stripped" d={paths.stripped} />
        <path className="section-existing" d={paths.existing} />
        <path className="section-guessed" d={paths.guessed} />
        <path className="section-finished" d={paths.finished} />
        {building ? (
          <SectionWalls building={building} fit={fit} floorText={floorText(project, building.floor)} />
        ) : null}
        <SectionPointer section={section} line={line} fit={fit} />
      </svg>
    </>
  );
}

function areasText({ display }: Project, { cut, fill }: SectionEarth): string {
  const area = (m2: number) => formatArea(m2, display.area);
  return `in it ${area(cut)} of cut, ${area(fill)} of fill`;
}

function sectionBuilding(
  project: Project,
  section: SectionLine,
  floor: number | null,
  holes: number | null,
): SectionBuilding | null {
  if (!project.building || !section.building || floor === null) return null;
  const [from, to] = section.building;
  const topOfWall = floor + project.building.topOfWallAboveFloor;
  return { from, to, floor, topOfWall, foundation: project.building.foundation, holes };
}

function floorText(project: Project, floor: number): string {
  return `floor ${lengthText(project, floor)}`;
}

function lengthText({ display }: Project, m: number): string {
  return formatLength(m, display.length, roundingFor(display.length, display));
}
