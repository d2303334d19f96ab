/** How each kind of mark is drawn: ink by token name, widths and text sizes in paper millimetres. */
import type { Ink } from "../look/tokens";

export interface Style {
  readonly stroke?: Ink;
  readonly width?: number;
  /** Dash pattern, mm. */
  readonly dash?: readonly number[];
  readonly fill?: Ink;
  /** 0 to 1. */
  readonly opacity?: number;
  /** Text size, mm (cap to descender em size). */
  readonly size?: number;
  readonly weight?: 400 | 600;
  readonly italic?: boolean;
  /** Parallel lines across an area, drawn with stroke and width: angle in degrees from the x axis, spacing in mm. */
  readonly hatch?: { readonly angle: number; readonly spacing: number };
}

const table = {
  "lot-line": { stroke: "ink", width: 0.5, dash: [6, 1.2, 1, 1.2, 1, 1.2] },
  "lot-label": { fill: "soft", size: 2.6 },
  feature: { stroke: "soft", width: 0.25 },
  "feature-line": { stroke: "soft", width: 0.25, dash: [2, 0.8] },
  "feature-water": { fill: "waterSoft", stroke: "water", width: 0.18, opacity: 0.8 },
  "feature-danger": { stroke: "bad", width: 0.35, dash: [3, 0.8, 0.6, 0.8] },
  "feature-danger-label": { fill: "bad", size: 2.6, weight: 600 },
  "keep-clear": { stroke: "soft", width: 0.13, dash: [0.8, 0.8] },
  "feature-label": { fill: "soft", size: 2.6 },
  "contour-existing": { stroke: "soft", width: 0.13, dash: [1.6, 1.1], opacity: 0.7 },
  "contour-existing-major": { stroke: "soft", width: 0.25, dash: [1.6, 1.1], opacity: 0.8 },
  "contour-label": { fill: "soft", size: 2.4 },
  "contour-finished-label": { fill: "ink", size: 2.4 },
  "contour-guessed": { stroke: "soft", width: 0.13, dash: [0.4, 1.2], opacity: 0.55 },
  "contour-finished": { stroke: "ink", width: 0.18, opacity: 0.75 },
  "contour-finished-major": { stroke: "ink", width: 0.35, opacity: 0.85 },
  daylight: { stroke: "ink", width: 0.25, dash: [0.3, 0.9] },
  "guessed-hatch": { stroke: "soft", width: 0.09, opacity: 0.4, hatch: { angle: 0, spacing: 3.2 } },
  "guessed-edge": { stroke: "soft", width: 0.13, dash: [0.4, 0.9], opacity: 0.8 },
  "cut-hatch": { stroke: "cutInk", width: 0.12, opacity: 0.8, hatch: { angle: 45, spacing: 1.8 } },
  "fill-hatch": { stroke: "fillInk", width: 0.12, opacity: 0.8, hatch: { angle: -45, spacing: 1.8 } },
  cut3: { fill: "cut3", opacity: 0.42 },
  cut2: { fill: "cut2", opacity: 0.42 },
  cut1: { fill: "cut1", opacity: 0.42 },
  cut0: { fill: "cut0", opacity: 0.42 },
  fill0: { fill: "fill0", opacity: 0.42 },
  fill1: { fill: "fill1", opacity: 0.42 },
  fill2: { fill: "fill2", opacity: 0.42 },
  fill3: { fill: "fill3", opacity: 0.42 },
  "depth-spot": { fill: "ink" },
  "depth-label": { fill: "ink", size: 2.6, weight: 600 },
  wall: { stroke: "ink", width: 0.9 },
  "wall-inner": { stroke: "ink", width: 0.18 },
  trench: { stroke: "ink", width: 0.13, dash: [0.9, 0.6] },
  station: { stroke: "ink", width: 0.25 },
  "station-label": { fill: "ink", size: 2.4, weight: 600 },
  floor: { fill: "sheet" },
  diagonal: { stroke: "rule", width: 0.13 },
  door: { stroke: "accent", width: 1.1 },
  "building-label": { fill: "ink", size: 3.6, weight: 600 },
  window: { stroke: "ink", width: 1.5 },
  "window-glass": { stroke: "sheet", width: 1 },
  "window-jamb": { stroke: "ink", width: 0.3 },
  "window-label": { fill: "soft", size: 2.5 },
  "door-label": { fill: "accent", size: 2.6, weight: 600 },
  "building-sublabel": { fill: "soft", size: 2.7 },
  drive: { fill: "paper", opacity: 0.45 },
  "drive-edge": { stroke: "ink", width: 0.25 },
  "drive-centre": { stroke: "soft", width: 0.18, dash: [4, 1, 0.8, 1] },
  "drive-steep": { stroke: "accent", width: 0.5 },
  "drive-grade": { fill: "ink", size: 2.5 },
  "drive-label": { fill: "ink", size: 2.8, weight: 600 },
  swale: { stroke: "water", width: 0.7 },
  "swale-mark": { stroke: "water", width: 0.45 },
  "swale-label": { fill: "water", size: 2.8 },
  pond: { fill: "waterSoft", stroke: "water", width: 0.25, opacity: 0.8 },
  "pond-label": { fill: "water", size: 2.6, weight: 600 },
  arrow: { stroke: "water", width: 0.2, opacity: 0.8 },
  "wall-wet": { stroke: "bad", width: 1.2 },
  dimension: { stroke: "ink", width: 0.16 },
  tie: { stroke: "ink", width: 0.16, dash: [1.4, 0.6] },
  "dimension-tick": { stroke: "ink", width: 0.3 },
  "dimension-label": { fill: "ink", size: 2.8 },
  note: { fill: "ink", size: 3 },
  "note-leader": { stroke: "ink", width: 0.18 },
  "note-dot": { stroke: "ink", fill: "ink", width: 0.18 },
  "section-line": { stroke: "ink", width: 0.25, dash: [4.4, 0.9, 0.9, 0.9] },
  "section-end": { stroke: "ink", width: 0.8 },
  "section-arrow": { stroke: "ink", width: 0.35 },
  "section-label": { fill: "ink", size: 3.4, weight: 600 },
  "corner-ring": { stroke: "accent", fill: "sheet", width: 0.5 },
  "corner-label": { fill: "ink", size: 3.4, weight: 600 },
  "corner-value": { fill: "accent", size: 2.8, weight: 600 },
  breakline: { stroke: "soft", width: 0.3 },
  "breakline-round": { stroke: "soft", width: 0.3, dash: [2.2, 0.8] },
  "breakline-dot": { fill: "soft" },
  "breakline-label": { fill: "soft", size: 2.4 },
  shot: { stroke: "ink", width: 0.25 },
  "shot-label": { fill: "soft", size: 2.4 },
  "shot-untied": { stroke: "soft", width: 0.2, opacity: 0.6 },
  "mark-symbol": { fill: "accent" },
  "mark-label": { fill: "accent", size: 2.8, weight: 600 },
  selected: { stroke: "accent", width: 0.6 },
  hovered: { stroke: "accent", width: 0.35, opacity: 0.6 },
  handle: { stroke: "accent", fill: "sheet", width: 0.4 },
  "handle-hot": { stroke: "accent", fill: "accent", width: 0.4 },
  "handle-between": { stroke: "accent", fill: "sheet", width: 0.25, opacity: 0.9 },
  "handle-stem": { stroke: "accent", width: 0.25 },
  preview: { stroke: "accent", width: 0.35, dash: [1.6, 1] },
  "preview-line": { stroke: "accent", width: 0.5 },
  "preview-area": { fill: "accentSoft", opacity: 0.5 },
  "preview-label": { fill: "accent", size: 3.2, weight: 600 },
  "snap-ring": { stroke: "accent", width: 0.4 },
  "snap-guide": { stroke: "accent", width: 0.15, dash: [1, 1], opacity: 0.7 },
  "snap-label": { fill: "soft", size: 2.9 },
} as const satisfies Record<string, Style>;

export type StyleName = keyof typeof table;
export const styles: Readonly<Record<StyleName, Style>> = table;
