/** Where is painted, in which view and in which colours; and how a path is stroked. */
import type { Style } from "../../drawing/styles";
import type { Palette } from "../../look/tokens";
import { pxPerMm } from "../screen";
import type { View } from "../view/view";

export interface Painting {
  readonly context: CanvasRenderingContext2D;
  readonly view: View;
  readonly palette: Palette;
  /** A millimetre of words and of signs, px. Lines keep their widths. */
  readonly mm: { readonly words: number; readonly signs: number };
  /** How strong texts are, 0 to 1: weaker while something is drawn over them. Full where it isn't said. */
  readonly textStrength?: number;
  /** How strong everything is, 0 to 1. Full where it isn't said. */
  readonly strength?: number;
}

/** The halo reaches this far beyond a stroke, mm on each side. */
const haloReach = 0.35;

/** Strokes the path that was just traced, or one that is given. */
export function strokePath({ context, palette }: Painting, style: Style, path?: Path2D): void {
  if (!style.stroke) return;
  const stroke = () => (path ? context.stroke(path) : context.stroke());
  if (style.halo) {
    context.strokeStyle = palette.sheet;
    context.lineWidth = ((style.width ?? 0.25) + 2 * haloReach) * pxPerMm;
    context.lineJoin = "round";
    context.lineCap = "round";
    stroke();
  }
  context.strokeStyle = palette[style.stroke];
  // Thinner than three quarters of a pixel looks grey and broken on a screen.
  context.lineWidth = Math.max(0.75, (style.width ?? 0.25) * pxPerMm);
  context.setLineDash((style.dash ?? []).map((mm) => mm * pxPerMm));
  context.lineJoin = "round";
  context.lineCap = "butt";
  stroke();
  if (style.dash) context.setLineDash([]);
}
