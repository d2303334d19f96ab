/** The next course of the deed: Enter goes from bearing to distance and takes the course. */
import { type FormEvent, useId, useRef, useState } from "react";
import { plotEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { formatDeedBearing, parseDeedBearing, parseLength } from "../../units";
import { Action } from "../fields/Choice";
import { useNotation } from "../useProject";

const blank = { bearing: "", distance: "" };

export function NewCourse({ number }: { number: number }) {
  const [typed, setTyped] = useState(blank);
  const [fault, setFault] = useState<string | null>(null);
  const bearing = useRef<HTMLInputElement>(null);
  const distance = useRef<HTMLInputElement>(null);
  const echo = useEcho(typed);
  const id = useId();
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (typed.bearing.trim() !== "" && typed.distance.trim() === "") {
      distance.current?.focus();
      return;
    }
    const edit = tryRun(plotEdits.addCourse, typed);
    setFault(edit.ok ? null : edit.why);
    if (!edit.ok) return;
    setTyped(blank);
    bearing.current?.focus();
  };
  const field = (name: keyof typeof blank) => ({
    className: "field-input",
    value: typed[name],
    spellCheck: false,
    autoComplete: "off",
    "aria-describedby": `${id}-said`,
    onChange: (event: { currentTarget: HTMLInputElement }) => {
      setFault(null);
      setTyped({ ...typed, [name]: event.currentTarget.value });
    },
  });
  return (
    <form className="course course-new" onSubmit={take}>
      <span className="coordinate-name">{number}</span>
      <input
        ref={bearing}
        {...field("bearing")}
        aria-label="Next course, bearing"
        placeholder={number === 1 ? "N 26-10-05 E" : "bearing"}
      />
      <input
        ref={distance}
        {...field("distance")}
        aria-label="Next course, distance"
        placeholder="distance"
      />
      <Action type="submit" look="quiet" icon="plus" aria-label="Add the course">
        Add
      </Action>
      <p
        id={`${id}-said`}
        className={fault ? "field-fault" : "field-help"}
        role={fault ? "alert" : undefined}
      >
        {fault ?? echo}
      </p>
    </form>
  );
}

/** What was typed, as it is understood so far. */
function useEcho({ bearing, distance }: typeof blank): string {
  const notation = useNotation();
  const way = parseDeedBearing(bearing);
  const length = parseLength(distance, notation.display.length);
  const words = [
    way.ok ? formatDeedBearing(way.radians) : "",
    length.ok ? notation.length(length.m) : "",
  ].filter(Boolean);
  return words.join(", ");
}
