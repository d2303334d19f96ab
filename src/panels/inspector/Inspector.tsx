/** What is selected, in figures: every one can be typed over. Several things share what can be done with them. */
import { useState } from "react";
import {
  canRename,
  drawingEdits,
  isLocked,
  kindWord,
  renameThing,
  type Thing,
  thingKey,
  thingName,
} from "../../document";
import { run as runEdit, select, tryRun } from "../../store/actions";
import { useApp } from "../../store/useApp";
import type { AppCommand, RunCommand } from "../command";
import { Action, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { useProject } from "../useProject";
import { capital } from "../words";
import { Acts } from "./Acts";
import { Amounts } from "./Amounts";
import { Nudge } from "./Nudge";
import { Places } from "./Places";
import { Sides } from "./Sides";
import { belongsToStep } from "./stepsOfThing";
import { toldByStep } from "./toldByStep";
import "./inspector.css";

export interface InspectorProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

/** Docked under the step's panel while something is selected. */
export function Inspector({ commands, run }: InspectorProps) {
  const selection = useApp((state) => state.selection);
  const { folded, fold } = useFolded(selection);
  const [only] = selection;
  if (!only) return null;
  return (
    <section className="inspector" aria-label="What is selected" data-testid="inspector">
      <Head things={selection} folded={folded} onFold={() => fold(!folded)} />
      {folded ? null : (
        <div className="inspector-body">
          {selection.length > 1 ? <Several things={selection} /> : <One key={thingKey(only)} thing={only} />}
          <Acts commands={commands} run={run} />
          <Nudge />
        </div>
      )}
    </section>
  );
}

/** Folded by hand, or because a step was gone to that tells of something else: its own answer must be seen. */
function useFolded(selection: readonly Thing[]): { folded: boolean; fold: (folded: boolean) => void } {
  const step = useApp((state) => state.step);
  const [byHand, setByHand] = useState(false);
  const [seen, setSeen] = useState({ selection, step, gaveWay: false });
  if (seen.selection !== selection) setSeen({ selection, step, gaveWay: false });
  else if (seen.step !== step) setSeen({ selection, step, gaveWay: !belongsToStep(selection, step) });
  return {
    folded: byHand || seen.gaveWay,
    fold: (folded) => {
      setByHand(folded);
      setSeen({ selection, step, gaveWay: false });
    },
  };
}

interface HeadProps {
  readonly things: readonly Thing[];
  readonly folded: boolean;
  readonly onFold: () => void;
}

function Head({ things, folded, onFold }: HeadProps) {
  const title = useProject((project) => {
    const [only] = things;
    return only && things.length === 1 ? capital(thingName(project, only)) : `${things.length} things`;
  });
  const locked = useProject((project) => things.every((thing) => isLocked(project, thing)));
  const [only] = things;
  return (
    <div className="inspector-head">
      <h2 className="inspector-title">{title}</h2>
      {only && things.length === 1 && !title.toLowerCase().includes(kindWord(only.kind)) ? (
        <span className="soft small">{kindWord(only.kind)}</span>
      ) : null}
      <span className="inspector-gap" />
      <IconAction
        icon={locked ? "lock" : "unlocked"}
        label={locked ? "Unlock" : "Lock"}
        aria-pressed={locked}
        onPress={() =>
          runEdit(drawingEdits.lockThings, { things: lockable(things, locked), locked: !locked })
        }
      />
      <IconAction
        icon={folded ? "right" : "down"}
        label={folded ? "Show the figures" : "Fold the figures away"}
        aria-expanded={!folded}
        onPress={onFold}
      />
      <IconAction icon="close" label="Let go of what is selected" onPress={() => select([])} />
    </div>
  );
}

/** A door that is locked with its building is unlocked with it. */
function lockable(things: readonly Thing[], locked: boolean): readonly Thing[] {
  const withBuilding = things.some(({ kind }) => kind === "door" || kind === "window");
  return locked && withBuilding ? [...things, { kind: "building" }] : things;
}

/** What the step beside doesn't tell already. */
function One({ thing }: { thing: Thing }) {
  const locked = useProject((project) => isLocked(project, thing));
  const step = useApp((state) => state.step);
  const told = toldByStep(
    useProject((project) => project),
    thing,
    step,
  );
  return (
    <>
      {locked ? (
        <p className="inspector-locked" role="note">
          Locked: its figures can be read, not changed. The lock above opens it.
        </p>
      ) : null}
      {canRename(thing) && thing.kind !== "note" && !told.has("name") ? (
        <Name thing={thing} locked={locked} />
      ) : null}
      <Amounts thing={thing} locked={locked} told={told} />
      {told.has("places") ? null : <Places thing={thing} locked={locked} />}
      <Sides thing={thing} locked={locked} told={told} />
    </>
  );
}

function Name({ thing, locked }: { thing: Thing; locked: boolean }) {
  const name = useProject((project) => thingName(project, thing));
  const shown = thing.kind === "shot" ? name.replace(/^shot /, "") : name;
  return (
    <WordsField
      label="Name"
      text={shown}
      locked={locked}
      onCommit={(typed) => tryRun(renameThing, { thing, name: typed })}
    />
  );
}

/** How many of each kind, and a way to keep only those. */
function Several({ things }: { things: readonly Thing[] }) {
  const kinds = [...new Set(things.map(({ kind }) => kind))];
  const locked = useProject((project) => things.filter((thing) => isLocked(project, thing)).length);
  return (
    <>
      <ul className="inspector-kinds" aria-label="Kinds of things that are selected">
        {kinds.map((kind) => {
          const of = things.filter((thing) => thing.kind === kind);
          const words = of.length === 1 ? `1 ${kindWord(kind)}` : `${of.length} ${kindWord(kind)}s`;
          return (
            <li key={kind}>
              {kinds.length > 1 ? (
                <Action look="quiet" aria-label={`Keep only the ${words}`} onPress={() => select(of)}>
                  {words}
                </Action>
              ) : (
                words
              )}
            </li>
          );
        })}
      </ul>
      {locked > 0 ? (
        <p className="inspector-locked" role="note">
          {locked === 1 ? "One of them is locked." : `${locked} of them are locked.`} Unlock them to change
          all.
        </p>
      ) : null}
    </>
  );
}
