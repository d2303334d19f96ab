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

export function strokePath({ context, palette }: Painting, style: Style): void {
  if (!style.stroke) return;
  if (style.halo) {
    context.strokeStyle = palette.sheet;
    context.lineWidth = ((style.width ?? 0.25) + 2 * haloReach) * pxPerMm;
    context.lineJoin = "round";
    context.lineCap = "round";
    context.stroke();
  }
  context.strokeStyle = palette[style.stroke];
  // Thinner than three quarters of a pixel looks grey and broken on a screen.
  context.lineWidth = Math.max(0.75, (style.width ?? 0.25) * pxPerMm);
  context.setLineDash((style.dash ?? []).map((mm) => mm * pxPerMm));
  context.lineJoin = "round";
  context.lineCap = "butt";
  context.stroke();
  if (style.dash) context.setLineDash([]);
}
