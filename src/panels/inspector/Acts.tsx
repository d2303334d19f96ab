/** What can be done with the selection: the same commands as in the menu of the pointer. */
import { useApp } from "../../store/useApp";
import { type AppCommand, canRun, type RunCommand } from "../command";
import { Action } from "../fields/Choice";

const acts = [
  ["edit.duplicate", "Duplicate"],
  ["arrange.place", "Place by a click…"],
  ["arrange.turn", "Turn…"],
  ["arrange.mirror", "Mirror…"],
  ["arrange.hide", "Hide"],
  ["edit.delete", "Delete"],
] as const;

const alignments = [
  ["left", "Left edges", "M4 3v14M7 6h9v3H7zM7 12h5v3H7z"],
  ["middle", "Middles upright", "M10 3v14M5.5 5.5h9v3h-9zM7.5 11.5h5v3h-5z"],
  ["right", "Right edges", "M16 3v14M4 6h9v3H4zM8 12h5v3H8z"],
  ["top", "Top edges", "M3 4h14M6 7v9h3V7zM12 7v5h3V7z"],
  ["centre", "Middles level", "M3 10h14M5.5 5.5v9h3v-9zM11.5 7.5v5h3v-5z"],
  ["bottom", "Bottom edges", "M3 16h14M6 4v9h3V4zM12 8v5h3V8z"],
  ["across", "Even gaps across", "M3 4v12M17 4v12M8.5 6h3v8h-3z"],
  ["upwards", "Even gaps upwards", "M4 3h12M4 17h12M6 8.5h8v3H6z"],
] as const;

interface ActsProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

/** Those that fit what is selected. */
export function Acts({ commands, run }: ActsProps) {
  const count = useApp((state) => state.selection.length);
  const fitting = useApp((state) =>
    acts
      .map(([id]) => id)
      .filter((id) => commands.some((command) => command.id === id && canRun(command, state)))
      .join(" "),
  ).split(" ");
  return (
    <>
      {count > 1 ? <LineUp run={run} count={count} /> : null}
      <div className="inspector-acts">
        {acts
          .filter(([id]) => fitting.includes(id))
          .map(([id, words]) => (
            <Action key={id} look="quiet" onPress={() => run(id)}>
              {words}
            </Action>
          ))}
      </div>
    </>
  );
}

function LineUp({ run, count }: { run: RunCommand; count: number }) {
  return (
    <fieldset className="inspector-align" data-keys-to-plan="always">
      <legend className="visually-hidden">Line up</legend>
      {alignments.map(([to, words, path]) => (
        <button
          key={to}
          type="button"
          className="icon-button"
          title={words}
          aria-label={`Line up: ${words.toLowerCase()}`}
          disabled={count < 3 && (to === "across" || to === "upwards")}
          onClick={() => run(`arrange.align.${to}`)}
        >
          <svg className="glyph" viewBox="0 0 20 20" aria-hidden="true">
            <path d={path} />
          </svg>
        </button>
      ))}
    </fieldset>
  );
}
