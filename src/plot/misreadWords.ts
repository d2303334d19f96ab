/** A misread tape in the field's words. */
import type { Misread, Suspect } from "./misread";
import type { TapedLength } from "./squaring";

export interface Telling {
  readonly length: (distance: number) => string;
  /** Lengths are metres, so that a foot misread is known from a metre. */
  readonly metres: boolean;
}

export function tapeName(tape: TapedLength | undefined): string {
  return tape === undefined ? "a tape" : `${tape.from}–${tape.to}`;
}

export function misreadWords(
  { impossible, suspect, among }: Misread,
  tapes: readonly TapedLength[],
  telling: Telling,
): { readonly what: string; readonly how: string } {
  const cannot = impossible === null ? "" : impossibleWords(impossible, tapes, telling);
  if (suspect === null) {
    const names = among.map((i) => tapeName(tapes[i]));
    const which =
      among.length > 0 && among.length < tapes.length
        ? `One of ${names.join(", ")} is misread`
        : "One of the tapes is misread";
    const spare = cannot === "" ? "They contradict each other by more than taping does." : cannot;
    return {
      what: `${spare} ${which}; with so few spare measures none can say which.`,
      how: "Pull them again. No corner is to be moved before they fit.",
    };
  }
  const name = tapeName(tapes[suspect.tape]);
  return {
    what: `${cannot}${cannot === "" ? "" : " "}${name} doesn't fit the others: ${offWords(suspect, telling)}.`,
    how: `Pull ${name} again. No corner is to be moved for it; what the other tapes say without it is told apart.`,
  };
}

function impossibleWords(
  { tape, other: [one, two] }: NonNullable<Misread["impossible"]>,
  tapes: readonly TapedLength[],
  { length }: Telling,
): string {
  const reach = (tapes[one]?.distance ?? 0) + (tapes[two]?.distance ?? 0);
  return `${tapeName(tapes[tape])} can't be ${length(tapes[tape]?.distance ?? 0)}: ${tapeName(tapes[one])} and ${tapeName(tapes[two])} together reach ${length(reach)} at most.`;
}

/** Lengths that a tape is misread by, m. */
const SLIPS = [
  [0.3048, "a foot misread"],
  [3.048, "ten feet misread"],
  [1, "a metre misread"],
  [0.1, "a decimetre misread"],
] as const;

/** Near enough to a usual slip to be called one, of its size; common tapes are held no better over a building. */
const NEAR = 0.12;

function offWords({ by }: Suspect, { length, metres }: Telling): string {
  const size = Math.abs(by);
  const slip = metres ? SLIPS.find(([slipped]) => Math.abs(size - slipped) < NEAR * slipped) : undefined;
  return `about ${length(size)} too ${by > 0 ? "long" : "short"}${slip === undefined ? "" : `, as with ${slip[1]}`}`;
}
