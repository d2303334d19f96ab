/** The depth map as a picture that the plan's bottom layer shows; drawn afresh for each floor, moved while panning. */
import type { Display } from "../../document";
import { depthClasses } from "../../drawing/depth-classes";
import type { Palette } from "../../look/tokens";
import { seenBounds, toScreen, type View } from "../view/view";
import {
  type ClassColours,
  colouredCells,
  type RasterWindow,
  rasterDepth,
  type ValueGrid,
} from "./depthRaster";

/** Lines under the map must stay readable. */
export const depthOpacity = 0.82;
/** A picture never has more pixels than this; a finer one would not hold a frame. */
const mostPixels = 1_400_000;

export function classColours(display: Display, palette: Palette): ClassColours {
  const classes = depthClasses(display);
  return {
    edges: classes.slice(1).map(({ from }) => from),
    colours: Uint32Array.from(classes, ({ ink }) => (ink ? packed(palette[ink], depthOpacity) : 0)),
  };
}

/** "#rrggbb" as the number that an image's bytes make. */
export function packed(hex: string, opacity: number): number {
  const rgb = Number.parseInt(hex.slice(1), 16);
  const [r, g, b] = [(rgb >> 16) & 255, (rgb >> 8) & 255, rgb & 255];
  return ((Math.round(opacity * 255) << 24) | (b << 16) | (g << 8) | r) >>> 0;
}

/** The part of the coloured cells that is seen, at about a pixel a pixel. Null where nothing is seen. */
export function rasterWindow(
  surface: ValueGrid,
  table: ClassColours,
  view: View,
  pixelRatio: number,
): RasterWindow | null {
  const cells = colouredCells(surface, table);
  if (!cells) return null;
  const { grid } = surface;
  const seen = seenBounds(view);
  // One cell of margin: colours reach half a cell beyond the last centre.
  const minX = Math.max(seen.minX, grid.x0 + (cells[0] - 1) * grid.cell);
  const maxX = Math.min(seen.maxX, grid.x0 + (cells[2] + 2) * grid.cell);
  const minY = Math.max(seen.minY, grid.y0 + (cells[1] - 1) * grid.cell);
  const maxY = Math.min(seen.maxY, grid.y0 + (cells[3] + 2) * grid.cell);
  if (!(minX < maxX && minY < maxY)) return null;
  const finest = Math.sqrt(((maxX - minX) * (maxY - minY)) / mostPixels);
  const step = Math.max(finest, 1 / (view.scale * Math.min(pixelRatio, 2)));
  return {
    x: minX,
    y: maxY,
    step,
    width: Math.max(1, Math.ceil((maxX - minX) / step)),
    height: Math.max(1, Math.ceil((maxY - minY) / step)),
  };
}

export interface DepthPicture {
  /** Draws the map for a surface; false where there is nothing to show. */
  update(surface: ValueGrid | null, table: ClassColours, view: View, pixelRatio: number): boolean;
  /** Puts the last drawn map where it belongs in this view. */
  paint(context: CanvasRenderingContext2D, view: View, strength?: number): void;
}

export function createDepthPicture(): DepthPicture {
  const canvas = document.createElement("canvas");
  const own = canvas.getContext("2d");
  let store = new Uint32Array(0);
  let window: RasterWindow | null = null;
  return {
    update(surface, table, view, pixelRatio) {
      window = surface && rasterWindow(surface, table, view, pixelRatio);
      if (!surface || !window || !own) return false;
      const { width, height } = window;
      // A canvas only grows: setting its size costs more than a few unused pixels.
      if (canvas.width < width || canvas.height < height) {
        canvas.width = Math.max(canvas.width, width);
        canvas.height = Math.max(canvas.height, height);
      }
      // The map of a thing under the hand is of another size in each frame: one store holds them all.
      if (store.length < width * height) store = new Uint32Array(Math.ceil(1.2 * width * height));
      const pixels = store.subarray(0, width * height);
      rasterDepth(surface, table, window, pixels);
      own.putImageData(new ImageData(bytesOf(pixels), width, height), 0, 0);
      return true;
    },
    paint(context, view, strength = 1) {
      if (!window) return;
      const [x, y] = toScreen(view, [window.x, window.y]);
      const zoom = window.step * view.scale;
      context.save();
      context.translate(x, y);
      context.rotate(-view.angle);
      context.globalAlpha = strength;
      context.imageSmoothingEnabled = Math.abs(zoom - 1) > 1e-6;
      context.drawImage(
        canvas,
        0,
        0,
        window.width,
        window.height,
        0,
        0,
        window.width * zoom,
        window.height * zoom,
      );
      context.restore();
    },
  };
}

function bytesOf({
  buffer,
  byteOffset,
  byteLength,
}: Uint32Array<ArrayBuffer>): Uint8ClampedArray<ArrayBuffer> {
  return new Uint8ClampedArray(buffer, byteOffset, byteLength);
}
