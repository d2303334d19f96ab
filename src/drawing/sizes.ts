/** Sizes of symbols, in paper millimetres: drawn here, kept free of texts there. */
export const cornerRing = 2.4;
export const shotCross = 1.8;
export const markTriangle = 3.4;
export const swaleChevron = 2.2;
/** A test pit. */
export const pitRing = 2.6;
/** A feature that is one place: a tree, a well. */
export const featureSymbol = 2.4;
