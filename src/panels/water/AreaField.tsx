import type { Edit } from "../../document";
import { halfWidth, parseNumber, SQUARE_FOOT } from "../../units";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { useNotation } from "../useProject";

interface AreaFieldProps {
  readonly label: string;
  readonly m2: number;
  readonly help: string;
  readonly onCommit: (m2: number) => Edit;
}

/** An area in the plan's unit. */
export function AreaField({ label, m2, help, onCommit }: AreaFieldProps) {
  const { display } = useNotation();
  const [factor, words] = display.area === "ft2" ? [SQUARE_FOOT, "ft²"] : [1, "m²"];
  const commit = (text: string): string | null => {
    const typed = halfWidth(text)
      .trim()
      .replace(/[,\s](?=\d{3}\b)/g, "");
    const number = typed === "" ? 0 : parseNumber(typed);
    if (!Number.isFinite(number)) return `Can't read “${text.trim()}” as an area. Write a number like 2400.`;
    return number < 0 ? "An area can't be less than nothing." : refusal(onCommit(number * factor));
  };
  return (
    <TypedField
      label={label}
      unit={words}
      shown={m2 === 0 ? "" : String(Number((m2 / factor).toPrecision(6)))}
      placeholder="none"
      help={help}
      commit={commit}
    />
  );
}
