/** Dimensions that can be clicked and typed over: of what is selected, and of what is being drawn. */
import type { ComponentProps } from "react";
import { useStore } from "zustand";
import type { Edit, Point, Project } from "../../document";
import { openPlanMenu, tryRun } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { capturePointer } from "../capture";
import { middleBox, type ScreenBox, writtenBoxes } from "../scene/written";
import { liveDimensions } from "../select/liveDimensions";
import { machine, toolRun } from "../stage/toolRun";
import { lengthWords } from "../tools/liveMarks";
import { useTextSize } from "../useTextSize";
import { planView } from "../view/planView";
import { takenBoxes } from "../view/slots";
import { toScreen, type View } from "../view/view";
import { placeFigures } from "./placeFigures";
import { toPlan } from "./ReadingCard";

interface Shown {
  readonly key: string;
  readonly label: string;
  readonly m: number;
  readonly ends: readonly [Point, Point];
  /** Pixels to the left of the way between the ends. */
  readonly off: number;
  /** To what it goes, in words that stand after the figure, the longest first. */
  readonly to?: readonly string[];
  /** The plan writes the figure itself: the field is only felt. */
  readonly bare: boolean;
  set(m: number): Edit;
}

/** About how large a figure is, px: a letter, its ends, its height, the sign before it. */
const figure = { letter: 6.6, ends: 12, height: 19, sign: 15 } as const;
const offs = { left: 17, right: -17, on: 0 } as const;
/** Where the figures of what is being drawn stand beside their piece, px. */
const drawnOff = 11;

export function LiveDimensions() {
  const view = useStore(planView, (state) => state.view);
  const moving = useStore(planView, (state) => state.moving);
  const shown = useShown();
  const project = useApp(shownProject);
  const words = useTextSize();
  if (moving || shown.length === 0) return null;
  return (
    <div className="live-dimensions">
      {placed(shown, view, project, words).map((each) => (
        <Figure key={each.dimension.key} {...each} />
      ))}
    </div>
  );
}

function useShown(): readonly Shown[] {
  const project = useApp(shownProject);
  const dragged = useApp((state) => state.preview !== null);
  const selection = useApp((state) => state.selection);
  const selecting = useApp((state) => state.tool === "select");
  const drawn = useStore(toolRun, ({ state }) => state.dimensions);
  const handles = useStore(toolRun, ({ state }) => state.handles === true);
  if (drawn)
    return drawn.map(({ key, label, m, ends }) => ({
      key,
      label,
      m,
      ends,
      off: drawnOff,
      bare: true,
      set: (to) => machine().setDimension(key, to),
    }));
  if (!selecting || !handles || dragged) return [];
  return liveDimensions(project, selection).map(({ side, change, ...rest }) => ({
    ...rest,
    off: offs[side],
    bare: false,
    set: (to) => tryRun({ name: "dimension.set", run: change }, to),
  }));
}

interface Placed {
  readonly dimension: Shown;
  readonly text: string;
  /** Words after it; "" where there is no room for any. */
  readonly to: string;
  /** On the screen, px. */
  readonly x: number;
  readonly y: number;
}

/** The figures that can be seen and have room. */
function placed(shown: readonly Shown[], view: View, project: Project, words: number): Placed[] {
  const figures = shown.map(({ m, ends, off, to, bare }) => {
    const text = lengthWords(m, project);
    const widthOf = (letters: number, more = 0) => letters * figure.letter * words + figure.ends + more;
    const sign = to ? figure.sign * words : 0;
    return {
      ends: [toScreen(view, ends[0]), toScreen(view, ends[1])] as const,
      off,
      width: widthOf(text.length, sign),
      ...(to && { wider: to.map((each) => widthOf(text.length + 1 + each.length, sign)) }),
      height: figure.height * words,
      fixed: bare,
    };
  });
  const handles = shown.flatMap(({ ends, off }) =>
    off === 0 ? [] : [...ends, middleOf(ends)].map((at) => handleBox(toScreen(view, at))),
  );
  const over = [...writtenBoxes(view), ...takenBoxes().map(middleBox)];
  return placeFigures(figures, view, { handles, words: over }).flatMap((place, i) => {
    const dimension = shown[i] as Shown;
    if (!place) return [];
    const to = place.form === null ? "" : (dimension.to?.[place.form] ?? "");
    return [{ dimension, text: lengthWords(dimension.m, project), to, x: place.at[0], y: place.at[1] }];
  });
}

