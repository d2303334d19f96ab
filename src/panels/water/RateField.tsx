/** A rate in the plan's unit: rain by the hour, a speed, or a plain number. */
import { parseNumber, type RateUnit } from "../../units";
import { TypedField } from "../fields/TypedField";

export interface RateFieldProps {
  readonly label: string;
  readonly unit: RateUnit;
  readonly value: number | null;
  readonly help?: string;
  readonly commit: (value: number | null) => string | null;
  /** What an emptied field does, where it may be empty. */
  readonly empty?: () => string | null;
}

export function RateField({ label, unit, value, help, commit, empty }: RateFieldProps) {
  const read = (text: string): string | null => {
    if (text.trim() === "" && empty) return empty();
    const number = parseNumber(text);
    if (!Number.isFinite(number)) return `Can't read “${text.trim()}” as a number. Write one like 3.5.`;
    return number < 0 ? "This can't be less than nothing." : commit(number * unit.factor);
  };
  const shown = value === null ? "" : String(Number((value / unit.factor).toPrecision(4)));
  return (
    <TypedField
      label={label}
      {...(unit.words && { unit: unit.words })}
      shown={shown}
      placeholder="not yet known"
      {...(help !== undefined && { help })}
      commit={read}
    />
  );
}
