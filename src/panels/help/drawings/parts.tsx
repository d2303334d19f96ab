/** What the guides' drawings are made of. One unit is about a pixel; colours follow the theme. */
import type { ReactNode } from "react";

export interface DrawingProps {
  /** What it shows, for people who listen. */
  readonly label: string;
}

export function Sheet({ label, children }: DrawingProps & { readonly children: ReactNode }) {
  return (
    <svg className="drawing" viewBox="0 0 460 210" role="img" aria-label={label}>
      {children}
    </svg>
  );
}

export type Look = "ink" | "soft" | "accent" | "water" | "cut" | "fill";

export interface NoteProps {
  readonly x: number;
  readonly y: number;
  readonly children: string;
  readonly look?: Look;
  readonly anchor?: "start" | "middle" | "end";
}

export function Note({ x, y, children, look = "ink", anchor = "start" }: NoteProps) {
  return (
    <text className={`drawing-note drawing-text-${look}`} x={x} y={y} textAnchor={anchor}>
      {children}
    </text>
  );
}

export function Line({ d, look = "ink", dashed }: { d: string; look?: Look; dashed?: boolean }) {
  return <path className={`drawing-line drawing-${look}${dashed ? " drawing-dashed" : ""}`} d={d} />;
}

/** A plain area: earth as it is, earth filled in, a thing that stands, stone, concrete, water. */
export type Stuff = "earth" | "filled" | "thing" | "stone" | "concrete" | "wet";

export function Area({ d, of }: { d: string; of: Stuff }) {
  return <path className={`drawing-area drawing-of-${of}`} d={d} />;
}

export interface SizeProps {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly look?: Look;
}

/** A dimension between two places, upright or level, with ticks across its ends. */
export function Size({ from: [x1, y1], to: [x2, y2], look = "accent" }: SizeProps) {
  const upright = x1 === x2;
  const tick = (x: number, y: number) => (upright ? `M${x - 4} ${y}h8` : `M${x} ${y - 4}v8`);
  return <Line look={look} d={`M${x1} ${y1}L${x2} ${y2}${tick(x1, y1)}${tick(x2, y2)}`} />;
}

/** An arrow with its head at `to`. */
export function Arrow({ from: [x1, y1], to: [x2, y2], look = "water" }: SizeProps) {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const wing = (side: 1 | -1) => `${x2 - 7 * ux - side * 4 * uy} ${y2 - 7 * uy + side * 4 * ux}`;
  return <Line look={look} d={`M${x1} ${y1}L${x2} ${y2}M${wing(1)}L${x2} ${y2}L${wing(-1)}`} />;
}

/** The laser on its tripod: `x` its middle, `beam` the height of its beam, `foot` the ground below it. */
export function Laser({ x, beam, foot }: { x: number; beam: number; foot: number }) {
  return (
    <>
      <Line
        d={`M${x} ${beam + 9}L${x - 13} ${foot + 1}M${x} ${beam + 9}V${foot - 1}M${x} ${beam + 9}L${x + 13} ${foot - 2}`}
      />
      <Area of="thing" d={`M${x - 9} ${beam - 6}h18v15h-18z`} />
      <circle className="drawing-dot" cx={x} cy={beam} r={2.5} />
    </>
  );
}

/** A rod on the ground at `foot`, reaching a little above the beam. */
export function Rod({ x, beam, foot }: { x: number; beam: number; foot: number }) {
  const ticks = Array.from(
    { length: Math.floor((foot - beam + 14) / 8) },
    (_, i) => `M${x} ${foot - 8 * (i + 1)}h4`,
  );
  return <Line d={`M${x} ${foot}V${beam - 16}h4V${foot}${ticks.join("")}`} />;
}
