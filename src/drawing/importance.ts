/**
 * Whose words matter more: layers in the order in which they look for room for their labels. Where there is little, on a
 * small plan or with large words, the last go without. Canvas and sheets both follow it.
 */
export const importance = [
  // What a person put at its place.
  "notes",
  "sections",
  "user-dimensions",
  // What is built, and what all heights are told from.
  "building",
  "corners",
  "squaring",
  "marks",
  "windows",
  "dimensions",
  "section-ends",
  "drives",
  "swales",
  "ground-shapes",
  "ponds",
  "depth-spots",
  // What was there before.
  "pits",
  "lot",
  "setbacks",
  "features",
  "breaklines",
  "shots",
  // What fills the paper that is left.
  "finished",
  "existing",
  "water",
  // These write nothing.
  "section-shown",
  "runs",
  "guessed",
] as const;

export type Ranked = (typeof importance)[number];
