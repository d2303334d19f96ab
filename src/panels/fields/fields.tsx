/** The other typed fields: plain numbers, slopes, angles, words. */
import type { Edit } from "../../document";
import { formatAngle, halfWidth, parseAngle, parseNumber, parseSlope } from "../../units";
import { useNotation } from "../useProject";
import { refusal } from "./LengthField";
import { TypedField, type TypedFieldProps } from "./TypedField";

type Shared = Omit<TypedFieldProps, "shown" | "commit">;

export interface NumberFieldProps extends Shared {
  /** Null shows an empty field. */
  readonly value: number | null;
  readonly decimals?: number;
  readonly least?: number;
  readonly onCommit: (value: number) => Edit;
  readonly onEmpty?: () => Edit;
}

export function NumberField({ value, decimals = 2, least, onCommit, onEmpty, ...field }: NumberFieldProps) {
  const commit = (text: string): string | null => {
    if (text.trim() === "" && onEmpty) return refusal(onEmpty());
    const number = parseNumber(bareRun(halfWidth(text).trim(), field.unit));
    if (text.trim() === "" || !Number.isFinite(number))
      return `Can't read "${text.trim()}" as a number. Write one like 3 or 1.25.`;
    if (least !== undefined && number < least) return `This should be at least ${least}.`;
    return refusal(onCommit(number));
  };
  const shown = value === null ? "" : String(Number(value.toFixed(decimals)));
  return <TypedField {...field} shown={shown} commit={commit} />;
}

/** "3:1" in a field that says ": 1" beside it is 3; either way round, as a bank is told. */
function bareRun(text: string, unit: string | undefined): string {
  const pair = unit === ": 1" ? /^([\d.,]+)\s*:\s*([\d.,]+)$/.exec(text) : null;
  if (!pair) return text;
  const [a, b] = [pair[1] as string, pair[2] as string];
  if (b === "1") return a;
  return a === "1" ? b : text;
}

export interface SlopeFieldProps extends Shared {
  /** Rise over run; null shows an empty field. */
  readonly ratio: number | null;
  readonly onCommit: (ratio: number) => Edit;
  readonly onEmpty?: () => Edit;
}

export function SlopeField({ ratio, onCommit, onEmpty, ...field }: SlopeFieldProps) {
  const notation = useNotation();
  const commit = (text: string): string | null => {
    if (text.trim() === "" && onEmpty) return refusal(onEmpty());
    const parsed = parseSlope(text, notation.display.slope);
    if (!parsed.ok) return parsed.message;
    if (parsed.ratio < 0) return "A fall is typed without a minus.";
    return refusal(onCommit(parsed.ratio));
  };
  return <TypedField {...field} shown={ratio === null ? "" : notation.slope(ratio)} commit={commit} />;
}

export interface AngleFieldProps extends Shared {
  readonly radians: number;
  readonly onCommit: (radians: number) => Edit;
}

export function AngleField({ radians, onCommit, ...field }: AngleFieldProps) {
  const commit = (text: string): string | null => {
    const parsed = parseAngle(text);
    return parsed.ok ? refusal(onCommit(parsed.radians)) : parsed.message;
  };
  return <TypedField {...field} shown={formatAngle(radians)} commit={commit} />;
}

export interface WordsFieldProps extends Shared {
  readonly text: string;
  readonly onCommit: (text: string) => Edit;
}

export function WordsField({ text, onCommit, ...field }: WordsFieldProps) {
  return <TypedField {...field} wide shown={text} commit={(typed) => refusal(onCommit(typed))} />;
}
