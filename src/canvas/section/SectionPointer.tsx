/** One pointer for plan and section: on either it shows where the other is looked at, and the figures there. */
import type { PointerEvent } from "react";
import { nearestOnPolyline, type Point, pointAlong } from "../../geometry";
import type { SectionLine } from "../../solve/results";
import { setPointer } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { type SectionFigures, sectionFigures } from "./sectionFigures";
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
  const looked = useLookedAt({ section, line, fit });
  if (!looked) return null;
  const x = sectionX(fit, looked.along);
  return (
    <g className="section-at">
      <path className="section-pointer" d={`M${x} ${sectionY(fit, fit.range.high) - 8}V${fit.height}`} />
      <circle cx={x} cy={sectionY(fit, looked.existing)} r={2.6} />
      <circle cx={x} cy={sectionY(fit, looked.finished)} r={3.2} className="section-at-finished" />
    </g>
  );
}

/** The figures there, at a place of their own, where they cover nothing. */
export function SectionReadOut(props: PointerProps) {
  const looked = useLookedAt(props);
  return (
    <p className="section-read-out" data-testid="section-at">
      {looked?.words}
    </p>
  );
}

function useLookedAt({ section, line, fit }: PointerProps): (SectionFigures & { along: number }) | null {
  const pointer = useApp((state) => state.pointer);
  const display = useApp((state) => shownProject(state).display);
  if (!pointer) return null;
  const nearest = nearestOnPolyline(line, pointer[0], pointer[1]);
  const { length } = fit.range;
  // Beside an end the plan's pointer is looking at something else.
  if (nearest.distance > length / 2 || nearest.along < 0 || nearest.along > length) return null;
  const found = sectionFigures(section, nearest.along, display);
  return found && { ...found, along: nearest.along };
}
