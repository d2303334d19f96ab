/** Text with links to the glossary: `[[benchmark]]`, or `[[the mark|benchmark]]` where it reads otherwise. */
import { type Term, termOf } from "./glossary";

export interface Words {
  readonly text: string;
  /** The term that these words lead to. */
  readonly term: Term | null;
}

/** The text in pieces. Words that link to a term which isn't there stay plain (a test refuses such a link). */
export function wordsOf(text: string): readonly Words[] {
  return text.split(/(\[\[[^\]]+\]\])/).flatMap((piece) => {
    if (piece === "") return [];
    const [, inner] = /^\[\[([^\]]+)\]\]$/.exec(piece) ?? [];
    if (inner === undefined) return [{ text: piece, term: null }];
    const [shown, name] = namesIn(inner);
    return [{ text: shown, term: termOf(name) }];
  });
}

/** Names of the terms that the text links to, as written. */
export function linksIn(text: string): readonly string[] {
  return [...text.matchAll(/\[\[([^\]]+)\]\]/g)].map(([, inner = ""]) => namesIn(inner)[1]);
}

function namesIn(inner: string): [shown: string, name: string] {
  const [shown = "", name = shown] = inner.split("|");
  return [shown, name];
}
