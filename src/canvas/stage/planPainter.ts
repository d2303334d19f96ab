/**
 * Keeps the plan's canvases up to date: what changed is drawn, the rest stays. While the view moves one picture
 * moves along; while the floor is under the hand only what depends on it is drawn, at once.
 */
import type Konva from "konva";
import type { DrawingMark, TextMark } from "../../drawing/marks";
import { palettes, type Theme } from "../../look/tokens";
import { tell } from "../../store/actions";
import { strengthOf } from "../../store/layers";
import type { AppState } from "../../store/state";
import { appStore, isMoving, shownProject } from "../../store/store";
import { createDepthPicture, type DepthPicture } from "../paint/depthPicture";
import { createMovingPicture } from "../paint/movingPicture";
import { paintGrid } from "../paint/paintGrid";
import type { Painting } from "../paint/painting";
import { paintMarks } from "../paint/paintMarks";
import { createUnderlayPictures } from "../paint/underlayPictures";
import type { CanvasName } from "../scene/layerList";
import { createPlanScene } from "../scene/planScene";
import { shownMap } from "../scene/shownMap";
import { createStillLabels } from "../scene/stillLabels";
import { writtenBy } from "../scene/written";
import { pxPerMm, writtenPxPerMm } from "../screen";
import { type CutInView, sectionShown } from "../section/sectionOnPlan";
import { givingWay, tellsOf, toldElsewhere } from "../select/givesWay";
import { coveredPaper } from "../view/freeArea";
import { coveredByWindow, planView } from "../view/planView";
import { takenBoxes } from "../view/slots";
import { seenBounds, type View } from "../view/view";
import { toolRun } from "./toolRun";

/** From the bottom to the top. */
export const stageLayers = ["depth", "ground", "design", "shots", "interaction"] as const;
export type StageLayer = (typeof stageLayers)[number];
export type Layers = Readonly<Record<StageLayer, Konva.Layer>>;

const still: readonly StageLayer[] = ["depth", "ground", "design", "shots"];
const markCanvases: readonly CanvasName[] = ["ground", "design", "shots"];
/** A long gesture may run off the picture; it is drawn anew, but not so often that the hand feels it, ms. */
const refreshEvery = 450;
const noColours = { edges: [], colours: new Uint32Array(1) };
/** Texts of the plan while something is drawn over it. */
const faintText = 0.55;

export class PlanPainter {
  private readonly scene = createPlanScene();
  private readonly labels = createStillLabels();
  private readonly depth = createDepthPicture();
  private readonly picture = createMovingPicture();
  private readonly underlays = createUnderlayPictures(
    () => this.underlaysChanged(),
    (name) =>
      tell({
        tone: "error",
        text: `The picture “${name}” can't be read any more. Remove it and place it anew.`,
      }),
  );
  private theme = shownTheme();
  private depthInputs: readonly unknown[] = [];
  /** The view that the canvases were last drawn sharp in. */
  private shown: View = planView.getState().view;
  private moving = false;
  private lastRender = 0;
  private idle: number | null = null;
  private drawing = false;
  private cutInView: CutInView | null = null;
  /** The thing whose lengths are told elsewhere. */
  private told: string | null = null;

  constructor(
    private readonly layers: Layers,
    private readonly interaction: () => readonly DrawingMark[],
  ) {
    writtenBy(() => this.written());
  }

  /** The plan's texts, without what is told elsewhere. */
  private written(): readonly TextMark[] {
    const told = toldElsewhere(appStore.getState(), toolRun.getState().state);
    return markCanvases
      .flatMap((canvas) => this.scene.layers(canvas))
      .flatMap((layer) => givingWay(layer, told))
      .filter((mark): mark is TextMark => mark.kind === "text");
  }

  /** Paints one layer; Konva calls it when the layer is drawn. */
  paint(layer: StageLayer, context: CanvasRenderingContext2D): void {
    const { view } = planView.getState();
    const painting = this.painting(context, view);
    if (layer === "interaction") paintMarks(withHandles(painting), this.interaction());
    else if (this.moving) {
      if (layer === "depth") this.picture.paint(context, view);
    } else if (layer === "depth") this.paintUnder(painting, this.depth);
    else this.paintCanvas(layer, painting);
  }

