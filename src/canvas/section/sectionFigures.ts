/** What a section shows at one distance, in words. */
import type { Display } from "../../document";
import type { SectionLine } from "../../solve/results";
import { depthInWords, formatLength, roundingFor } from "../../units";

export interface SectionFigures {
  readonly existing: number;
  readonly finished: number;
  /** "41′ 3″ along · 1′ 2″ of fill". */
  readonly words: string;
}

/** Figures at a distance, between the section's samples; null beyond its ends. */
export function sectionFigures(
  { existing, finished }: SectionLine,
  along: number,
  display: Display,
): SectionFigures | null {
  const last = existing.length / 2 - 1;
  if (last < 1 || along < (existing[0] as number) || along > (existing[2 * last] as number)) return null;
  let i = 0;
  while (i < last - 1 && (existing[2 * i + 2] as number) < along) i++;
  const [from, to] = [existing[2 * i] as number, existing[2 * i + 2] as number];
  const share = to > from ? (along - from) / (to - from) : 0;
  const at = (line: Float64Array) =>
    (line[2 * i + 1] as number) + ((line[2 * i + 3] as number) - (line[2 * i + 1] as number)) * share;
  const [was, is] = [at(existing), at(finished)];
  const rounding = roundingFor(display.length, display);
  const distance = formatLength(along, display.length, rounding);
  const depth = depthInWords(is - was, display.length, rounding);
  return { existing: was, finished: is, words: `${distance} along · ${depth}` };
}
