/** What the drawing says: lengths, heights and grades in the user's notation. */
import type { Display } from "../document/schema";
import type { CornerResult, Results } from "../solve/results";
import { depthInWords, formatLength, formatSigned, formatSlope } from "../units";
import { type DrawContext, heightOrigin, toldFromMark } from "./context";

/** A length on the plan. */
export function lengthText(m: number, display: Display): string {
  return formatLength(m, display.length, display.rounding);
}

/** "32′" for "32′ 0″": a size over all needs no empty inches. */
export function overAllText(m: number, display: Display): string {
  return lengthText(m, display).replace(/ 0″$/, "");
}

/** Metric figures on paper go without their unit, which the title block names; feet and inches keep theirs. */
export function withoutUnit(text: string): string {
  return text.replace(/ (m|cm|mm)$/, "");
}

/** A dimension: on metric paper a bare number. */
export function dimensionText(m: number, display: Display, context: DrawContext): string {
  const text = lengthText(m, display);
  return context.medium === "paper" ? withoutUnit(text) : text;
}

/** A height told from the mark, with its sign, or in the datum when there is no mark; a bare number on metric paper. */
export function heightText(z: number, display: Display, results: Results, context: DrawContext): string {
  const text = toldFromMark(results, context)
    ? formatSigned(z - heightOrigin(results, context), display.length, display.rounding)
    : lengthText(z, display);
  return context.medium === "paper" ? withoutUnit(text) : text;
}

/** How far the wall or floor stands out of the ground: "10¾″ out", "3″ below ground". */
export function outText(aboveGround: number, display: Display): string {
  const text = lengthText(Math.abs(aboveGround), display);
  return aboveGround < 0 ? `${text} below ground` : `${text} out`;
}

/** What is to be done to the ground at a corner: "1′ 1″ of fill", "3½″ of cut", "no change". */
export function workInWords({ ground, finished }: CornerResult, display: Display): string {
  return depthInWords(finished - ground, display.length, display.rounding);
}

/** A grade in the user's notation, without a sign. */
export function gradeText(grade: number, display: Display): string {
  return formatSlope(Math.abs(grade), display.slope);
}
