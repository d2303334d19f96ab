/**
 * A field that keeps what was typed until it is understood: Enter or leaving it commits, Esc takes the typing back,
 * and a refusal stays beside the text that caused it.
 */
import { type KeyboardEvent, type ReactNode, useId, useRef, useState } from "react";
import { Icon } from "../icons";

export interface TypedFieldProps {
  readonly label: string;
  /** The present value as text. */
  readonly shown: string;
  /** Takes what was typed; answers with a message where it can't. */
  readonly commit: (text: string) => string | null;
  readonly help?: ReactNode;
  readonly unit?: string;
  readonly placeholder?: string;
  readonly disabled?: boolean;
  /** It belongs to a thing that is locked: it can be read and copied, not changed. */
  readonly locked?: boolean;
  /** "row": label left, field right. "stack": label above. "bare": the label is only heard. */
  readonly layout?: "row" | "stack" | "bare";
  readonly wide?: boolean;
  readonly figure?: boolean;
  /** What is being typed, as it would be understood; shown where that isn't plain from the text. */
  readonly echo?: (text: string) => string | null;
}

export function TypedField(props: TypedFieldProps) {
  const { label, shown, help, unit, layout = "row" } = props;
  const id = useId();
  const typing = useTyping(shown, (text) => inFieldsWords(props.commit(text), label));
  const echo = typing.typed && !typing.fault ? (props.echo?.(typing.text) ?? null) : null;
  const described = [
    help ? `${id}-help` : "",
    props.locked ? `${id}-locked` : "",
    typing.fault ? `${id}-fault` : "",
  ]
    .filter(Boolean)
    .join(" ");
  const states = `${typing.fault ? " field-faulty" : ""}${props.locked ? " field-locked" : ""}`;
  return (
    <div className={`field field-${layout}${states}`}>
      <label className={layout === "bare" ? "visually-hidden" : "field-label"} htmlFor={id}>
        {label}
      </label>
      <span className="field-box">
        <input
          id={id}
          className={`field-input${props.figure ? " field-figure" : ""}${props.wide ? " field-wide" : ""}`}
          value={typing.text}
          placeholder={props.placeholder}
          disabled={props.disabled}
          readOnly={props.locked}
          spellCheck={false}
          autoComplete="off"
          aria-invalid={typing.fault !== null}
          aria-describedby={described || undefined}
          data-typed={typing.typed}
          {...typing.handlers}
        />
        {props.locked ? <LockSign id={`${id}-locked`} /> : null}
        {unit ? <span className="field-unit">{unit}</span> : null}
        <span className="field-echo" role="status">
          {echo}
        </span>
      </span>
      {help ? (
        <p id={`${id}-help`} className="field-help">
          {help}
        </p>
      ) : null}
      {typing.fault ? (
        <p id={`${id}-fault`} className="field-fault" role="alert">
          {typing.fault}
        </p>
      ) : null}
    </div>
  );
}

/** In the field, at the end where no figure stands. */
function LockSign({ id }: { id: string }) {
  return (
    <span id={id} className="field-lock" title={howToUnlock}>
      <Icon name="lock" />
      <span className="visually-hidden">{howToUnlock}</span>
    </span>
  );
}

export const howToUnlock = "Locked: right click it on the plan, or “Unlock” in the menu Edit";

/** A limit is told of the field as it is labelled here, not by the name that the file has for it. */
function inFieldsWords(fault: string | null, label: string): string | null {
  return (
    fault?.replace(/^[^.]*? must be (more than|at least|at most|less than) /, `${label} must be $1 `) ?? null
  );
}

/** The draft and its life: what was typed, whether it was refused, and when it is handed on. */
function useTyping(shown: string, commit: (text: string) => string | null) {
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const escaped = useRef(false);

  const handOn = (): boolean => {
    if (draft === null) return true;
    const refusal = draft.trim() === shown.trim() ? null : commit(draft);
    setFault(refusal);
    if (refusal === null) setDraft(null);
    return refusal === null;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.nativeEvent.isComposing) return;
    if (event.key === "Enter") {
      const field = event.currentTarget;
      if (handOn()) requestAnimationFrame(() => field.select());
    } else if (event.key === "Escape" && (draft !== null || fault !== null)) {
      event.stopPropagation();
      escaped.current = true;
      setDraft(null);
      setFault(null);
    }
  };
  return {
    text: draft ?? shown,
    /** While there is typing to take back, Ctrl+Z takes back typing. */
    typed: draft !== null && draft !== shown,
    fault,
    handlers: {
      onChange: (event: { currentTarget: HTMLInputElement }) => {
        escaped.current = false;
        setDraft(event.currentTarget.value);
      },
      onFocus: (event: { currentTarget: HTMLInputElement }) => event.currentTarget.select(),
      onBlur: () => {
        if (!escaped.current) handOn();
        escaped.current = false;
      },
      onKeyDown,
    },
  };
}
