/**
 * Keeps the plan's canvases up to date: what changed is drawn, the rest stays. While the view moves one picture
 * moves along; while the floor is under the hand only what depends on it is drawn, at once.
 */
import type Konva from "konva";
import type { DrawingMark } from "../../drawing/marks";
import { type Palette, palettes } from "../../look/tokens";
import type { AppState } from "../../store/state";
import { appStore, shownProject } from "../../store/store";
import { classColours, createDepthPicture } from "../paint/depthPicture";
import type { ClassColours } from "../paint/depthRaster";
import { createMovingPicture } from "../paint/movingPicture";
import { paintLayers, paintMarks } from "../paint/paintMarks";
import type { CanvasName } from "../scene/layerList";
import { createPlanScene } from "../scene/planScene";
import { pxPerMm } from "../screen";
import { planView } from "../view/planView";
import type { View } from "../view/view";

/** From the bottom to the top. */
export const stageLayers = ["depth", "ground", "design", "shots", "interaction"] as const;
export type StageLayer = (typeof stageLayers)[number];
export type Layers = Readonly<Record<StageLayer, Konva.Layer>>;

export interface PlanPainter {
  paint(layer: StageLayer, context: CanvasRenderingContext2D): void;
  /** The project, the results or what is hidden changed. */
  stateChanged(): void;
  viewChanged(): void;
  /** The tool's marks or the selection changed. */
  interactionChanged(): void;
  /** Theme, font or pixel ratio changed: everything is drawn again. */
  lookChanged(): void;
  stop(): void;
}

const still: readonly StageLayer[] = ["depth", "ground", "design", "shots"];
const markCanvases: readonly CanvasName[] = ["ground", "design", "shots"];
/** A long gesture may run off the picture; it is drawn anew, but not so often that the hand feels it, ms. */
const refreshEvery = 450;

export function createPlanPainter(layers: Layers, interaction: () => readonly DrawingMark[]): PlanPainter {
  const scene = createPlanScene();
  const depth = createDepthPicture();
  const picture = createMovingPicture();
  let palette = shownPalette();
  let colours: { readonly key: readonly unknown[]; readonly table: ClassColours } | null = null;
  let depthInputs: readonly unknown[] = [];
  let shownView: View = planView.getState().view;
  let moving = false;
  let lastRender = 0;
  let idle: number | null = null;

  const pixelRatio = () => layers.depth.getCanvas().getPixelRatio();

  function colourTable(state: AppState): ClassColours {
    const { display } = shownProject(state);
    if (!colours || colours.key[0] !== display || colours.key[1] !== palette)
      colours = { key: [display, palette], table: classColours(display, palette) };
    return colours.table;
  }

  /** Draws the depth map where its surface, colours or view changed. */
  function updateDepth(state: AppState, view: View): boolean {
    const off = state.hidden.has("depth");
    const inputs = [state.results.surface, colourTable(state), off, view, pixelRatio()];
    if (inputs.every((input, i) => input === depthInputs[i])) return false;
    depthInputs = inputs;
    depth.update(off ? null : state.results.surface, colourTable(state), view, pixelRatio());
    return true;
  }

  function updateScene(state: AppState): ReadonlySet<CanvasName> {
    return scene.update({
      project: shownProject(state),
      results: state.results,
      hidden: state.hidden,
      metresPerMm: pxPerMm / shownView.scale,
      dragging: state.preview !== null || state.floorDrag !== null,
    });
  }

  function drawAll(): void {
    for (const name of stageLayers) layers[name].batchDraw();
  }

  function sharp(): void {
    const state = appStore.getState();
    shownView = planView.getState().view;
    updateDepth(state, shownView);
    updateScene(state);
    drawAll();
    pictureSoon();
  }

  /** The picture for the next gesture is drawn while nobody waits for it. */
  function pictureSoon(): void {
    picture.outdate();
    if (idle !== null) cancelIdleCallback(idle);
    idle = requestIdleCallback(
      () => {
        idle = null;
        const { floorDrag, preview } = appStore.getState();
        if (!moving && floorDrag === null && preview === null) renderPicture();
      },
      { timeout: 2000 },
    );
  }

  function renderPicture(): void {
    const state = appStore.getState();
    const around = shownView;
    picture.render(around, pixelRatio(), (context, view) => {
      const wide = createDepthPicture();
      wide.update(state.hidden.has("depth") ? null : state.results.surface, colourTable(state), view, 1);
      wide.paint(context, view);
      for (const canvas of markCanvases) paintLayers({ context, view, palette }, scene.layers(canvas));
    });
    lastRender = performance.now();
  }

  function startMoving(): void {
    moving = true;
    if (!picture.usable())
      picture.capture(
        shownView,
        still.map((name) => layers[name].getNativeCanvasElement()),
      );
  }

  return {
    paint(layer, context) {
      const { view } = planView.getState();
      if (layer === "interaction") paintMarks({ context, view, palette }, interaction());
      else if (moving) {
        if (layer === "depth") picture.paint(context, view);
      } else if (layer === "depth") depth.paint(context, view);
      else paintLayers({ context, view, palette }, scene.layers(layer));
    },
    stateChanged() {
      const state = appStore.getState();
      const depthChanged = updateDepth(state, shownView);
      const changed = updateScene(state);
      if (!depthChanged && changed.size === 0) return;
      if (state.floorDrag === null && state.preview === null) pictureSoon();
      else picture.outdate();
      // A floor under the hand is seen in this very frame; other changes are drawn with the next.
      const now = state.floorDrag !== null;
      for (const name of still) {
        if (name === "depth" ? !depthChanged : !changed.has(name as CanvasName)) continue;
        if (now) layers[name].draw();
        else layers[name].batchDraw();
      }
    },
    viewChanged() {
      const { view, moving: underHand } = planView.getState();
      if (!underHand) {
        moving = false;
        sharp();
        return;
      }
      if (!moving) startMoving();
      if (!picture.covers(view) && performance.now() - lastRender > refreshEvery) {
        shownView = view;
        renderPicture();
      }
      drawAll();
    },
    interactionChanged: () => {
      layers.interaction.batchDraw();
    },
    lookChanged() {
      palette = shownPalette();
      sharp();
    },
    stop() {
      if (idle !== null) cancelIdleCallback(idle);
    },
  };
}

/** The theme is set on the root element, once for the whole window. */
function shownPalette(): Palette {
  return palettes[document.documentElement.dataset.theme === "dark" ? "dark" : "light"];
}
