/** The canvases of the plan, and the hand on them. */
import type Konva from "konva";
import { memo, type RefObject, useEffect, useRef } from "react";
import { Layer, Shape, Stage } from "react-konva";
import { useStore } from "zustand";
import { present } from "../../document";
import { guardDrawing } from "../../store/pickTool";
import { stakeGridStore } from "../../store/stakeGrid";
import type { AppState, ToolName } from "../../store/state";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { sectionShown, sectionSpot } from "../section/sectionOnPlan";
import { isOnThing } from "../snap/snap";
import type { ToolState } from "../tools/tool";
import {
  fitPlan,
  placesDrawnBy,
  planView,
  resizePlan,
  setPlanTurn,
  showGrowth,
  showPlace,
  showWhole,
  slotsChanged,
} from "../view/planView";
import { onSlotsChange, planSlot, slotsLieOver, slotsMayHaveMoved } from "../view/slots";
import { drawnPlaces } from "./drawnPlaces";
import { hintId } from "./hintId";
import { followsDrop, interactionMarks } from "./interactionMarks";
import { listenToKeys } from "./keys";
import { menuAt } from "./planMenu";
import { type Layers, PlanPainter, type StageLayer, stageLayers } from "./planPainter";
import { listenToPointer } from "./pointer";
import { isHalfDrawn, machine, toolRun } from "./toolRun";

export function PlanStage() {
  const box = useRef<HTMLDivElement>(null);
  const layers = useRef<Partial<Record<StageLayer, Konva.Layer | null>>>({});
  const painter = useRef<PlanPainter | null>(null);
  const width = useStore(planView, ({ view }) => view.width);
  const height = useStore(planView, ({ view }) => view.height);
  const cursor = useStore(toolRun, ({ state }) => state.cursor);
  const isSettled = useApp(({ results }) => !results.lagging);
  const isEarthFine = useApp(({ results }) => !results.earthLags);

  usePainter(box, layers, painter);

  // Konva clears a canvas whose size changes.
  useEffect(() => {
    if (width > 0 && height > 0) painter.current?.lookChanged();
  }, [width, height]);

  return (
    <div
      className="plan-stage"
      ref={box}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: tools work by keys while the plan has the focus
      tabIndex={0}
      aria-label="Drawing of the plan"
      aria-describedby={hintId}
      style={{ cursor }}
      // Editable while a tool takes typing (composing.ts); a touch calls up no keyboard.
      inputMode="none"
      spellCheck={false}
      data-testid="plan"
      data-settled={isSettled}
      data-earth-fine={isEarthFine}
    >
      <div contentEditable={false} suppressContentEditableWarning>
        <Canvases width={width} height={height} layers={layers} painter={painter} />
      </div>
    </div>
  );
}

interface CanvasesProps {
  readonly width: number;
  readonly height: number;
  readonly layers: RefObject<Partial<Record<StageLayer, Konva.Layer | null>>>;
  readonly painter: RefObject<PlanPainter | null>;
}

/** The painter says what is drawn when: a change of the stage's own attributes redraws nothing. */
const Canvases = memo(function Canvases({ width, height, layers, painter }: CanvasesProps) {
  return (
    <Stage width={width} height={height} listening={false}>
      {stageLayers.map((name) => (
        <Layer
          key={name}
          listening={false}
          ref={(layer) => {
            layers.current[name] = layer;
          }}
        >
          <Shape
            listening={false}
            perfectDrawEnabled={false}
            sceneFunc={(context) => painter.current?.paint(name, context._context)}
          />
        </Layer>
      ))}
    </Stage>
  );
});

/** Makes the painter once the canvases are there, and lets it follow the window. */
function usePainter(
  box: RefObject<HTMLDivElement | null>,
  layers: RefObject<Partial<Record<StageLayer, Konva.Layer | null>>>,
  painter: RefObject<PlanPainter | null>,
): void {
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const made = new PlanPainter(layers.current as Layers, interactionMarks);
    painter.current = made;
    const stops = [
      followSize(element, made),
      followStores(element, made),
      followLook(made),
      listenToHand(element),
      () => made.stop(),
    ];
    made.lookChanged();
    return () => {
      painter.current = null;
      for (const stop of stops) stop();
    };
  }, [box, layers, painter]);
}

function followSize(element: HTMLElement, painter: PlanPainter): () => void {
  const measure = () => {
    slotsMayHaveMoved();
    const { left, top } = element.getBoundingClientRect();
    resizePlan(element.clientWidth, element.clientHeight, [left, top]);
  };
  const observer = new ResizeObserver(measure);
  observer.observe(element);
  // Before anything else: a view that isn't turned yet would be taken for a turn by hand.
  setPlanTurn(present(appStore.getState().history).drawing.turn);
  slotsLieOver(element);
  placesDrawnBy(() => [
    ...stakeGridStore.getState().stakes,
    ...(appStore.getState().tool === "select" ? [] : drawnPlaces(machine().state())),
  ]);
  const stopSlots = onSlotsChange(slotsChanged);
  measure();
  // A plan that comes into the window is shown whole, whatever was seen of the one before it.
  fitPlan();
  painter.viewChanged();
  return () => {
    stopSlots();
    slotsLieOver(null);
    observer.disconnect();
  };
}

