/** The walls in elevation, below the plan: each side unrolled, with the ground, the footing and its steps. */
import { useMemo, useRef } from "react";
import { type ElevationStrip, elevationStrip } from "../../drawing";
import type { FoundationResult } from "../../solve/results";
import type { Notation } from "../notation";
import { useNotation, useProject, useResults } from "../useProject";
import { LinesKey } from "./LinesKey";
import { MarksSvg, pxPerMm, type SvgScale } from "./MarksSvg";
import { useBox } from "./useBox";
import "./foundation.css";

/** Smaller than this nothing is told apart: then the strip is scrolled, px for a metre. */
const smallest = 24;
const largest = 120;

export function Elevations() {
  const result = useResults((results) => results.foundation);
  const frostDepth = useProject(({ building }) => building?.foundation.frostDepth ?? null);
  const notation = useNotation();
  const ref = useRef<HTMLElement>(null);
  const { width, height } = useBox(ref);
  const drawn = useMemo(
    () => (result && width > 80 && height > 40 ? fitted(result, frostDepth, notation, width, height) : null),
    [result, frostDepth, notation, width, height],
  );
  return (
    <section className="elevations" aria-label="Walls in elevation">
      <div className="elevations-head">
        <LinesKey frost={frostDepth !== null} />
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="elevations-box" ref={ref} aria-label="Drawing of the walls" tabIndex={0}>
        {drawn ? (
          <svg
            width={Math.max(width, drawn.across)}
            height={height}
            role="img"
            aria-label={told(drawn.strip, result, notation)}
          >
            <MarksSvg marks={drawn.strip.marks} scale={drawn.scale} />
          </svg>
        ) : (
          <p className="section-empty soft">The walls show here once there are shots and a building.</p>
        )}
      </section>
    </section>
  );
}

/** The largest scale at which the strip fits; texts and gaps keep their size, so it is found in a few rounds. */
function fitted(
  result: FoundationResult,
  frostDepth: number | null,
  notation: Notation,
  width: number,
  height: number,
): { strip: ElevationStrip; scale: SvgScale; across: number } {
  const stripAt = (pxPerMetre: number) =>
    elevationStrip(result, { metresPerMm: pxPerMm / pxPerMetre, figures: notation, frostDepth });
  let pxPerMetre = 30;
  let strip = stripAt(pxPerMetre);
  for (let round = 0; round < 3; round++) {
    const { minX, maxX, minY, maxY } = strip.bounds;
    const by = Math.min(width / ((maxX - minX) * pxPerMetre), height / ((maxY - minY) * pxPerMetre));
    pxPerMetre = Math.min(largest, Math.max(smallest, pxPerMetre * by));
    strip = stripAt(pxPerMetre);
  }
  const { minX, maxX, minY, maxY } = strip.bounds;
  const across = (maxX - minX) * pxPerMetre;
  const left = Math.max(0, (width - across) / 2);
  const top = Math.max(0, (height - (maxY - minY) * pxPerMetre) / 2);
  return { strip, across, scale: { pxPerMetre, left, top, minX, maxY } };
}

/** For people who listen: what each side shows at its least and most. */
function told(strip: ElevationStrip, result: FoundationResult | null, notation: Notation): string {
  const sides = strip.starts.flatMap(({ wall }) => {
    const side = result?.walls[wall];
    return side
      ? [
          `side ${side.name} shows ${notation.length(side.leastShowing)} to ${notation.length(side.mostShowing)}`,
        ]
      : [];
  });
  return `Walls in elevation: ${sides.join("; ")}.`;
}
