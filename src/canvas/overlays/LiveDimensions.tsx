/** Dimensions that can be clicked and typed over: of what is selected, and of what is being drawn. */
import { useStore } from "zustand";
import type { Edit, Point } from "../../document";
import { tryRun } from "../../store/actions";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { liveDimensions } from "../select/liveDimensions";
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

/** A piece shorter than this has no room for its figure, px. */
const leastPixels = 52;
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
      {shown.map((dimension) => (
        <Figure
          key={dimension.key}
          dimension={dimension}
          view={view}
          text={lengthWords(dimension.m, project)}
        />
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

function Figure({ dimension, view, text }: { dimension: Shown; view: View; text: string }) {
  const { label, m, ends, off, bare, set } = dimension;
  const [ax, ay] = toScreen(view, ends[0]);
  const [bx, by] = toScreen(view, ends[1]);
  const long = Math.hypot(bx - ax, by - ay);
  if (long < leastPixels) return null;
  // Left of the way as seen on the screen, where y runs down.
  const [x, y] = [(ax + bx) / 2 + ((by - ay) / long) * off, (ay + by) / 2 - ((bx - ax) / long) * off];
  if (x < 0 || y < 0 || x > view.width || y > view.height) return null;
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
      onWheel={({ nativeEvent }) =>
        document.querySelector("[data-testid=plan]")?.dispatchEvent(new WheelEvent("wheel", nativeEvent))
      }
    >
      {text}
    </button>
  );
}
