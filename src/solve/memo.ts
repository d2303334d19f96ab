/**
 * Remembering the last answer of a stage.
 *
 * A stage reruns only when one of its arguments is another object than before (numbers: another value). Only
 * the last answer is kept, so memory can't grow. `forgetful` never remembers: tests compare the two.
 */

export interface Stage<Args extends readonly unknown[], Answer> {
  (...args: Args): Answer;
  /** Whether it would answer from memory. */
  knows(...args: Args): boolean;
  /** Takes an answer that was worked out elsewhere from just these arguments. */
  learn(answer: Answer, ...args: Args): void;
}

export type StageMaker = <Args extends readonly unknown[], Answer>(
  work: (...args: Args) => Answer,
) => Stage<Args, Answer>;

export const remember: StageMaker = <Args extends readonly unknown[], Answer>(
  work: (...args: Args) => Answer,
) => {
  let last: { readonly args: Args; readonly answer: Answer } | null = null;
  const knows = (...args: Args) => last?.args.every((arg, i) => Object.is(arg, args[i])) ?? false;
  const stage = (...args: Args): Answer => {
    if (!last || !knows(...args)) last = { args, answer: work(...args) };
    return last.answer;
  };
  const learn = (answer: Answer, ...args: Args) => {
    last = { args, answer };
  };
  return Object.assign(stage, { knows, learn });
};

export const forgetful: StageMaker = (work) =>
  Object.assign(work, { knows: () => false, learn: () => undefined });

/** Hands back the object of before when the new one says the same, so that later stages rest. */
export function steady<T>(same: (before: T, now: T) => boolean): (now: T) => T {
  let kept: T | undefined;
  let seen: T | undefined;
  return (now) => {
    if (kept === undefined || (now !== seen && !same(kept, now))) kept = now;
    seen = now;
    return kept;
  };
}