  private painting(context: CanvasRenderingContext2D, view: View): Painting {
    const mm = writtenPxPerMm();
    return { context, view, palette: palettes[this.theme], mm: { words: mm, signs: mm } };
  }

  /** What lies under the lines: pictures, the grid, the map in colour. */
  private paintUnder(painting: Painting, map: DepthPicture): void {
    const state = appStore.getState();
    const { context, view } = painting;
    if (!state.hidden.has("underlay")) this.underlays.paint(context, view, strengthOf(state, "underlay"));
    const shown = shownMap(state, this.theme);
    if (shown) map.paint(context, view, strengthOf(state, shown.layer));
    if (!state.hidden.has("grid"))
      paintGrid(painting, shownProject(state).display.length, strengthOf(state, "grid"));
  }

  private paintCanvas(canvas: CanvasName, painting: Painting): void {
    const state = appStore.getState();
    const layers = this.labels.show(this.scene.layers(canvas), state.floorDrag !== null);
    const parts = this.scene.parts(canvas);
    const faint = this.drawing ? { ...painting, textStrength: faintText } : painting;
    const told = toldElsewhere(state, toolRun.getState().state);
    for (const [i, layer] of layers.entries())
      paintMarks({ ...faint, strength: strengthOf(state, parts[i]) }, givingWay(layer, told));
  }

  /** A tool began or ended to draw over the plan: its texts step back meanwhile. */
  drawingChanged(drawing: boolean): void {
    if (drawing === this.drawing) return;
    this.drawing = drawing;
    this.pictureSoon();
    for (const name of markCanvases) this.layers[name].batchDraw();
  }

  /** Layers are stronger or weaker, or the grid was switched: what is painted changes, not what it is made from. */
  layersChanged(): void {
    this.stateChanged();
    this.pictureSoon();
    for (const name of still) this.layers[name].batchDraw();
  }

  /** The project, the results or what is hidden changed. */
  stateChanged(): void {
    const state = appStore.getState();
    const under = this.underlays.update(shownProject(state).drawing);
    const depthChanged = this.updateDepth(state, this.shown) || under;
    const changed = this.updateScene(state);
    if (!depthChanged && changed.size === 0) return;
    this.pictureSoon();
    for (const name of still) {
      if (name === "depth" ? !depthChanged : !changed.has(name as CanvasName)) continue;
      // A floor under the hand is seen in this very frame; other changes are drawn with the next.
      if (state.floorDrag !== null) this.layers[name].draw();
      else this.layers[name].batchDraw();
    }
  }

  viewChanged(): void {
    const { view, moving } = planView.getState();
    if (!moving) {
      this.moving = false;
      this.drawSharp();
      return;
    }
    if (!this.moving) this.startMoving();
    if (!this.picture.covers(view) && performance.now() - this.lastRender > refreshEvery) {
      this.shown = view;
      this.renderPicture();
    }
    this.drawAll();
  }

  /** What is selected, or under the hand, is another: what the plan writes of it may give way to its figures. */
  selectionChanged(): void {
    const { state: hand } = toolRun.getState();
    const told = toldElsewhere(appStore.getState(), hand);
    const thing = told?.thing ?? null;
    if (thing === this.told) return;
    const things = [thing, this.told];
    this.told = thing;
    this.pictureSoon();
    for (const name of markCanvases) {
      const layers = this.scene.layers(name);
      if (layers.some((layer) => things.some((each) => each !== null && tellsOf(layer, each))))
        this.layers[name].batchDraw();
    }
  }

  /** The tool's marks or the selection changed. */
  interactionChanged(): void {
    this.layers.interaction.batchDraw();
  }

  /** Theme, font, size of words or of the plan, or pixel ratio changed: everything is drawn again. */
  lookChanged(): void {
    this.theme = shownTheme();
    this.drawSharp();
  }

