/** Our own icons: 20 × 20, one stroke, drawn in the colour of the text beside them. */

import { memo } from "react";

const drawings = {
  undo: "M7 4 3 8l4 4M3.5 8H12a4.5 4.5 0 0 1 0 9H8",
  redo: "m13 4 4 4-4 4M16.5 8H8a4.5 4.5 0 0 0 0 9h4",
  history: "M4 3.5v4h4M4.3 7.3A6.8 6.8 0 1 1 3.2 11M10 6.5v4l2.8 1.8",
  find: "m13 13 4 4M8.5 14a5.5 5.5 0 1 1 0-11 5.5 5.5 0 0 1 0 11Z",
  sun: "M10 13.5a3.5 3.5 0 1 0 0-7 3.5 3.5 0 0 0 0 7ZM10 1.5v2M10 16.5v2M1.5 10h2M16.5 10h2M4 4l1.4 1.4M14.6 14.6 16 16M4 16l1.4-1.4M14.6 5.4 16 4",
  moon: "M16.5 12A7 7 0 0 1 8 3.5a7 7 0 1 0 8.5 8.5Z",
  system:
    "M10 17.5a7.5 7.5 0 1 0 0-15 7.5 7.5 0 0 0 0 15ZM10 2.5v15M10 5.5h5.9M10 8.5h7.3M10 11.5h7.3M10 14.5h5.9",
  down: "m5.5 8 4.5 4.5L14.5 8",
  up: "m5.5 12 4.5-4.5 4.5 4.5",
  right: "m8 5.5 4.5 4.5L8 14.5",
  close: "m5 5 10 10M15 5 5 15",
  plus: "M10 4v12M4 10h12",
  trash: "M4 6h12M8 6V3.5h4V6M5.5 6l.8 10.5h7.4L14.5 6M8.5 9v4.5M11.5 9v4.5",
  place: "M10 17.5S4.5 12 4.5 8a5.5 5.5 0 0 1 11 0c0 4-5.5 9.5-5.5 9.5ZM10 10a2 2 0 1 0 0-4 2 2 0 0 0 0 4Z",
  warn: "M10 3 18 16.5H2L10 3ZM10 8v4M10 14.3v.2",
  stop: "M7 2.5h6L17.5 7v6L13 17.5H7L2.5 13V7L7 2.5ZM10 6v5M10 13.5v.2",
  note: "M10 17.5a7.5 7.5 0 1 0 0-15 7.5 7.5 0 0 0 0 15ZM10 9v5M10 6.2v.2",
  check: "m4 10.5 4 4 8-9",
  sheet: "M4 2.5h8l4 4v11H4v-15ZM12 2.5v4h4M7 10h6M7 13h6",
  folder: "M2.5 5v11h15V7H10L8 5H2.5Z",
  picture:
    "M2.5 4h15v12h-15V4ZM2.5 13.5l4-4 3.5 3.5 3-3 4.5 4.5M13 8.2a1.2 1.2 0 1 0 0-2.4 1.2 1.2 0 0 0 0 2.4Z",
  eye: "M2 10s3-5 8-5 8 5 8 5-3 5-8 5-8-5-8-5ZM10 12.3a2.3 2.3 0 1 0 0-4.6 2.3 2.3 0 0 0 0 4.6Z",
  eyeShut: "M2 9s3 4.5 8 4.5S18 9 18 9M4.6 11.6 3 13.6M10 13.5V16M15.4 11.6l1.6 2",
  lock: "M4.5 9h11v8h-11V9ZM7 9V6.5a3 3 0 0 1 6 0V9M10 12v2",
  unlocked: "M4.5 9h11v8h-11V9ZM7 9V5.5a3 3 0 0 1 5.6-1.5M10 12v2",
  help: "M10 17.5a7.5 7.5 0 1 0 0-15 7.5 7.5 0 0 0 0 15ZM7.8 8.1a2.2 2.2 0 1 1 3.4 1.8c-.8.5-1.2 1-1.2 1.9M10 14.1v.2",
  draw: "m3 17 1-4 9.5-9.5 3 3L7 16l-4 1ZM12 5l3 3",
} as const;

export type IconName = keyof typeof drawings;

export const Icon = memo(function Icon({ name }: { name: IconName }) {
  return (
    <svg className="glyph" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path d={drawings[name]} />
    </svg>
  );
});

/** The product's sign, as in assets/icon.svg: a building on a level floor line, above ground that falls. */
export function Logo() {
  return (
    <svg className="logo" viewBox="6 4 52 54" aria-hidden="true" focusable="false">
      <path className="logo-wall" d="M16 36h32v16.5L16 45.5z" />
      <path className="logo-building" d="M16 28V20L40 8l8 12v8h-8v-8H28v8z" />
      <path className="logo-floor" d="M8 34h48" />
      <path className="logo-ground" d="m8 43.75 48 10.5" />
    </svg>
  );
}