function middleOf([a, b]: readonly [Point, Point]): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** About how large a handle is, px. */
const handle = 14;

function handleBox([x, y]: readonly [number, number]): ScreenBox {
  return { x, y, width: handle, height: handle };
}

/** How far a press may wander and still be a click, px. */
const clickReach = 4;

/**
 * What the hand does on a figure that is not a click belongs to the plan below: pointing, dragging, the wheel. A figure of
 * what is being drawn stays where it is while it is pointed at.
 */
function handOn(
  bare: boolean,
): Pick<ComponentProps<"button">, "onPointerDown" | "onPointerMove" | "onWheel"> {
  const give = (event: Event) => document.querySelector(".plan-stage")?.dispatchEvent(event);
  return {
    onPointerDown: ({ nativeEvent, currentTarget }) => {
      if (nativeEvent.button !== 0) return;
      pressed = nativeEvent;
      // The first step of a quick drag may already lie beyond the figure.
      capturePointer(currentTarget, nativeEvent.pointerId);
    },
    onPointerMove: ({ nativeEvent }) => {
      const held = (nativeEvent.buttons & 1) === 1 ? pressed : null;
      const far = held && Math.hypot(nativeEvent.x - held.x, nativeEvent.y - held.y) > clickReach;
      if (held && far) {
        pressed = null;
        give(new PointerEvent("pointerdown", held));
      }
      if (far || (!held && !bare)) give(new PointerEvent("pointermove", nativeEvent));
    },
    onWheel: ({ nativeEvent }) => give(new WheelEvent("wheel", nativeEvent)),
  };
}

/** The press that may still become a click on a figure. */
let pressed: PointerEvent | null = null;

function Figure({ dimension, text, to, x, y }: Placed) {
  const { label, m, ends, bare, set } = dimension;
  const middle = middleOf(ends);
  return (
    <button
      type="button"
      className={bare ? "live-dimension bare" : "live-dimension"}
      style={{ left: x, top: y }}
      aria-label={`${label}: ${text}. Type another length`}
      title={`${label}: click to type another length`}
      onClick={(event) => {
        const plan = event.currentTarget;
        const answer = (to: number) => {
          const edit = set(to);
          if (edit.ok) toPlan(plan);
          return edit;
        };
        toolRun.setState({ question: { at: middle, label, m, over: [x, y], answer } });
      }}
      {...handOn(bare)}
      onContextMenu={(event) => {
        event.preventDefault();
        // What is selected stays so: the menu is that of the thing whose length it is.
        if (!bare) openPlanMenu({ x: event.clientX, y: event.clientY, at: middle, of: "selection" });
      }}
    >
      {dimension.to ? <ToLine ends={ends} /> : null}
      {text}
      {to === "" ? null : <span className="live-dimension-to"> {to}</span>}
    </button>
  );
}

/** An arrow against a bar, as it goes on the screen: the figure tells how far it is to a line. */
function ToLine({ ends }: Pick<Shown, "ends">) {
  const view = useStore(planView, (state) => state.view);
  const [[ax, ay], [bx, by]] = [toScreen(view, ends[0]), toScreen(view, ends[1])];
  const degrees = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return (
    <svg className="live-dimension-sign" viewBox="-7 -7 14 14" aria-hidden="true">
      <path d="M-6 0 H3 M0 -3 L3.4 0 L0 3 M5.5 -5 V5" transform={`rotate(${degrees.toFixed(1)})`} />
    </svg>
  );
}
