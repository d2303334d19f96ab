/** What machine and truck do in an hour, as the user knows it: hours are told from these alone. */
import { siteEdits, type Work } from "../../document";
import { tryRun } from "../../store/actions";
import { CUBIC_YARD, parseNumber } from "../../units";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Section } from "../parts";
import { useNotation, useProject } from "../useProject";

export function WorkFields() {
  const yards = useNotation().display.volume === "yd3";
  const volume = { unit: yards ? "yd³/h" : "m³/h", size: yards ? CUBIC_YARD : 1 };
  return (
    <Section title="Hours of work">
      <p className="soft small">Typed from your own machine and road; left empty, no hours are told.</p>
      <RateField label="Digs, in the bank" field="dig" {...volume} />
      <RateField label="Places and compacts" field="place" {...volume} />
      <RateField label="A truck, there and back" field="turn" unit="h" size={1} />
    </Section>
  );
}

interface RateFieldProps {
  readonly label: string;
  readonly field: keyof Work;
  readonly unit: string;
  /** The document's unit in the one that is typed. */
  readonly size: number;
}

function RateField({ label, field, unit, size }: RateFieldProps) {
  const rate = useProject(({ work }) => work[field]);
  const commit = (text: string): string | null => {
    const typed = text.trim();
    if (typed === "") return refusal(tryRun(siteEdits.changeWork, { patch: { [field]: null } }));
    const number = parseNumber(typed);
    if (!(number > 0)) return `Can't read "${typed}". Write a number above 0, like 20.`;
    return refusal(tryRun(siteEdits.changeWork, { patch: { [field]: number * size } }));
  };
  const shown = rate === null ? "" : String(Math.round((rate / size) * 100) / 100);
  return <TypedField label={label} unit={unit} placeholder="not typed" shown={shown} commit={commit} />;
}
