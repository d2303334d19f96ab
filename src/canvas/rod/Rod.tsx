/** The rod: a vertical scale with the ground at each corner, the heights the limits allow, and the floor to drag. */
import { useMemo, useRef } from "react";
import "../canvas.css";
import "./rod.css";
import { present } from "../../document";
import { shownFloor, shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { formatLength, roundingFor } from "../../units";
import { useSize } from "../useSize";
import { useTextSize } from "../useTextSize";
import { Band } from "./Band";
import { FloorFlag, flagHeight } from "./FloorFlag";
import { rodBand, rodTicks } from "./rodMarks";
import { nearEnds, nextRange, type RodRange, rodY } from "./rodScale";
import { floorInWords } from "./rodWords";
import { Scale } from "./Scale";
import { Ticks } from "./Ticks";

/** Layout across, px, for words of usual size: labels and flag, the scale, then the band with its names. */
const usual = { scaleX: 72, scaleWidth: 24 } as const;
const bandGap = 3;
const flagLeft = 4;
/** Below the scale, for the words that stand there while there is no floor, px. */
const wordsRoom = 44;

export function Rod() {
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(box);
  return (
    <section className="rod" aria-label="Floor height">
      <div className="rod-box" ref={box}>
        {height > 80 ? <RodDrawing width={width} height={height} /> : null}
      </div>
    </section>
  );
}

function RodDrawing({ width, height: whole }: { width: number; height: number }) {
  const words = useTextSize();
  const scaleX = usual.scaleX * words;
  const scaleWidth = usual.scaleWidth * words;
  const bandX = scaleX + scaleWidth + bandGap;
  const results = useApp((state) => state.results);
  const project = useApp(shownProject);
  const floor = useApp(shownFloor);
  const dragging = useApp((state) => state.floorDrag !== null);
  const from = useApp((state) => present(state.history).building?.floor ?? null);
  const height = floor === null || from === null ? whole - wordsRoom * words : whole;
  const { display } = project;
  const length = (m: number) => formatLength(m, display.length, roundingFor(display.length, display));
  const ticks = useMemo(() => rodTicks(project, results), [project, results]);
  const band = useMemo(() => rodBand(results), [results]);
  const heights = ticks.map(({ z }) => z);
  const range = useSteadyRange(
    [...heights, ...nearEnds([band.low, band.high], floor === null ? heights : [...heights, floor])],
    floor,
    display.length,
    dragging,
  );
  const rule = { range, height };
  const flagY = floor === null ? null : rodY(rule, floor);
  const halfFlag = (flagHeight * words) / 2;
  const flag = flagY === null ? null : { from: flagY - halfFlag - 2, to: flagY + halfFlag + 2 };
  return (
    <>
      <svg className="rod-drawing" width={width} height={height} aria-hidden="true">
        <Scale
          range={range}
          height={height}
          notation={display.length}
          x={scaleX}
          width={scaleWidth}
          words={words}
        />
        <Band
          band={band}
          range={range}
          height={height}
          x={bandX}
          room={width - bandX}
          words={words}
          margin={floor === null ? null : (end) => length(Math.abs(end - floor))}
        />
        <Ticks ticks={ticks} range={range} height={height} x={scaleX} flag={flag} words={words} />
        {flagY === null ? null : (
          <path className="rod-floor-line" d={`M${scaleX} ${flagY.toFixed(2)}H${bandX + 10}`} />
        )}
      </svg>
      {floor === null || from === null ? (
        <p className="rod-empty soft">Draw the building to set its floor.</p>
      ) : (
        <FloorFlag
          floor={floor}
          from={from}
          display={display}
          rule={rule}
          width={scaleX - flagLeft}
          spoken={floorInWords(floor, results.corners, band, display)}
          words={words}
          band={band}
        />
      )}
    </>
  );
}

/** A range that doesn't jump under the hand. */
function useSteadyRange(
  heights: readonly number[],
  floor: number | null,
  notation: Parameters<typeof nextRange>[3],
  dragging: boolean,
): RodRange {
  const shown = useRef<{ readonly range: RodRange; readonly notation: string } | null>(null);
  const before = shown.current?.notation === notation ? shown.current.range : null;
  const range = nextRange(before, heights, floor, notation, dragging);
  shown.current = { range, notation };
  return range;
}
