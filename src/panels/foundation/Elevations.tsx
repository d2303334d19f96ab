/** The walls in elevation, below the plan: each side unrolled, with the ground, the footing and its steps. */
import { useMemo, useRef } from "react";
import { type ElevationStrip, elevationRows } from "../../drawing";
import type { FoundationResult } from "../../solve/results";
import { useApp } from "../../store/useApp";
import type { Notation } from "../notation";
import { useNotation, useProject, useResults } from "../useProject";
import { LinesKey } from "./LinesKey";
import { MarksSvg, pxPerMm } from "./MarksSvg";
import { useBox } from "./useBox";
import "./foundation.css";

/** Smaller than this nothing is told apart: then the sides stand in rows, which are scrolled, px for a metre. */
const smallest = 24;
const largest = 120;

export function Elevations() {
  const result = useResults((results) => results.foundation);
  const frostDepth = useProject(({ building }) => building?.foundation.frostDepth ?? null);
  const notation = useNotation();
  const ref = useRef<HTMLElement>(null);
  const { width, height } = useBox(ref);
  const textSize = useApp(({ preferences }) => preferences.textSize);
  const drawn = useMemo(
    () =>
      result && width > 80 && height > 40
        ? fitted(result, frostDepth, notation, width, height, textSize)
        : null,
    [result, frostDepth, notation, width, height, textSize],
  );
  return (
    <section className="elevations" aria-label="Walls in elevation">
      <div className="elevations-head">
        <LinesKey frost={frostDepth !== null} />
        {drawn && highOf(drawn) > height ? (
          <span className="soft small">scroll down for more sides</span>
        ) : null}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="elevations-box" ref={ref} aria-label="Drawing of the walls" tabIndex={0}>
        {drawn ? (
          drawn.rows.map((row) => (
            <ElevationRow key={row.starts[0]?.wall} row={row} drawn={drawn} result={result} width={width} />
          ))
        ) : (
          <p className="section-empty soft">The walls show here once there are shots and a building.</p>
        )}
      </section>
    </section>
  );
}

interface Drawn {
  readonly rows: readonly ElevationStrip[];
  readonly pxPerMetre: number;
  readonly notation: Notation;
  /** Least height of a row, px. */
  readonly least: number;
}

interface RowProps {
  readonly row: ElevationStrip;
  readonly drawn: Drawn;
  readonly result: FoundationResult | null;
  readonly width: number;
}

function ElevationRow({ row, drawn, result, width }: RowProps) {
  const { pxPerMetre, notation, least } = drawn;
  const { minX, maxX, minY, maxY } = row.bounds;
  const high = (maxY - minY) * pxPerMetre;
  const height = Math.max(least, Math.ceil(high));
  const left = Math.max(0, (width - (maxX - minX) * pxPerMetre) / 2);
  const scale = { pxPerMetre, left, top: (height - high) / 2, minX, maxY };
  return (
    <svg width={width} height={height} role="img" aria-label={told(row, result, notation)}>
      <MarksSvg marks={row.marks} scale={scale} />
    </svg>
  );
}

/**
 * The largest scale at which all sides fit in one row, else in rows of the page's width that are scrolled down; texts and
 * gaps keep their size, so it is found in a few rounds.
 */
function fitted(
  result: FoundationResult,
  frostDepth: number | null,
  notation: Notation,
  width: number,
  height: number,
  textSize: number,
): Drawn {
  const rowsAt = (pxPerMetre: number, most: number) => {
    const metresPerMm = (pxPerMm * textSize) / pxPerMetre;
    return elevationRows(result, { metresPerMm, figures: notation, frostDepth }, most);
  };
  const into = (rows: readonly ElevationStrip[], high: number) =>
    Math.min(
      ...rows.map(({ bounds }) =>
        Math.min(width / (bounds.maxX - bounds.minX), high / (bounds.maxY - bounds.minY)),
      ),
    );
  let pxPerMetre = 30;
  for (let round = 0; round < 3; round++)
    pxPerMetre = Math.min(largest, into(rowsAt(pxPerMetre, Number.POSITIVE_INFINITY), height));
  if (pxPerMetre >= smallest) {
    const rows = rowsAt(pxPerMetre, Number.POSITIVE_INFINITY);
    return { rows, pxPerMetre, notation, least: height };
  }
  // A side that alone is wider than the page is drawn as small as it must be.
  pxPerMetre = smallest;
  for (let round = 0; round < 3; round++)
    pxPerMetre = Math.min(smallest, into(rowsAt(pxPerMetre, width / pxPerMetre), Number.POSITIVE_INFINITY));
  return { rows: rowsAt(pxPerMetre, width / pxPerMetre), pxPerMetre, notation, least: 0 };
}

/** Height of all rows, px. */
function highOf({ rows, pxPerMetre, least }: Drawn): number {
  return rows.reduce(
    (sum, { bounds }) => sum + Math.max(least, Math.ceil((bounds.maxY - bounds.minY) * pxPerMetre)),
    0,
  );
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
