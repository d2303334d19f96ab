/** Options kept by name beside the plan as it is now: a small plan, its figures, and the way back to each. */
import { type FormEvent, useMemo, useState } from "react";
import {
  Dialog,
  FieldError,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  TextField,
} from "react-aria-components";
import { mostOptions, type Option, optionEdits } from "../../document";
import type { Bounds } from "../../geometry";
import { isTaken, optionFigures, type SolvedOption } from "../../solve/compare";
import { openDialog, run, tell, tryRun } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, IconAction } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { useNotation, useProject, useResults } from "../useProject";
import { gradedBounds, OptionPicture } from "./OptionPicture";
import { type OptionRow, optionRows } from "./optionRows";
import { useSolvedOptions } from "./useSolvedOptions";
import "./compare.css";

export function OptionsDialog() {
  const open = useApp((state) => state.dialog === "options");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "options" : null)}
      isDismissable
    >
      <Modal className="modal options">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Options side by side
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <p className="soft small">
            An option keeps the building, its floor, the drives and the rest of the grading. Readings, lot and
            limits are shared by all.
          </p>
          <Comparison />
          <Keep />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Comparison() {
  const options = useProject((project) => project.options);
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const known = useSolvedOptions();
  const notation = useNotation();
  const solved = useMemo(() => options.map((option) => known.get(option) ?? null), [options, known]);
  const now = optionFigures(null, "now", project, results);
  const bounds = useMemo(
    () => gradedBounds([{ project, results }, ...solved.flatMap((each) => each ?? [])]),
    [project, results, solved],
  );
  const there = solved.flatMap((each) => each ?? []);
  const rows = optionRows([now, ...there.map(({ figures }) => figures)], notation);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
    <section className="options-scroll" aria-label="Options and their figures" tabIndex={0}>
      <table className="options-table" aria-label="Options and their figures">
        <thead>
          <tr>
            <td />
            <th scope="col" className="options-now">
              <OptionPicture project={project} results={results} bounds={bounds} />
              <span className="options-name">As it is now</span>
              <span className="options-state soft small">what the plan shows</span>
            </th>
            {options.map((option, index) => (
              <OptionHead key={option.id} option={option} solved={solved[index] ?? null} bounds={bounds} />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <FigureRow key={row.name} row={row} solved={solved} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface OptionHeadProps {
  readonly option: Option;
  readonly solved: SolvedOption | null;
  readonly bounds: Bounds | null;
}

function OptionHead({ option, solved, bounds }: OptionHeadProps) {
  const taken = useProject((project) => isTaken(project, option));
  const { id, name } = option;
  return (
    <th scope="col">
      {solved ? (
        <OptionPicture project={solved.project} results={solved.results} bounds={bounds} />
      ) : (
        <span className="options-waiting" role="status">
          being reckoned
        </span>
      )}
      <TypedField
        label={`Name of ${name}`}
        layout="bare"
        wide
        shown={name}
        commit={(text) => refusal(tryRun(optionEdits.renameOption, { id, name: text }))}
      />
      <span className="options-acts">
        {taken ? (
          <span className="options-state soft small">the plan is so now</span>
        ) : (
          <>
            <Action onPress={() => goBack(option)}>Go back to this</Action>
            <Action look="quiet" onPress={() => run(optionEdits.renewOption, { id })}>
              Put the plan here
            </Action>
          </>
        )}
        <IconAction
          icon="trash"
          label={`Remove ${name}`}
          onPress={() => run(optionEdits.removeOption, { id })}
        />
      </span>
    </th>
  );
}

function goBack({ id, name }: Option): void {
  if (run(optionEdits.takeOption, { id }).ok)
    tell({
      tone: "done",
      text: `The plan is as in “${name}”.`,
      more: "Undo brings back what it was before.",
    });
}

/** Cells stand in the options' order; one that is still being reckoned stays empty. */
function FigureRow({ row, solved }: { row: OptionRow; solved: readonly (SolvedOption | null)[] }) {
  const [now, ...others] = row.cells;
  let next = 0;
  const cells = [now, ...solved.map((each) => (each ? others[next++] : undefined))];
  return (
    <tr>
      <th scope="row">{row.name}</th>
      {cells.map((cell, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a cell is known by its column
        <td key={index} className={cell?.faulty ? "options-faulty" : undefined}>
          {cell?.text}
          {cell?.difference ? <span className="options-difference">{cell.difference}</span> : null}
        </td>
      ))}
    </tr>
  );
}

function Keep() {
  const full = useProject(({ options }) => options.length >= mostOptions);
  const [name, setName] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const refused = refusal(tryRun(optionEdits.keepOption, { name }));
    setFault(refused);
    if (refused === null) setName("");
  };
  const typed = (text: string) => {
    setName(text);
    setFault(null);
  };
  if (full) return <p className="soft small">{`A plan keeps ${mostOptions} options.`}</p>;
  return (
    <form className="options-keep" onSubmit={keep}>
      <TextField className="options-field" value={name} onChange={typed} isInvalid={fault !== null}>
        <Label>Keep the plan as an option</Label>
        <Input className="field-input field-wide" placeholder="its name, if you like" />
        {fault ? <FieldError className="field-fault">{fault}</FieldError> : null}
      </TextField>
      <Action look="accent" icon="plus" type="submit">
        Keep it
      </Action>
    </form>
  );
}
