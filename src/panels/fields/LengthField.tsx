import type { Edit } from "../../document";
import { type LengthNotation, parseLength } from "../../units";
import { useNotation } from "../useProject";
import { TypedField, type TypedFieldProps } from "./TypedField";

type Shared = Omit<TypedFieldProps, "shown" | "commit" | "unit">;

export interface LengthFieldProps extends Shared {
  /** Metres; null shows an empty field. */
  readonly m: number | null;
  readonly onCommit: (m: number) => Edit;
  /** What an emptied field does, where it may be empty. */
  readonly onEmpty?: () => Edit;
  /** Least value that makes sense here, m. */
  readonly least?: number;
  /** A thickness and the like: in a plan of feet and inches a bare number is inches. */
  readonly small?: boolean;
  /** A depth of rain: a bare number is inches, or millimetres in a metric plan. */
  readonly rain?: boolean;
}

/** A length or height in the project's notation. */
export function LengthField({
  m,
  onCommit,
  onEmpty,
  least,
  small = false,
  rain = false,
  ...field
}: LengthFieldProps) {
  const notation = useNotation();
  const { length } = notation.display;
  const typedIn = rain ? rainIn(length) : small && length === "ft-in" ? "in" : length;
  const echo = (text: string): string | null => {
    const parsed = /^[\s\d.,/+-]+$/.test(text) ? parseLength(text, typedIn) : null;
    return parsed?.ok ? `= ${notation.length(parsed.m)}` : null;
  };
  const commit = (text: string): string | null => {
    if (text.trim() === "" && onEmpty) return refusal(onEmpty());
    const parsed = parseLength(text, typedIn);
    if (!parsed.ok) return parsed.message;
    if (least !== undefined && parsed.m < least)
      return least === 0
        ? "This can't be less than nothing."
        : `This should be at least ${notation.length(least)}.`;
    return refusal(onCommit(parsed.m));
  };
  return <TypedField {...field} shown={m === null ? "" : notation.length(m)} commit={commit} echo={echo} />;
}

const rainIn = (length: LengthNotation): LengthNotation =>
  length === "ft-in" || length === "in" || length === "ft" ? "in" : "mm";

export function refusal(edit: Edit): string | null {
  return edit.ok ? null : edit.why;
}
