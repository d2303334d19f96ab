/** The words of the trade that the program and its guides use. */
import { buildingTerms } from "./building";
import { groundTerms } from "./ground";
import { surveyTerms } from "./survey";
import type { Term } from "./term";

export type { Term } from "./term";

/** All terms, by the alphabet. */
export const glossary: readonly Term[] = [...surveyTerms, ...groundTerms, ...buildingTerms].sort((a, b) =>
  a.name < b.name ? -1 : 1,
);

const byName = new Map(
  glossary.flatMap((term) => [term.name, ...(term.also ?? [])].map((name) => [name.toLowerCase(), term])),
);

/** The term of this name, or that is also called so; null where there is none. */
export function termOf(name: string): Term | null {
  return byName.get(name.toLowerCase()) ?? null;
}

/**
 * Terms for what was typed, the best first: names that start so, names that have it, other names, then meanings.
 * An empty search gives all of them.
 */
export function searchTerms(typed: string): readonly Term[] {
  const wanted = typed.trim().toLowerCase();
  if (wanted === "") return glossary;
  const ranked = glossary.map((term) => ({ term, rank: rankOf(term, wanted) }));
  return ranked
    .filter(({ rank }) => rank < ranks)
    .sort((a, b) => a.rank - b.rank)
    .map(({ term }) => term);
}

const ranks = 4;

function rankOf({ name, also = [], meaning }: Term, wanted: string): number {
  if (name.startsWith(wanted)) return 0;
  if (name.includes(wanted)) return 1;
  if (also.some((other) => other.toLowerCase().includes(wanted))) return 2;
  return meaning.toLowerCase().includes(wanted) ? 3 : ranks;
}
