/** North arrow, scale bar, and a bar of exact length to check the print by. */
import type { Display } from "../document/schema";
import { FOOT } from "../units";
import { inks } from "./inks";
import type { Rect } from "./papers";
import type { Pen } from "./pen";
import { type Scale, usesFeet } from "./scales";

const steps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

export interface ScaleBar {
  /** Length of one division on the ground, in the bar's unit, and on paper, mm. */
  readonly step: number;
  readonly stepMm: number;
  readonly divisions: number;
  readonly unit: "′" | " m";
}

/** Divisions in round feet or metres, the whole no longer than `room` mm. */
export function scaleBar(scale: Scale, display: Display, room: number): ScaleBar {
  const feet = usesFeet(display);
  const unitMm = ((feet ? FOOT : 1) * 1000) / scale.ratio;
  const divisions = 4;
  const fitting = steps.filter((step) => step * unitMm * divisions <= room);
  const step = fitting[fitting.length - 1] ?? 1;
  return { step, stepMm: step * unitMm, divisions, unit: feet ? "′" : " m" };
}

export function drawScaleBar(pen: Pen, bar: ScaleBar, x: number, y: number): void {
  const height = 1.5;
  for (let i = 0; i < bar.divisions; i++) {
    const left = x + i * bar.stepMm;
    pen.rectangle(left, y, bar.stepMm, height, i % 2 === 0 ? inks.ink : "#ffffff", {
      colour: inks.ink,
      width: 0.18,
    });
  }
  for (let i = 0; i <= bar.divisions; i++) {
    const unit = i === bar.divisions || bar.unit === "′" ? bar.unit : "";
    const text = `${i * bar.step}${unit}`;
    pen.text(text, x + i * bar.stepMm, y + height + 3.2, { size: 2.6, colour: inks.ink, anchor: "middle" });
  }
}

/** Exactly 4 inches, or 100 mm: a printer that shrinks the page gives itself away. */
export function checkBarLength(display: Display): number {
  return usesFeet(display) ? 101.6 : 100;
}

export function drawCheckBar(pen: Pen, display: Display, x: number, y: number): void {
  const length = checkBarLength(display);
  const words = usesFeet(display) ? "4 in" : "100 mm";
  const stroke = { colour: inks.ink, width: 0.25 };
  pen.line([x, y, x + length, y], stroke);
  for (const end of [x, x + length]) pen.line([end, y - 1.4, end, y + 1.4], stroke);
  const text = `This line is ${words} long on a true print; if it isn't, don't scale from the sheet.`;
  pen.text(text, x, y + 3.9, { size: 2.4, colour: inks.soft });
}

/** An arrow to true north; `north` is the plan's direction of north, clockwise from up. */
export function drawNorth(pen: Pen, north: number, x: number, y: number, size: number): void {
  const s = Math.sin(north);
  const c = Math.cos(north);
  const at = (right: number, up: number): [number, number] => [
    x + right * c + up * s,
    y + right * s - up * c,
  ];
  const half = size / 2;
  pen.area([[...at(0, half), ...at(-size * 0.17, -half), ...at(0, -half * 0.62)]], inks.ink);
  pen.area([[...at(0, half), ...at(size * 0.17, -half), ...at(0, -half * 0.62)]], "#ffffff", {
    colour: inks.ink,
    width: 0.25,
  });
  const [nx, ny] = at(0, half + 2.6);
  pen.text("N", nx, ny + 1.2, { size: 3.6, weight: 600, colour: inks.ink, anchor: "middle" });
}

/** Scale bar, scale in words, check bar and north arrow along the foot of the plan. */
export function drawStrip(pen: Pen, strip: Rect, scale: Scale, display: Display, north: number): void {
  const narrow = strip.width < 205;
  const check = checkBarLength(display);
  const left = strip.x + 6;
  const northRoom = 16;
  const room = Math.min(90, strip.width - check - northRoom - (narrow ? 20 : 30));
  const bar = scaleBar(scale, display, room);
  const y = strip.y + 7.6;
  pen.text(`Scale ${scale.words}`, left, y - 2, { size: 3, weight: 600, colour: inks.ink });
  drawScaleBar(pen, bar, left, y);
  const checkX = strip.x + strip.width - northRoom - check - 4;
  drawCheckBar(pen, display, checkX, y);
  drawNorth(pen, north, strip.x + strip.width - northRoom / 2, strip.y + 9.5, 8.5);
}
