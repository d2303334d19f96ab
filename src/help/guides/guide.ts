/** The steps that have a guide, named as in the window. */
export const guideSteps = [
  "lot",
  "shots",
  "building",
  "drive",
  "water",
  "floor",
  "foundation",
  "quantities",
  "setout",
  "sheets",
] as const;
export type GuideStep = (typeof guideSteps)[number];

/** A short guide to one step. Texts may link to the glossary (see `words.ts`). */
export interface StepGuide {
  readonly title: string;
  /** What the step settles, in a sentence or two. */
  readonly about: string;
  /** What one does, in order. */
  readonly doing: readonly string[];
  /** What deserves a second look. */
  readonly watch: readonly string[];
  /** What goes wrong again and again. */
  readonly slips: readonly string[];
  /** Where it can hurt someone, or where others decide. */
  readonly cautions: readonly string[];
  /** What the drawing shows. */
  readonly caption: string;
}
