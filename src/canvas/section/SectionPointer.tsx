/** One pointer for plan and section: on either it shows where the other is looked at, and the figures there. */
import type { PointerEvent } from "react";
import { nearestOnPolyline, type Point, pointAlong } from "../../geometry";
import type { SectionLine } from "../../solve/results";
import { setPointer } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { sectionFigures } from "./sectionFigures";
import { sectionSpot } from "./sectionOnPlan";
import { type SectionFit, sectionX, sectionY } from "./sectionShapes";

/** The place on the plan under the pointer on the section. */
export function pointOnSection(
  event: PointerEvent<SVGSVGElement>,
  line: readonly Point[],
  fit: SectionFit,
): void {
  const x = event.clientX - event.currentTarget.getBoundingClientRect().left;
  const along = (x - fit.left) / fit.scale;
  if (along < 0 || along > fit.range.length) {
    leaveSection();
    return;
  }
  const { at } = pointAlong(line, along);
  setPointer(at);
  sectionSpot.setState({ at });
}

export function leaveSection(): void {
  setPointer(null);
  sectionSpot.setState({ at: null });
}

interface PointerProps {
  readonly section: SectionLine;
  readonly line: readonly Point[];
  readonly fit: SectionFit;
}

/** Where the pointer is, or on the plan the place of the section nearest to it. */
export function SectionPointer({ section, line, fit }: PointerProps) {
  const pointer = useApp((state) => state.pointer);
  const display = useApp((state) => shownProject(state).display);
  if (!pointer) return null;
  const nearest = nearestOnPolyline(line, pointer[0], pointer[1]);
  const { length } = fit.range;
  // Beside an end the plan's pointer is looking at something else.
  if (nearest.distance > length / 2 || nearest.along < 0 || nearest.along > length) return null;
  const found = sectionFigures(section, nearest.along, display);
  if (!found) return null;
  const x = sectionX(fit, nearest.along);
  const late = nearest.along > length / 2;
  return (
    <g className="section-at" data-testid="section-at">
      <path className="section-pointer" d={`M${x} ${sectionY(fit, fit.range.high) - 8}V${fit.height}`} />
      <circle cx={x} cy={sectionY(fit, found.existing)} r={2.6} />
      <circle cx={x} cy={sectionY(fit, found.finished)} r={3.2} className="section-at-finished" />
      <text x={x + (late ? -8 : 8)} y={12} textAnchor={late ? "end" : "start"}>
        {found.words}
      </text>
    </g>
  );
}
