import { Icon } from "../icons";
import type { Notation } from "../notation";
import type { Column } from "./columns";
import type { Draft } from "./drafts";
import { typingWords } from "./understood";

interface StatusLineProps {
  readonly column: Column | undefined;
  readonly typing: string | null;
  readonly draft: Draft | null;
  readonly notation: Notation;
}

/** Below the table: how typing is understood, why a cell wasn't, or what may be typed. */
export function StatusLine({ column, typing, draft, notation }: StatusLineProps) {
  const live = column?.id === "reading" && typing !== null ? typingWords(typing, notation) : null;
  if (live) return <p className={`book-status${live.ok ? " book-status-ok" : ""}`}>{live.words}</p>;
  if (draft)
    return (
      <p className="book-status book-status-bad" role="alert">
        <Icon name="warn" />
        {draft.why}
      </p>
    );
  return <p className="book-status">{column?.hint}</p>;
}
