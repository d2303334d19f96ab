/** A millimetre of paper on a screen of 96 dots an inch, px. */
export const pxPerMm = 96 / 25.4;
