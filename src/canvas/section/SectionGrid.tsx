/** Lines at round heights and lengths behind the section, with their figures. */
import { memo } from "react";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { sectionGrid } from "./sectionGridLines";
import { type SectionFit, sectionX, sectionY } from "./sectionShapes";

export const SectionGrid = memo(function SectionGrid({ fit }: { readonly fit: SectionFit }) {
  const display = useApp((state) => shownProject(state).display);
  const mark = useApp((state) => state.results.survey.mark?.height ?? null);
  const { heights, lengths } = sectionGrid(fit, display, mark);
  const [left, right] = [sectionX(fit, 0), sectionX(fit, fit.range.length)];
  const top = sectionY(fit, fit.range.high) - 8;
  return (
    <g className="section-grid">
      {heights.map(({ at, text }) => {
        const y = sectionY(fit, at);
        return (
          <g key={at}>
            <path d={`M${left} ${y}H${right}`} />
            <text x={left - 6} y={y + 4} textAnchor="end">
              {text}
            </text>
          </g>
        );
      })}
      {lengths.map(({ at, text }) => {
        const x = sectionX(fit, at);
        return (
          <g key={at}>
            <path d={`M${x} ${top}V${fit.height}`} />
            <text x={x + 4} y={fit.height - 5}>
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
});
