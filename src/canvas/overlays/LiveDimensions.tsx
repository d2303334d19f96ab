/** Dimensions that can be clicked and typed over: of what is selected, and of what is being drawn. */
import type { ComponentProps } from "react";
import { useStore } from "zustand";
import type { Edit, Point, Project } from "../../document";
import { openPlanMenu, tryRun } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { capturePointer } from "../capture";
import { type ScreenBox, writtenBoxes } from "../scene/written";
import { liveDimensions } from "../select/liveDimensions";
import { machine, toolRun } from "../stage/toolRun";
import { lengthWords } from "../tools/liveMarks";
import { useTextSize } from "../useTextSize";
import { planView } from "../view/planView";
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
  /** The plan writes the figure itself: the field is only felt. */
  readonly bare: boolean;
  set(m: number): Edit;
}

/** About how large a figure is, px: a letter, its ends, its height. */
const figure = { letter: 6.6, ends: 12, height: 19 } as const;
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
  /** On the screen, px. */
  readonly x: number;
  readonly y: number;
}

/** The figures that can be seen and have room. */
function placed(shown: readonly Shown[], view: View, project: Project, words: number): Placed[] {
  const figures = shown.map(({ m, ends, off, bare }) => {
    const text = lengthWords(m, project);
    const width = text.length * figure.letter * words + figure.ends;
    return {
      ends: [toScreen(view, ends[0]), toScreen(view, ends[1])] as const,
      off,
      width,
      height: figure.height * words,
      fixed: bare,
    };
  });
  const handles = shown.flatMap(({ ends, off }) =>
    off === 0 ? [] : [...ends, middleOf(ends)].map((at) => handleBox(toScreen(view, at))),
  );
  return placeFigures(figures, view, { handles, words: writtenBoxes(view) }).flatMap((place, i) => {
    const dimension = shown[i] as Shown;
    return place ? [{ dimension, text: lengthWords(dimension.m, project), x: place[0], y: place[1] }] : [];
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

function Figure({ dimension, text, x, y }: Placed) {
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
        if (!bare) openPlanMenu({ x: event.clientX, y: event.clientY, at: middle });
      }}
    >
      {text}
    </button>
  );
}
