import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { IconAction } from "../fields/Choice";

interface FindBarProps {
  /** Seen rows that hold the words. */
  readonly matches: (words: string) => readonly number[];
  /** Row of the cursor. */
  readonly row: number;
  readonly onGo: (row: number) => void;
  readonly onClose: () => void;
}

/** Finds words in the book: Enter goes to the next row that holds them, Shift+Enter to the one before, Esc back. */
export function FindBar({ matches, row, onGo, onClose }: FindBarProps) {
  const [words, setWords] = useState("");
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const found = matches(words);
  const at = found.indexOf(row);
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.nativeEvent.isComposing) return;
    if (event.key === "Escape") return onClose();
    if (event.key !== "Enter") return;
    event.preventDefault();
    const next = event.shiftKey
      ? ([...found].reverse().find((each) => each < row) ?? found.at(-1))
      : (found.find((each) => each > row) ?? found[0]);
    if (next !== undefined) onGo(next);
  };
  return (
    <section className="book-status book-find" aria-label="Find in the level book">
      <label className="book-find-label">
        <span>Find</span>
        <input
          ref={field}
          className="field-input field-wide"
          data-typed="true"
          spellCheck={false}
          value={words}
          onChange={(event) => setWords(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
      </label>
      <span role="status">
        {words.trim() === "" ? "Enter: next. Shift+Enter: the one before." : countWords(at, found.length)}
      </span>
      <span className="head-gap" />
      <IconAction icon="close" label="Close the search" onPress={onClose} />
    </section>
  );
}

function countWords(at: number, count: number): string {
  if (count === 0) return "In no row.";
  return at < 0 ? `In ${count} row${count === 1 ? "" : "s"}. Enter goes there.` : `${at + 1} of ${count}`;
}
