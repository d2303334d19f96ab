/** What each column of a table is, with its first rows to judge by. */
import {
  type ColumnUse,
  columnUses,
  type TableForm as Form,
  guessTable,
  mappingFault,
  type TableMapping,
} from "../../files/incoming";
import { Action, Choice, Toggle } from "../../panels/fields/Choice";

const useWords: Readonly<Record<ColumnUse, string>> = {
  name: "name",
  x: "easting (x)",
  y: "northing (y)",
  z: "height",
  latitude: "latitude",
  longitude: "longitude",
  line: "line it belongs to",
  kind: "kind (mark or ground)",
  skip: "passed over",
};
const uses = columnUses.map((value) => ({ value, words: useWords[value] }));

const separators = [
  { value: ",", words: "commas" },
  { value: ";", words: "semicolons" },
  { value: "\t", words: "tabs" },
  { value: " ", words: "spaces" },
] as const;

const decimals = [
  { value: ".", words: "point: 1.5" },
  { value: ",", words: "comma: 1,5" },
] as const;

export interface TableFormProps {
  readonly name: string;
  /** Its start. */
  readonly text: string;
  readonly mapping: TableMapping;
  readonly fault: string | null;
  readonly onChange: (mapping: TableMapping) => void;
  readonly onRead: () => void;
  readonly onBack: () => void;
}

export function TableForm({ name, text, mapping, fault, onChange, onRead, onBack }: TableFormProps) {
  const { form } = mapping;
  const { columns, rows } = guessTable(text, form);
  const lacking = mappingFault(mapping.uses);
  const reform = (patch: Partial<Form>) => {
    // Split otherwise, the columns are others: what they are is guessed again.
    const guess = guessTable(text, { ...form, ...patch });
    onChange({ form: guess.form, uses: guess.uses });
  };
  const change = (column: number, use: ColumnUse) =>
    onChange({ form, uses: columns.map((_, i) => (i === column ? use : (mapping.uses[i] ?? "skip"))) });
  return (
    <>
      <p className="soft">{`What is each column of ${name}?`}</p>
      <div className="import-form">
        <Choice
          label="Between cells"
          value={form.separator}
          options={separators}
          onChoose={(separator) => reform({ separator })}
        />
        <Choice
          label="Decimal"
          value={form.decimal}
          options={decimals}
          onChoose={(decimal) => reform({ decimal })}
        />
        <Toggle
          label="The first row names the columns"
          on={form.header}
          onToggle={(header) => reform({ header })}
        />
      </div>
      <div className="import-rows">
        <table className="import-table" aria-label="The first rows">
          <thead>
            <tr>
              {columns.map((column, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its order
                <th key={i} scope="col">
                  <span className="soft small">{column}</span>
                  <Choice
                    layout="bare"
                    label={`Column ${i + 1}, ${column}`}
                    value={mapping.uses[i] ?? "skip"}
                    options={uses}
                    onChoose={(use) => change(i, use)}
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((cells, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its order
              <tr key={row}>
                {columns.map((_, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its order
                  <td key={i} className={mapping.uses[i] === "skip" ? "soft" : undefined}>
                    {cells[i] ?? ""}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {(lacking ?? fault) ? (
        <p className="field-fault import-said" role="alert">
          {lacking ?? fault}
        </p>
      ) : null}
      <div className="dialog-acts">
        <Action look="accent" isDisabled={lacking !== null} onPress={onRead}>
          Look at it on the plan
        </Action>
        <Action look="quiet" onPress={onBack}>
          Back
        </Action>
      </div>
    </>
  );
}
