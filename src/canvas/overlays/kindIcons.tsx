/** Icons of what can stand on a lot, drawn for this program on the same grid as the tools'. */
import type { ReactNode } from "react";
import type { Feature } from "../../document";
import type { BuildingKind } from "../tools/building/kinds";

export const kindStrokes: Readonly<Record<Feature["kind"], ReactNode>> = {
  tree: (
    <>
      <path d="M10 17.5 v-5.2 M7.4 17.5 h5.2" />
      <path d="M10 2.5 C13 2.5 15 4.6 15 7.4 C15 10.4 13 12.3 10 12.3 C7 12.3 5 10.4 5 7.4 C5 4.6 7 2.5 10 2.5 Z" />
    </>
  ),
  stump: (
    <>
      <path d="M5.5 8 C5.5 5.6 14.5 5.6 14.5 8 C14.5 10.4 5.5 10.4 5.5 8 Z" />
      <path d="M5.5 8 C5.5 12 5 14 3.5 16 M14.5 8 C14.5 12 15 14 16.5 16 M3.5 16 h13" />
    </>
  ),
  well: (
    <>
      <path d="M4.5 9.5 C4.5 7 15.5 7 15.5 9.5 C15.5 12 4.5 12 4.5 9.5 Z M4.5 9.5 v6 C4.5 18 15.5 18 15.5 15.5 v-6" />
      <path d="M10 2.5 v6.8" className="icon-thin" />
    </>
  ),
  septic: (
    <>
      <path d="M3 4.5 h14 v11 h-14 Z" strokeDasharray="3 1.6" />
      <path d="M6 7.8 h8 M6 10 h8 M6 12.2 h8" className="icon-thin" />
    </>
  ),
  "buried-line": (
    <>
      <path d="M2 6 h16" className="icon-thin" />
      <path d="M2 13 h16" strokeDasharray="4 1.6 1 1.6" />
      <path d="M5 6 l-1.6 2 M9 6 l-1.6 2 M13 6 l-1.6 2 M17 6 l-1.6 2" className="icon-thin" />
    </>
  ),
  "overhead-line": (
    <>
      <path d="M4.5 17.5 V4 M15.5 17.5 V4 M2.5 5.5 h4 M13.5 5.5 h4" />
      <path d="M4.5 5.5 C8 9 12 9 15.5 5.5" className="icon-thin" />
    </>
  ),
  house: <path d="M3 9.5 L10 3.5 L17 9.5 M5 8 v8.5 h10 V8 M8.5 16.5 v-4.5 h3 v4.5" />,
  fence: <path d="M2 8 h16 M2 13 h16 M5 17 V5.5 M10 17 V5.5 M15 17 V5.5" />,
  road: (
    <>
      <path d="M6.5 2.5 L3 17.5 M13.5 2.5 L17 17.5" />
      <path d="M10 3.5 v13" strokeDasharray="2.6 2" className="icon-thin" />
    </>
  ),
  water: (
    <path d="M2 7 C4 5 6 5 8 7 C10 9 12 9 14 7 C15.5 5.5 17 5.5 18 6.5 M2 13 C4 11 6 11 8 13 C10 15 12 15 14 13 C15.5 11.5 17 11.5 18 12.5" />
  ),
  other: <path d="M10 4 v12 M4 10 h12" />,
};

/** The ways to draw a building. */
const buildingStrokes: Readonly<Record<BuildingKind, ReactNode>> = {
  corners: (
    <>
      <path d="M3.5 5 h13 v10 h-13 Z" />
      <path d="M3.5 15 L16.5 5" className="icon-thin" strokeDasharray="2 1.6" />
    </>
  ),
  side: (
    <>
      <path d="M3 13 L13 16.5" />
      <path d="M3 13 L6.5 4 L16.5 7.5 L13 16.5" className="icon-thin" strokeDasharray="2 1.6" />
    </>
  ),
  outline: <path d="M3.5 4 h6.5 v5 h6.5 v7 h-13 Z" />,
  pull: (
    <>
      <path d="M3 16.5 v-6 h4 v-4 h6 v4 h4 v6" />
      <path d="M10 9.5 V1.5 M7.8 3.6 L10 1.5 L12.2 3.6" className="icon-thin" />
    </>
  ),
  "add-on": (
    <>
      <path d="M3 8.5 h8 v8 h-8 Z" />
      <path d="M11 10.5 h6 v6 h-6 M14 2.5 v5 M11.5 5 h5" className="icon-thin" />
    </>
  ),
};

const allStrokes: Readonly<Record<string, ReactNode>> = { ...kindStrokes, ...buildingStrokes };

/** Nothing for a kind that only its word tells. */
export function KindIcon({ kind }: { kind: string }) {
  if (allStrokes[kind] === undefined) return null;
  return (
    <svg className="icon" width="18" height="18" viewBox="0 0 20 20" aria-hidden="true">
      {allStrokes[kind]}
    </svg>
  );
}
