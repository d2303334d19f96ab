/**
 * How wide a text is, without a font at hand: advance widths of Source Sans 3 in thousandths of an em, as
 * the font files in assets/fonts state them (kerning left out). Pure, so that drawing stays pure.
 */

/** Characters 32 to 126. */
const ascii = {
  400: [
    200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497,
    497, 497, 497, 497, 497, 249, 249, 497, 497, 497, 425, 847, 543, 588, 571, 615, 527, 494, 617, 652, 263,
    479, 579, 486, 727, 647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497,
    500, 542, 504, 553, 456, 555, 496, 292, 504, 544, 246, 247, 495, 255, 829, 547, 542, 555, 555, 347, 419,
    338, 544, 467, 719, 446, 467, 425, 303, 241, 303, 497,
  ],
  600: [
    200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513, 513, 513,
    513, 513, 513, 513, 513, 275, 275, 513, 513, 513, 444, 875, 558, 597, 576, 625, 538, 510, 628, 663, 282,
    494, 597, 502, 745, 657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324, 513,
    500, 549, 516, 563, 462, 564, 507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549, 564, 564, 373, 431,
    361, 556, 495, 748, 481, 495, 443, 324, 255, 324, 513,
  ],
} as const;

/** Characters 160 to 255. */
const latin = {
  400: [
    200, 289, 497, 497, 497, 497, 241, 497, 542, 744, 345, 429, 497, 311, 423, 542, 331, 497, 367, 367, 542,
    562, 560, 249, 542, 367, 365, 429, 781, 808, 796, 425, 544, 544, 544, 544, 544, 544, 822, 571, 527, 527,
    527, 527, 263, 263, 263, 263, 639, 647, 664, 664, 664, 664, 664, 497, 664, 645, 645, 645, 645, 476, 583,
    576, 504, 504, 504, 504, 504, 504, 778, 456, 496, 496, 496, 496, 246, 246, 246, 246, 544, 547, 542, 542,
    542, 542, 542, 497, 542, 544, 544, 544, 544, 467, 555, 467,
  ],
  600: [
    200, 315, 513, 513, 513, 513, 255, 513, 549, 747, 352, 455, 513, 322, 443, 549, 348, 513, 372, 372, 549,
    578, 599, 275, 549, 372, 369, 455, 795, 827, 807, 444, 558, 558, 558, 558, 558, 558, 834, 576, 538, 538,
    538, 538, 282, 282, 282, 282, 651, 656, 674, 674, 674, 674, 674, 513, 674, 655, 655, 655, 655, 501, 600,
    604, 516, 516, 516, 516, 516, 516, 780, 462, 507, 507, 507, 507, 262, 262, 262, 262, 552, 560, 549, 549,
    549, 549, 549, 513, 549, 556, 556, 556, 556, 495, 564, 495,
  ],
} as const;

const symbols = "⅛⅜⅝⅞′″⁄⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉→↑←↓≈≤≥∆−–—…“”‘’•▲☐\u2009\u202f";
const symbolAdvances = {
  400: [
    804, 821, 821, 801, 249, 426, 86, 367, 367, 367, 367, 367, 367, 367, 367, 367, 367, 367, 367, 367, 367,
    367, 367, 367, 619, 619, 619, 619, 497, 497, 497, 588, 497, 480, 800, 948, 426, 426, 249, 249, 304, 600,
    799, 100, 120,
  ],
  600: [
    821, 835, 835, 815, 275, 482, 91, 372, 372, 372, 372, 372, 372, 372, 372, 372, 372, 372, 372, 372, 372,
    372, 372, 372, 618, 618, 618, 618, 513, 513, 513, 614, 513, 480, 800, 964, 482, 482, 275, 275, 325, 600,
    803, 100, 120,
  ],
} as const;

/** For a character that is in none of the tables: a wide letter, so that the guess errs on the safe side. */
const unknown = 650;

export type Weight = 400 | 600;

function advanceTable(weight: Weight): ReadonlyMap<number, number> {
  const table = new Map<number, number>();
  for (const [i, advance] of ascii[weight].entries()) table.set(32 + i, advance);
  for (const [i, advance] of latin[weight].entries()) table.set(160 + i, advance);
  for (const [i, symbol] of Array.from(symbols).entries()) {
    table.set(symbol.codePointAt(0) ?? 0, symbolAdvances[weight][i] ?? unknown);
  }
  return table;
}

const tables: Readonly<Record<Weight, ReadonlyMap<number, number>>> = {
  400: advanceTable(400),
  600: advanceTable(600),
};

/**
 * Width of one line of text.
 *
 * Units  the answer is in the unit of `size` (the em).
 * Limits no kerning; a character outside the tables counts as 650 thousandths.
 */
export function textWidth(text: string, size: number, weight: Weight = 400): number {
  const table = tables[weight];
  let sum = 0;
  for (const character of text) sum += table.get(character.codePointAt(0) ?? 0) ?? unknown;
  return (sum * size) / 1000;
}

/** Shortens a text with an ellipsis until it fits; the text itself when it already does. */
export function ellipsize(text: string, width: number, size: number, weight: Weight = 400): string {
  if (textWidth(text, size, weight) <= width) return text;
  const characters = Array.from(text);
  while (characters.length > 0) {
    characters.pop();
    const shorter = `${characters.join("").trimEnd()}…`;
    if (textWidth(shorter, size, weight) <= width) return shorter;
  }
  return "";
}
