import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import type { Option } from "./columns";

export interface CellEditorProps {
  readonly label: string;
  readonly start: string;
  /** Select what is there (F2 keeps the caret at its end). */
  readonly selectAll: boolean;
  /** The text so far, for the line below the table. */
  readonly onTyping: (text: string) => void;
  /** Hands the text on; the key says where the cursor goes. */
  readonly onDone: (text: string, event: KeyboardEvent | null) => void;
  readonly onCancel: () => void;
  readonly onPasteBlock: (text: string) => void;
}

/** Typing in a cell. */
export function CellEditor(props: CellEditorProps) {
  const [text, setText] = useState(props.start);
  const field = useRef<HTMLInputElement>(null);
  const over = useRef(false);
  const { selectAll } = props;
  useEffect(() => {
    const input = field.current;
    input?.focus();
    if (selectAll) input?.select();
    else input?.setSelectionRange(input.value.length, input.value.length);
  }, [selectAll]);
  const finish = (event: KeyboardEvent | null) => {
    if (over.current) return;
    over.current = true;
    props.onDone(text, event);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    // Enter and the arrows choose among an input method's words.
    if (event.nativeEvent.isComposing) event.stopPropagation();
    else if (
      event.key === "Enter" ||
      event.key === "Tab" ||
      event.key === "ArrowUp" ||
      event.key === "ArrowDown"
    ) {
      event.preventDefault();
      event.stopPropagation();
      finish(event);
    } else if (event.key === "Escape") {
      event.stopPropagation();
      over.current = true;
      props.onCancel();
      // Acts of the whole plan, such as Ctrl+S, go on to it.
    } else if (!event.ctrlKey && !event.metaKey) event.stopPropagation();
  };
  return (
    <input
      ref={field}
      className="cell-editor"
      aria-label={props.label}
      data-typed="true"
      spellCheck={false}
      autoComplete="off"
      value={text}
      onChange={(event) => {
        setText(event.currentTarget.value);
        props.onTyping(event.currentTarget.value);
      }}
      onKeyDown={onKeyDown}
      onBlur={() => finish(null)}
      onPaste={(event) => {
        const pasted = event.clipboardData.getData("text");
        if (!/[\t\n]/.test(pasted.trim())) return;
        event.preventDefault();
        over.current = true;
        props.onPasteBlock(pasted);
      }}
    />
  );
}

export interface CellChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
  readonly onChoose: (value: string) => void;
  readonly onDone: (event: KeyboardEvent | null) => void;
}

/** Choosing in a cell, by the system's own list. */
export function CellChoice({ label, value, options, onChoose, onDone }: CellChoiceProps) {
  const field = useRef<HTMLSelectElement>(null);
  useEffect(() => {
    const select = field.current;
    select?.focus();
    try {
      select?.showPicker?.();
    } catch {
      // Older browsers open it only by the person's own click or Space.
    }
  }, []);
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key !== "Enter" && event.key !== "Tab" && event.key !== "Escape") return;
    event.preventDefault();
    onDone(event.key === "Escape" ? null : event);
  };
  return (
    <select
      ref={field}
      className="cell-editor cell-choice"
      aria-label={label}
      value={value}
      onChange={(event) => onChoose(event.currentTarget.value)}
      onKeyDown={onKeyDown}
      onBlur={() => onDone(null)}
    >
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.words}
        </option>
      ))}
    </select>
  );
}