  stop(): void {
    this.underlays.stop();
    writtenBy(() => []);
    if (this.idle !== null) cancelIdleCallback(this.idle);
  }

  /** A picture under the plan was unpacked. */
  private underlaysChanged(): void {
    this.pictureSoon();
    this.layers.depth.batchDraw();
  }

  private drawAll(): void {
    for (const name of stageLayers) this.layers[name].batchDraw();
  }

  private drawSharp(): void {
    const state = appStore.getState();
    this.shown = planView.getState().view;
    this.underlays.update(shownProject(state).drawing);
    this.updateDepth(state, this.shown);
    this.updateScene(state);
    this.drawAll();
    this.pictureSoon();
  }

  private pixelRatio(): number {
    return this.layers.depth.getCanvas().getPixelRatio();
  }

  /** Draws the map in colour where its values, colours or view changed. */
  private updateDepth(state: AppState, view: View): boolean {
    const map = shownMap(state, this.theme);
    const inputs = [map, view, this.pixelRatio()];
    if (inputs.every((input, i) => input === this.depthInputs[i])) return false;
    this.depthInputs = inputs;
    const { values, table } = map ?? { values: null, table: noColours };
    // On the small grid of a thing under the hand single pixels show nothing.
    const share = state.results.earthLags ? 1 / 2 : 1;
    this.depth.update(values, table, view, share * this.pixelRatio());
    return true;
  }

  private updateScene(state: AppState): ReadonlySet<CanvasName> {
    const boxes = coveredByWindow();
    return this.scene.update({
      project: shownProject(state),
      results: state.results,
      hidden: state.hidden,
      step: state.step,
      metresPerMm: writtenPxPerMm() / this.shown.scale,
      turn: this.shown.angle,
      seen: seenBounds(this.shown),
      section: this.section(),
      ...(boxes && { covered: coveredPaper(this.shown, boxes) }),
      // Texts are placed anew once, when all is known.
      labelsRest: isMoving(state) || state.results.lagging,
    });
  }

  /** The line of the section that is shown, in the view as it is drawn; anew only where one of them is another. */
  private section(): CutInView | null {
    const { cut } = sectionShown.getState();
    const before = this.cutInView;
    if (cut === null) this.cutInView = null;
    else if (cut !== before?.cut || this.shown !== before.view)
      this.cutInView = { cut, view: this.shown, taken: takenBoxes() };
    return this.cutInView;
  }

  /** The picture for the next gesture is drawn while nobody waits for it, and not while a thing is under the hand. */
  private pictureSoon(): void {
    this.picture.outdate();
    if (this.idle !== null) return;
    this.idle = requestIdleCallback(
      () => {
        this.idle = null;
        if (!this.moving && !isMoving(appStore.getState())) this.renderPicture();
      },
      { timeout: 2000 },
    );
  }

  private renderPicture(): void {
    const state = appStore.getState();
    const map = shownMap(state, this.theme);
    this.picture.render(this.shown, this.pixelRatio(), (context, view) => {
      const painting = this.painting(context, view);
      const wide = createDepthPicture();
      wide.update(map?.values ?? null, map?.table ?? noColours, view, 1);
      this.paintUnder(painting, wide);
      for (const canvas of markCanvases) this.paintCanvas(canvas, painting);
    });
    this.lastRender = performance.now();
  }

  private startMoving(): void {
    this.moving = true;
    if (this.picture.usable()) return;
    this.picture.capture(
      this.shown,
      still.map((name) => this.layers[name].getNativeCanvasElement()),
    );
  }
}

/** Handles keep the size of a hand, whatever the size of words. */
function withHandles(painting: Painting): Painting {
  return { ...painting, mm: { ...painting.mm, signs: pxPerMm } };
}

/** The theme is set on the root element, once for the whole window. */
function shownTheme(): Theme {
  return document.documentElement.dataset.theme === "dark" ? "dark" : "light";
}
