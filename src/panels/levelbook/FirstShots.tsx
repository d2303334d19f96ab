import { type FormEvent, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { type LengthNotation, surveyEdits } from "../../document";
import { run as runEdit, runTogether, tell } from "../../store/actions";
import { parseLength } from "../../units";
import { Action } from "../fields/Choice";
import { useBookRequest } from "../survey/useBookRequest";
import { useNotation, useProject } from "../useProject";
import { understood } from "./understood";

/** The same reading as each notation writes it. */
const readingLike: Readonly<Record<LengthNotation, string>> = {
  "ft-in": "5' 2 5/8\"",
  in: '62 5/8"',
  ft: "5.22",
  m: "1.591",
  cm: "159.1",
  mm: "1591",
};

/** The first two things on site: a mark that stays, and the reading on it. Then the table opens. */
export function FirstShots() {
  const notation = useNotation();
  const metric = notation.display.area === "m2";
  const mark = useProject(({ survey }) => survey.marks[0] ?? null);
  const [name, setName] = useState("");
  const [height, setHeight] = useState(metric ? "100 m" : "100'");
  const [reading, setReading] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const fields = useRef<HTMLDivElement>(null);
  useBookRequest(
    () => fields.current?.querySelector("input")?.focus(),
    () => fields.current?.contains(document.activeElement) === true,
  );
  const read = reading.trim() === "" ? null : parseLength(reading, notation.display.reading);
  const start = (event: FormEvent) => {
    event.preventDefault();
    const checked = mark ? null : parseLength(height, notation.display.length);
    if (read && !read.ok) setFault(read.message);
    else if (checked && !checked.ok) setFault(checked.message);
    else openBook(mark?.name ?? (name.trim() || "mark"), height, reading);
  };
  return (
    <form className="first-shots" onSubmit={start}>
      <Lead mark={mark?.name ?? null} />
      <div className="first-fields" ref={fields}>
        {mark ? null : (
          <>
            <First
              label="The mark"
              hint="bolt in a ledge, spike in a pole"
              value={name}
              onType={setName}
              placeholder="bolt"
            />
            <First
              label="Call its height"
              hint="any round figure will do"
              value={height}
              onType={setHeight}
            />
          </>
        )}
        <First
          label="Reading on it"
          hint={read?.ok ? `= ${understood(read.m, notation).join(" = ")}` : "may wait: type it later"}
          value={reading}
          onType={(text) => {
            setFault(null);
            setReading(text);
          }}
          placeholder={readingLike[notation.display.reading]}
        />
        <Action look="accent" type="submit">
          Open the level book
        </Action>
      </div>
      {fault ? (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      ) : null}
      <p className="soft small">
        Or{" "}
        <Button className="link" onPress={() => runEdit(surveyEdits.addSetup, {})}>
          start with an empty table
        </Button>{" "}
        and paste rows of a spreadsheet into it: name, reading, east, north.
      </p>
    </form>
  );
}

function Lead({ mark }: { mark: string | null }) {
  return mark === null ? (
    <p className="first-lead">
      Two things first: <b>a mark that will outlast the job</b> and what the rod reads on it. Every height is
      told from that mark.
    </p>
  ) : (
    <p className="first-lead">
      Set up the laser where it sees everything and <b>read {mark}</b>. Every height is told from it.
    </p>
  );
}

interface FirstProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly onType: (text: string) => void;
}

function First({ label, hint, value, placeholder, onType }: FirstProps) {
  return (
    <label className="first-field">
      <span className="field-label">{label}</span>
      <input
        className="field-input field-wide"
        value={value}
        placeholder={placeholder}
        spellCheck={false}
        onChange={(event) => onType(event.currentTarget.value)}
      />
      <span className="field-help">{hint}</span>
    </label>
  );
}

/** Mark, first set-up and the reading on the mark, as one step to undo. */
function openBook(name: string, height: string, reading: string): void {
  const edit = runTogether("start the level book", [
    (project) =>
      project.survey.marks.length > 0
        ? { ok: true, project, label: "" }
        : surveyEdits.addMark.run(project, { name, height }),
    (project) => {
      const mark = project.survey.marks[0];
      return surveyEdits.addShot.run(project, { name, reading, kind: "mark", of: mark?.id ?? null });
    },
  ]);
  if (!edit.ok) tell({ tone: "caution", text: edit.why });
}
