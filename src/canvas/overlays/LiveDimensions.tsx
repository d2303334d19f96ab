/** Dimensions that can be clicked and typed over: of what is selected, and of what is being drawn. */
import type { ComponentProps } from "react";
import { useStore } from "zustand";
import type { Door, Edit, Point, Project } from "../../document";
import { openPlanMenu, tryRun } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { capturePointer } from "../capture";
import { liveDimensions } from "../select/liveDimensions";
import { doorEdges } from "../select/places";
import { outlineCentre, wallOutward } from "../select/shape";
import { machine, toolRun } from "../stage/toolRun";
import { lengthWords } from "../tools/liveMarks";
import { planView } from "../view/planView";
import { toScreen, type View } from "../view/view";
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

/** A piece shorter than this can't be told from its figure, px. */
const leastPixels = 22;
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
  if (moving || shown.length === 0) return null;
  return (
    <div className="live-dimensions">
      {placed(shown, view, project).map((each) => (
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

/** Where along its piece a figure may stand, best first. */
const shares = [0.5, 0.3, 0.7];
/** Close beside its piece, where there is no more room, px. */
const nearOff = 11;
/** About how large the words in the middle of the building are, px: its size and its diagonals, or its area. */
const named = { width: 92, height: 28 } as const;
/** About how a door's name stands inside its wall, px. */
const doorName = { off: 9, long: 64, high: 12 } as const;

interface Placed {
  readonly dimension: Shown;
  readonly text: string;
  /** On the screen, px. */
  readonly x: number;
  readonly y: number;
}

/** The figures that can be seen and have room: of two that would cover each other the longer piece's stays. */
function placed(shown: readonly Shown[], view: View, project: Project): Placed[] {
  const boxes: Box[] = writtenIn(project, view);
  const found: Placed[] = [];
  const long = ({ ends: [a, b] }: Shown) => Math.hypot(b[0] - a[0], b[1] - a[1]);
  for (const dimension of [...shown].sort((one, other) => long(other) - long(one))) {
    const { ends, off, m } = dimension;
    const [ax, ay] = toScreen(view, ends[0]);
    const [bx, by] = toScreen(view, ends[1]);
    const pixels = Math.hypot(bx - ax, by - ay);
    if (pixels < leastPixels) continue;
    const text = lengthWords(m, project);
    const width = text.length * figure.letter + figure.ends;
    // Left of the way as seen on the screen, where y runs down; a wide figure stands farther off an upright piece.
    const [left, up] = [(by - ay) / pixels, -(bx - ax) / pixels];
    const reachOf = (by: number) => by + Math.sign(by) * Math.abs(left) * (width / 2 - figure.height / 2);
    const isFree = ([x, y]: readonly [number, number]) =>
      x > 0 &&
      y > 0 &&
      x < view.width &&
      y < view.height &&
      !boxes.some(
        (box) =>
          Math.abs(box.x - x) < (box.width + width) / 2 &&
          Math.abs(box.y - y) < (box.height + figure.height) / 2,
      );
    // What is being drawn has its figures in the middle.
    const offsets = dimension.bare ? [off] : [off, Math.sign(off) * nearOff, -off];
    const place = offsets
      .flatMap((by) => (dimension.bare ? [0.5] : shares).map((t) => [t, reachOf(by)] as const))
      .map(([t, reach]) => [ax + (bx - ax) * t + left * reach, ay + (by - ay) * t + up * reach] as const)
      .find(isFree);
    if (!place) continue;
    const [x, y] = place;
    boxes.push({ x, y, width, height: figure.height });
    found.push({ dimension, text, x, y });
  }
  return found;
}

/** On the screen about its middle, px. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is written in the building: its size in the middle, and each door's name inside its wall. */
function writtenIn({ building }: Project, view: View): Box[] {
  if (!building) return [];
  const [x, y] = toScreen(view, outlineCentre(building.outline));
  return [{ x, y, ...named }, ...building.doors.flatMap((door) => doorNameBox(building.outline, door, view))];
}

function doorNameBox(outline: readonly Point[], door: Door, view: View): Box[] {
  const outward = wallOutward(outline, door.wall);
  const edges = doorEdges(outline, door);
  if (!outward || !edges) return [];
  const [ax, ay] = toScreen(view, edges[0]);
  const [bx, by] = toScreen(view, edges[1]);
  const [c, s] = [Math.cos(view.angle), Math.sin(view.angle)];
  const [out, up] = [outward[0] * c - outward[1] * s, outward[0] * s + outward[1] * c];
  const isLevel = Math.abs(up) > Math.abs(out);
  return [
    {
      x: (ax + bx) / 2 - out * doorName.off,
      y: (ay + by) / 2 + up * doorName.off,
      width: isLevel ? doorName.long : doorName.high,
      height: isLevel ? doorName.high : doorName.long,
    },
  ];
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
  const middle: Point = [(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2];
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
