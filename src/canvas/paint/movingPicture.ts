/**
 * While the view is under the hand the plan is one picture that moves along; it is drawn sharp again when the
 * view rests. The picture reaches beyond the screen, so that there is something to pan to.
 */
import { toScreen, toWorld, type View } from "../view/view";

export interface MovingPicture {
  /** Draws the picture round a view with `paint`, for use from now on. */
  render(
    view: View,
    pixelRatio: number,
    paint: (context: CanvasRenderingContext2D, view: View) => void,
  ): void;
  /** Takes what the canvases show; quicker, but it ends at the rim of the screen. */
  capture(view: View, canvases: readonly HTMLCanvasElement[]): void;
  /** Puts the picture where it belongs in another view. */
  paint(context: CanvasRenderingContext2D, view: View): void;
  /** Does the picture fill the screen in this view? */
  covers(view: View): boolean;
  /** The picture no longer shows how things are. */
  outdate(): void;
  usable(): boolean;
}

/** Share of the screen that the picture reaches beyond it on each side. */
const overscan = 0.3;
const mostPixels = 9_000_000;

export function createMovingPicture(): MovingPicture {
  const canvas = document.createElement("canvas");
  const own = canvas.getContext("2d");
  let shown: View | null = null;
  let ratio = 1;

  function resize(view: View, pixelRatio: number): void {
    ratio = pixelRatio;
    shown = view;
    const [w, h] = [Math.round(view.width * ratio), Math.round(view.height * ratio)];
    if (canvas.width !== w || canvas.height !== h) {
      canvas.width = w;
      canvas.height = h;
    } else {
      own?.setTransform(1, 0, 0, 1, 0, 0);
      own?.clearRect(0, 0, w, h);
    }
  }

  return {
    render(view, pixelRatio, paint) {
      if (!own) return;
      const wide = {
        ...view,
        width: Math.ceil(view.width * (1 + 2 * overscan)),
        height: Math.ceil(view.height * (1 + 2 * overscan)),
      };
      resize(wide, Math.min(pixelRatio, Math.sqrt(mostPixels / (wide.width * wide.height))));
      own.setTransform(ratio, 0, 0, ratio, 0, 0);
      paint(own, wide);
    },
    capture(view, canvases) {
      const [first] = canvases;
      if (!first || !own || view.width === 0) return;
      resize(view, first.width / view.width);
      for (const each of canvases) own.drawImage(each, 0, 0);
    },
    paint(context, view) {
      if (!shown || canvas.width === 0) return;
      const [x, y] = toScreen(view, toWorld(shown, [0, 0]));
      const zoom = view.scale / shown.scale / ratio;
      context.save();
      context.translate(x, y);
      context.rotate(shown.angle - view.angle);
      context.scale(zoom, zoom);
      context.drawImage(canvas, 0, 0);
      context.restore();
    },
    covers(view) {
      if (!shown) return false;
      const picture = shown;
      return [
        [0, 0],
        [view.width, 0],
        [view.width, view.height],
        [0, view.height],
      ].every(([x, y]) => {
        const [px, py] = toScreen(picture, toWorld(view, [x as number, y as number]));
        return px >= -1 && py >= -1 && px <= picture.width + 1 && py <= picture.height + 1;
      });
    },
    outdate() {
      shown = null;
    },
    usable: () => shown !== null,
  };
}
