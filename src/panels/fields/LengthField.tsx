import type { Edit } from "../../document";
import { parseLength } from "../../units";
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
}

/** A length or height in the project's notation. */
export function LengthField({ m, onCommit, onEmpty, least, ...field }: LengthFieldProps) {
  const notation = useNotation();
  const commit = (text: string): string | null => {
    if (text.trim() === "" && onEmpty) return refusal(onEmpty());
    const parsed = parseLength(text, notation.display.length);
    if (!parsed.ok) return parsed.message;
    if (least !== undefined && parsed.m < least)
      return least === 0
        ? "This can't be less than nothing."
        : `This should be at least ${notation.length(least)}.`;
    return refusal(onCommit(parsed.m));
  };
  return <TypedField {...field} shown={m === null ? "" : notation.length(m)} commit={commit} />;
}

export function refusal(edit: Edit): string | null {
  return edit.ok ? null : edit.why;
}
