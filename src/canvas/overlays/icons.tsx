/** Icons of the plan, drawn for this program: lines of one weight on a grid of twenty. */
import type { ReactNode } from "react";
import type { ToolName } from "../../store/state";
import { kindStrokes } from "./kindIcons";

export type IconName =
  | ToolName
  | "zoom-in"
  | "zoom-out"
  | "fit"
  | "fit-building"
  | "fit-selection"
  | "layers"
  | "tools"
  | "snaps"
  | "locked"
  | "unlocked";

const strokes: Readonly<Record<IconName, ReactNode>> = {
  select: <path d="M5 3 L15.5 10.5 L10.6 11.3 L8 16.2 Z" />,
  tools: <path d="M4 4 h4 v4 h-4 Z M12 4 h4 v4 h-4 Z M4 12 h4 v4 h-4 Z M12 12 h4 v4 h-4 Z" />,
  snaps: (
    <>
      <path d="M4.5 3 v7 C4.5 17.4 15.5 17.4 15.5 10 V3 h-4 v7 C11.5 12.2 8.5 12.2 8.5 10 V3 Z" />
      <path d="M4.5 6 h4 M11.5 6 h4" className="icon-thin" />
    </>
  ),
  shot: (
    <>
      <path d="M6 14.5 h8 M10 10.5 v8" />
      <path d="M10 10 V2 M8.2 3.5 h1.8 M8.2 6 h1.8 M8.2 8.5 h1.8" />
    </>
  ),
  "picture-points": (
    <>
      <path d="M3 4 h14 v12 h-14 Z" className="icon-thin" />
      <path d="M6 13 L14 7 M4.5 13 h3 M6 11.5 v3 M12.5 7 h3 M14 5.5 v3" />
    </>
  ),
  "picture-distance": (
    <>
      <path d="M3 4 h14 v12 h-14 Z" className="icon-thin" />
      <path d="M6 10 h8 M6 7.5 v5 M14 7.5 v5" />
    </>
  ),
  turn: (
    <>
      <path d="M15.6 7.2 A6.3 6.3 0 1 0 16.2 11.4" />
      <path d="M16.4 3.6 v4 h-4" />
    </>
  ),
  place: (
    <>
      <path d="M10 17.5 C6 12.5 4.5 10 4.5 7.6 C4.5 4.6 6.9 2.5 10 2.5 C13.1 2.5 15.5 4.6 15.5 7.6 C15.5 10 14 12.5 10 17.5 Z" />
      <path d="M8 7.6 h4 M10 5.6 v4" className="icon-thin" />
    </>
  ),
  stakes: (
    <>
      <path d="M4 4 v3 M10 4 v3 M16 4 v3 M4 13 v3 M10 13 v3 M16 13 v3" />
      <path d="M4 5.5 h12 v9 h-12" className="icon-thin" />
    </>
  ),
  mirror: (
    <>
      <path d="M10 2.5 v15" strokeDasharray="2.6 1.8" />
      <path d="M7.6 6 L3 14 H7.6 Z" />
      <path d="M12.4 6 L17 14 H12.4 Z" className="icon-thin" />
    </>
  ),
  mark: (
    <>
      <path d="M10 3.5 L15 11 H5 Z" className="icon-full" />
      <path d="M3 15.5 h14" />
    </>
  ),
  lot: <path d="M3.5 5 L16 3.5 L17 15 L4.5 16.5 Z" strokeDasharray="4.5 1.7 1 1.7" />,
  building: (
    <>
      <path d="M3 5 h14 v10 h-14 Z" />
      <path d="M3 5 L17 15 M17 5 L3 15" className="icon-thin" />
    </>
  ),
  door: (
    <>
      <path d="M2 13 h3.5 M14.5 13 H18" />
      <path d="M5.5 13 h9" className="icon-heavy" />
      <path d="M5.5 13 A9 9 0 0 1 12 4.2" className="icon-thin" />
    </>
  ),
  drive: (
    <>
      <path d="M4 18 C4 12 8.5 9 8 2.5 M13.5 18 C13.5 12.5 15.6 9 15.2 2.5" />
      <path d="M8.9 17 C9 12 12 9 11.6 3.5" strokeDasharray="2.4 2" className="icon-thin" />
    </>
  ),
  breakline: (
    <>
      <path d="M2.5 14.5 L8 6.5 L12.5 11.5 L17.5 5" />
      <path d="M2 9.5 L7 2.5 M8.5 17 L13 17.5 L18 10.5" strokeDasharray="2.4 2" className="icon-thin" />
    </>
  ),
  pit: (
    <>
      <path d="M2 5.5 h4 v8 h8 v-8 h4" />
      <path d="M6 9 h8 M10 2 v4 M8.3 4.4 L10 6.2 L11.7 4.4" className="icon-thin" />
    </>
  ),
  earth: (
    <>
      <path d="M2 14.5 L7 7.5 H13 L18 14.5 Z" />
      <path d="M2 17.5 H18 M8 10.5 h4" className="icon-thin" />
    </>
  ),
  swale: (
    <>
      <path d="M2 5 C6 5 6.5 13.5 10 13.5 C13.5 13.5 14 5 18 5" />
      <path d="M7 17 h6 M11 15.2 L13.2 17 L11 18.8" className="icon-thin" />
    </>
  ),
  "swale-route": (
    <>
      <path d="M3 16 C7 16 6 8 10 7 C14 6 14 4 17 4" />
      <path d="M3 14 v4 M15 2.5 L17.4 4 L15.6 6.2" className="icon-thin" />
    </>
  ),
  measure: (
    <>
      <path d="M2.8 13.2 L13.2 2.8 L17.2 6.8 L6.8 17.2 Z" />
      <path d="M5.6 10.4 l1.6 1.6 M8 8 l2.4 2.4 M10.4 5.6 l1.6 1.6" className="icon-thin" />
    </>
  ),
  feature: kindStrokes.tree,
  window: (
    <>
      <path d="M2 10 h3.5 M14.5 10 H18" className="icon-heavy" />
      <path d="M5.5 7.5 h9 v5 h-9 Z M5.5 10 h9" className="icon-thin" />
    </>
  ),
  note: (
    <>
      <path d="M3 4 h14 M3 8 h14 M3 12 h7" />
      <path d="M12.5 12.5 L16.5 16.5 M16.8 13.8 v3 h-3" className="icon-thin" />
    </>
  ),
  dimension: (
    <>
      <path d="M3.5 5 v11 M16.5 5 v11" className="icon-thin" />
      <path d="M3.5 9 h13 M2 10.5 L5 7.5 M15 10.5 L18 7.5" />
    </>
  ),
  section: (
    <>
      <path d="M4 14 H16" strokeDasharray="4.4 1.6 0.8 1.6" className="icon-thin" />
      <path d="M4 14 V6 M2 8.2 L4 5.8 L6 8.2 M16 14 V6 M14 8.2 L16 5.8 L18 8.2" />
    </>
  ),
  "zoom-in": <path d="M10 4 v12 M4 10 h12" />,
  "zoom-out": <path d="M4 10 h12" />,
  fit: <path d="M3 7 V3 h4 M13 3 h4 v4 M17 13 v4 h-4 M7 17 H3 v-4" />,
  "fit-building": (
    <>
      <path d="M3 6 V3 h3 M14 3 h3 v3 M17 14 v3 h-3 M6 17 H3 v-3" />
      <path d="M6.5 7.5 h7 v5 h-7 Z" />
    </>
  ),
  "fit-selection": (
    <>
      <path d="M3 6 V3 h3 M14 3 h3 v3 M17 14 v3 h-3 M6 17 H3 v-3" />
      <path d="M7 6.5 L13.2 10.6 L10.4 11.1 L8.9 13.8 Z" />
    </>
  ),
  locked: (
    <>
      <path d="M5 9.5 h10 v7 h-10 Z" className="icon-full" />
      <path d="M7 9.5 V7 a3 3 0 0 1 6 0 v2.5" />
    </>
  ),
  unlocked: (
    <>
      <path d="M5 9.5 h10 v7 h-10 Z" />
      <path d="M7 9.5 V6 a3 3 0 0 1 5.8 -1" />
    </>
  ),
  layers: (
    <>
      <path d="M10 3 L17 7 L10 11 L3 7 Z" />
      <path d="M4.2 10.2 L10 13.6 L15.8 10.2 M4.2 13.4 L10 16.8 L15.8 13.4" className="icon-thin" />
    </>
  ),
};

export function Icon({ name }: { name: IconName }) {
  return (
    <svg className="icon" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      {strokes[name]}
    </svg>
  );
}
