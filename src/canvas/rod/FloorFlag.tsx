/** The floor on the rod: a flag to drag, to move by keys, or to type over. */
import { type FormEvent, type KeyboardEvent, useRef, useState } from "react";
import { buildingEdits, type Display } from "../../document";
import { nudgeFloor, tryRun } from "../../store/actions";
import { formatLength, parseLength, roundingFor } from "../../units";
import { useFloorGrip } from "./floorGrip";
import { floorMoveLabel, floorSteps } from "./floorSteps";
import { type RodRule, rodY } from "./rodScale";

/** For words of usual size, px. */
export const flagHeight = 40;

export interface FloorFlagProps {
  readonly floor: number;
  /** The floor of the project, before the drag. */
  readonly from: number;
  readonly display: Display;
  readonly rule: RodRule;
  readonly width: number;
  /** What a screen reader says. */
  readonly spoken: string;
  /** How much larger than usual words are. */
  readonly words: number;
  readonly band: { readonly low: number | null; readonly high: number | null; readonly empty: boolean };
}

/** What the flag says: the floor, and where it breaks a limit on which side. */
function flagWord(floor: number, { low, high, empty }: FloorFlagProps["band"]): string {
  if (empty) return "floor";
  if (low !== null && floor < low - 1e-6) return "too low";
  return high !== null && floor > high + 1e-6 ? "too high" : "floor";
}

export function FloorFlag(props: FloorFlagProps) {
  const { floor, from, display, rule, width, spoken, words, band } = props;
  const tall = flagHeight * words;
  const word = flagWord(floor, band);
  const [typing, setTyping] = useState(false);
  const steps = floorSteps(display);
  const text = formatLength(floor, display.length, roundingFor(display.length, display));
  const top = rodY(rule, floor) - tall / 2;
  const grip = useFloorGrip({
    rule,
    from,
    step: steps.hand,
    label: () => floorMoveLabel(floor - from, display) ?? undefined,
    clicked: () => setTyping(true),
  });

  function key(event: KeyboardEvent): void {
    if (event.key === "Escape" && grip.held()) {
      grip.giveUp();
      event.stopPropagation();
    } else if (event.key === "Enter") {
      // Else the same key would also send what is typed, before anything is.
      event.preventDefault();
      setTyping(true);
    } else if (/^[0-9.,]$/.test(event.key)) setTyping(true);
    const by = keyStep(event, floor, band, steps);
    if (by === null) return;
    event.preventDefault();
    event.stopPropagation();
    const label = floorMoveLabel(by, display);
    if (label) nudgeFloor(by, label);
  }

  return (
    <div
      className={word === "floor" ? "rod-flag" : "rod-flag outside"}
      style={{ transform: `translateY(${top.toFixed(2)}px)` }}
    >
      <div
        className="rod-handle"
        data-testid="rod-handle"
        role="slider"
        tabIndex={0}
        aria-label="Floor height"
        aria-orientation="vertical"
        aria-valuemin={round(rule.range.low)}
        aria-valuemax={round(rule.range.high)}
        aria-valuenow={round(floor)}
        aria-valuetext={spoken}
        onPointerDown={grip.press}
        onPointerMove={grip.move}
        onPointerUp={grip.letGo}
        onPointerCancel={grip.giveUp}
        onKeyDown={key}
      >
        <svg width={width} height={tall} aria-hidden="true">
          <path d={`M1 1 H${width - 15} L${width - 1} ${tall / 2} L${width - 15} ${tall - 1} H1 Z`} />
        </svg>
        <span className="rod-flag-word">{word}</span>
        <span
          className={`rod-flag-value${text.length > 11 ? " longer" : text.length > 8 ? " long" : ""}`}
          data-testid="rod-value"
        >
          {text}
        </span>
      </div>
      {typing ? <TypedFloor text={text} display={display} close={() => setTyping(false)} /> : null}
    </div>
  );
}

function round(z: number): number {
  return Math.round(z * 10000) / 10000;
}

/** How far a key moves the floor, m; null when the key is none of the slider's. */
function keyStep(
  event: KeyboardEvent,
  floor: number,
  band: FloorFlagProps["band"],
  steps: ReturnType<typeof floorSteps>,
): number | null {
  const arrow = event.shiftKey ? steps.coarse : steps.fine;
  switch (event.key) {
    case "ArrowUp":
    case "ArrowRight":
      return arrow;
    case "ArrowDown":
    case "ArrowLeft":
      return -arrow;
    case "PageUp":
      return steps.page;
    case "PageDown":
      return -steps.page;
    case "Home":
      return band.low === null ? null : band.low - floor;
    case "End":
      return band.high === null ? null : band.high - floor;
    default:
      return null;
  }
}

/** The height, typed over. */
function TypedFloor({ text, display, close }: { text: string; display: Display; close: () => void }) {
  const [typed, setTyped] = useState(text);
  const [fault, setFault] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);

  function take(event: FormEvent): void {
    event.preventDefault();
    const read = parseLength(typed, display.length);
    const edit = read.ok
      ? tryRun(buildingEdits.setFloor, { floor: read.m })
      : { ok: false as const, why: read.message };
    if (edit.ok) close();
    else {
      setFault(edit.why);
      // What is typed next takes its place.
      field.current?.select();
    }
  }

  return (
    <form className="rod-typed" onSubmit={take}>
      <input
        ref={field}
        value={typed}
        // biome-ignore lint/a11y/noAutofocus: it appears because the person clicked to type
        autoFocus
        aria-label="Floor height"
        aria-invalid={fault !== null}
        onFocus={(event) => event.target.select()}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={close}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === "Escape") close();
        }}
      />
      {fault ? <p role="alert">{fault}</p> : null}
    </form>
  );
}
