/** How much room the part below the plan takes, px: what was pulled by hand holds, else the plan comes first. */
export type DockKind = "section" | "levelbook" | "elevations" | "profile";

export interface DockRoom {
  readonly kind: DockKind;
  /** Its usual height. */
  readonly usual: number;
  /** Plan and dock together; null until it is measured. */
  readonly both: number | null;
  readonly windowHeight: number;
  readonly textSize: number;
}

/** What the plan is to keep of the window's height; a level book is what its step is about, so it may take more. */
const share: Readonly<Record<DockKind, number>> = {
  section: 0.45,
  levelbook: 0.4,
  elevations: 0.45,
  profile: 0.45,
};
/** Less than this shows nothing of use, px for words of usual size: head, and some of its drawing or three rows. */
const useful: Readonly<Record<DockKind, number>> = {
  section: 96,
  levelbook: 138,
  elevations: 110,
  profile: 104,
};
/** What is said below the plan: two lines and their rim. */
const said = { words: 36, still: 12 } as const;

/** The height that leaves the plan its share; null: it folds to its title. */
export function roomFor({ kind, usual, both, windowHeight, textSize }: DockRoom): number | null {
  if (both === null) return usual;
  const plan = share[kind] * windowHeight + said.words * textSize + said.still;
  const left = Math.floor(both - plan);
  if (left >= usual) return usual;
  return left >= useful[kind] * textSize ? left : null;
}