function followStores(element: HTMLElement, painter: PlanPainter): () => void {
  guardDrawing({ goOn: () => takeKeys(element) });
  const stops = [
    () => guardDrawing({ goOn: () => {} }),
    appStore.subscribe((state, before) => {
      const fresh = state.history !== before.history && state.history.steps.length === 1;
      if (state.history !== before.history) setPlanTurn(present(state.history).drawing.turn);
      if (fresh) fitPlan();
      else if (state.history !== before.history) showGrowth(present(before.history), present(state.history));
      if (state.tool !== before.tool) takeKeys(element);
      if (state.goTo && state.goTo !== before.goTo) showPlace(state.goTo.at);
      const drawn =
        state.history !== before.history ||
        state.preview !== before.preview ||
        state.results !== before.results;
      const layered =
        state.hidden !== before.hidden ||
        state.step !== before.step ||
        state.strengths !== before.strengths ||
        state.mapGround !== before.mapGround;
      const taken =
        state.selection !== before.selection ||
        state.tool !== before.tool ||
        (state.preview === null) !== (before.preview === null);
      if (state.preferences.textSize !== before.preferences.textSize) painter.lookChanged();
      if (layered) painter.layersChanged();
      if (state.pointer !== before.pointer && followsDrop(state)) painter.interactionChanged();
      if (taken) painter.selectionChanged();
      if (drawn && !isSolvedNext(state, before)) painter.stateChanged();
      if (drawn ? state.floorDrag === null : state.selection !== before.selection)
        painter.interactionChanged();
    }),
    planView.subscribe((state, before) => {
      if (state.view !== before.view || state.moving !== before.moving) painter.viewChanged();
    }),
    toolRun.subscribe(({ state }) => {
      painter.interactionChanged();
      painter.drawingChanged(drawsOver(appStore.getState().tool, state));
    }),
    sectionShown.subscribe(() => painter.lookChanged()),
    sectionSpot.subscribe(() => painter.interactionChanged()),
    stakeGridStore.subscribe(() => painter.interactionChanged()),
    followStakes(),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** A thing under the hand moved: the next frame solves it, and draws both at once. */
function isSolvedNext(state: AppState, before: AppState): boolean {
  return state.preview !== null && state.results === before.results;
}

/** Stakes that are typed are all seen beside the sheet that they are typed in. */
function followStakes(): () => void {
  let leave: (() => void) | undefined;
  const stop = stakeGridStore.subscribe((state, before) => {
    if (state.sheet !== before.sheet) {
      leave?.();
      leave = planSlot(state.sheet);
    }
    if (state.sheet && (state.stakes !== before.stakes || state.sheet !== before.sheet))
      showWhole(state.stakes);
  });
  return () => {
    stop();
    leave?.();
  };
}

/** These only touch things that are there; the others draw lines and areas across them. */
const touching: readonly ToolName[] = ["select", "shot", "mark", "place", "stakes", "door", "window", "note"];

/** Is something being drawn across what is on the plan already? */
function drawsOver(tool: ToolName, state: ToolState): boolean {
  return !touching.includes(tool) && (state.marks?.length ?? 0) > 0;
}

/** A tool that was just picked works by keys at once, unless a person is typing somewhere else. */
function takeKeys(element: HTMLElement): void {
  const chosenFrom = document.activeElement?.closest("[role=dialog], [role=menu]");
  const typing = document.activeElement?.closest("input, textarea, select, [role=grid]");
  if (chosenFrom) takeKeysAfter(chosenFrom, element);
  else if (!typing) element.focus({ preventScroll: true });
}

/** Longer than a list takes to close, frames. */
const mostFrames = 90;

/** Picked from a list: once that is gone and has given the keyboard back to where it was, the plan takes it. */
function takeKeysAfter(list: Element, element: HTMLElement, frames = mostFrames, rest = 2): void {
  requestAnimationFrame(() => {
    if (!list.isConnected && rest === 0) element.focus({ preventScroll: true });
    else if (frames > 0) takeKeysAfter(list, element, frames - 1, list.isConnected ? rest : rest - 1);
  });
}

/** Theme, font and the screen's pixels. */
function followLook(painter: PlanPainter): () => void {
  const observer = new MutationObserver(() => painter.lookChanged());
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
  let stopped = false;
  const faces = ["12px", "600 12px"].map((face) => document.fonts.load(`${face} "Source Sans 3"`));
  void Promise.all(faces).then(() => {
    if (!stopped) painter.lookChanged();
  });
  return () => {
    stopped = true;
    observer.disconnect();
  };
}

function listenToHand(element: HTMLElement): () => void {
  const keys = listenToKeys(element);
  const stop = listenToPointer({
    element,
    machine,
    spaceHeld: keys.spaceHeld,
    menu: (screen, touch) => menuAt(element, screen, touch),
    draws: isHalfDrawn,
    holds: () => {
      const { snap } = machine().state();
      return snap ? isOnThing(snap) : false;
    },
    panning: (active) => element.classList.toggle("panning", active),
  });
  return () => {
    keys.stop();
    stop();
  };
}
