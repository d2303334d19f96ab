/**
 * What slip would explain an odd reading: the usual ones of rods, tapes and typing.
 *
 * Units   metres; readings as the rod showed them.
 * Method  Each slip gives the reading that should have been; it explains where that lies within what chance allows of the
 *         reading which the neighbours predict. The nearest counts, plain slips before far-fetched ones.
 * Source  common practice: a foot or metre misread, units mixed, digits swapped, two rows exchanged.
 */
import type { Measure } from "../document/schema";
import { FOOT, type LengthNotation, parseLength, unitSlips } from "../units";

export interface Cause {
  readonly words: string;
  /** The reading that should stand there, m. */
  readonly reading: number;
}

interface Guess extends Cause {
  /** How far-fetched it is beside the plainest slips, in allowed misses. */
  readonly strain: number;
}

const NOTATIONS: readonly LengthNotation[] = ["in", "ft-in", "ft", "m", "cm", "mm"];

/** The likeliest slip, null where none comes within `allowed` of the reading that the neighbours predict. */
export function likelyCause(reading: Measure, predicted: number, allowed: number): Cause | null {
  if (isMachineWritten(reading)) return null;
  let best: Cause | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const guess of [...wholeUnits(reading.m), ...wrongUnits(reading.m), ...swappedDigits(reading)]) {
    const miss = Math.abs(guess.reading - predicted) / allowed;
    if (miss > 1 || miss + guess.strain >= least) continue;
    least = miss + guess.strain;
    best = { words: guess.words, reading: guess.reading };
  }
  return best;
}

/** Nobody types metres to a hundredth of a millimetre: a program wrote them, and it doesn't slip as people do. */
function isMachineWritten({ text }: Measure): boolean {
  return /[.,]\d{5,} m$/.test(text);
}

function wholeUnits(m: number): Guess[] {
  return [
    { words: "It is a foot too small.", reading: m + FOOT, strain: 0 },
    { words: "It is a foot too large.", reading: m - FOOT, strain: 0 },
    { words: "It is a metre too small.", reading: m + 1, strain: 0 },
    { words: "It is a metre too large.", reading: m - 1, strain: 0 },
  ];
}

function wrongUnits(m: number): Guess[] {
  return unitSlips.map(([factor, words]) => ({ words: `It is ${words}.`, reading: m * factor, strain: 0.5 }));
}

/** Two neighbouring digits exchanged in what was typed, read in the notation that gives its value. */
function swappedDigits({ text, m }: Measure): Guess[] {
  const notation = NOTATIONS.find((each) => {
    const parsed = parseLength(text, each);
    return parsed.ok && Math.abs(parsed.m - m) < 1e-9;
  });
  if (notation === undefined) return [];
  return [...text].flatMap((digit, i): Guess[] => {
    const next = text[i + 1] ?? "";
    if (!/\d/.test(digit) || !/\d/.test(next) || digit === next) return [];
    const swapped = text.slice(0, i) + next + digit + text.slice(i + 2);
    const parsed = parseLength(swapped, notation);
    if (!parsed.ok) return [];
    return [{ words: `Two digits are exchanged: ${swapped}.`, reading: parsed.m, strain: 0.25 }];
  });
}
