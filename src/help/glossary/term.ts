/** A word of the trade, in our own sentences. */
export interface Term {
  readonly name: string;
  /** Other words for it, and what it is called elsewhere. */
  readonly also?: readonly string[];
  /** What it is and what it is for; `[[words]]` leads to another term (see `words.ts`). */
  readonly meaning: string;
}
