/** Pictures under the plan: laid, faded, locked, taken away. */
import { type CSSProperties, useEffect, useId, useRef } from "react";
import { drawingEdits, thingKey, type Underlay } from "../../document";
import { goTo, run as runEdit, select, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import type { ToolName } from "../../store/state";
import { useApp } from "../../store/useApp";
import { scaledAbout } from "../../underlay";
import type { RunCommand } from "../command";
import { Action, IconAction } from "../fields/Choice";
import { AngleField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Section } from "../parts";
import { useProject } from "../useProject";
import "./pictures.css";

export function Pictures({ run }: { run: RunCommand }) {
  const underlays = useProject((project) => project.drawing.underlays);
  return (
    <Section title="Pictures under the plan">
      {underlays.length === 0 ? (
        <p className="soft small">
          A plat, an aerial photo or a sketch to draw over: PNG, JPEG, WebP, or a page of a PDF. It can also
          be dropped on the plan.
        </p>
      ) : null}
      {underlays.map((underlay) => (
        <PictureCard key={underlay.id} underlay={underlay} />
      ))}
      <Action icon="picture" look="quiet" onPress={() => run("plan.picture")}>
        Place a picture…
      </Action>
    </Section>
  );
}

function PictureCard({ underlay }: { underlay: Underlay }) {
  const { id, name, strength, width, scale, turn } = underlay;
  const thing = { kind: "underlay", id } as const;
  const locked = useProject((project) => project.drawing.locked.includes(thingKey(thing)));
  const selected = useApp((state) =>
    state.selection.some((each) => each.kind === "underlay" && each.id === id),
  );
  const card = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    if (selected) card.current?.scrollIntoView?.({ block: "nearest" });
  }, [selected]);
  const change = (patch: Partial<Underlay>, what: string) =>
    tryRun(drawingEdits.changeUnderlay, { id, patch, what });
  const resize = (m: number) => {
    const { at, scale: resized } = scaledAbout(underlay, underlay.at, m / (width * scale));
    return change({ at: [at[0], at[1]], scale: resized }, "scale picture");
  };
  return (
    <fieldset ref={card} className={`card picture-card${selected ? " card-selected" : ""}`}>
      <legend className="visually-hidden">{`Picture ${name}`}</legend>
      <PictureHead underlay={underlay} locked={locked} />
      <StrengthField
        strength={strength}
        onChange={(to) =>
          tryRun(drawingEdits.changeUnderlay, {
            id,
            patch: { strength: to },
            what: "fade picture",
            mergeKey: `strength ${id}`,
          })
        }
      />
      <LengthField label="Width on the ground" m={width * scale} locked={locked} onCommit={resize} />
      <AngleField
        label="Turned clockwise"
        radians={-turn || 0}
        locked={locked}
        onCommit={(clockwise) => change({ turn: -clockwise || 0 }, "turn picture")}
      />
      <PlacingActs id={id} locked={locked} />
    </fieldset>
  );
}

function PictureHead({ underlay, locked }: { underlay: Underlay; locked: boolean }) {
  const { id, name, at } = underlay;
  const thing = { kind: "underlay", id } as const;
  const hidden = useProject((project) => project.drawing.hidden.includes(thingKey(thing)));
  const show = () => {
    if (!locked && !hidden) select([thing]);
    goTo(at);
  };
  return (
    <div className="card-head">
      <WordsField
        layout="bare"
        label="Name of the picture"
        text={name}
        onCommit={(text) =>
          tryRun(drawingEdits.changeUnderlay, { id, patch: { name: text.trim() }, what: "name picture" })
        }
      />
      <IconAction icon="place" label={`Show ${name} on the plan`} onPress={show} />
      <IconAction
        icon={hidden ? "eyeShut" : "eye"}
        label={hidden ? `Show ${name} again` : `Hide ${name}`}
        onPress={() => runEdit(drawingEdits.hideThings, { things: [thing], hidden: !hidden })}
      />
      <IconAction
        icon={locked ? "lock" : "unlocked"}
        label={locked ? `Unlock ${name}` : `Lock ${name} where it lies`}
        onPress={() => runEdit(drawingEdits.lockThings, { things: [thing], locked: !locked })}
      />
      <IconAction
        icon="trash"
        label={`Remove ${name}`}
        isDisabled={locked}
        onPress={() => runEdit(drawingEdits.removeDrawn, thing)}
      />
    </div>
  );
}

interface StrengthFieldProps {
  readonly strength: number;
  readonly onChange: (strength: number) => void;
}

function StrengthField({ strength, onChange }: StrengthFieldProps) {
  const field = useId();
  const percent = Math.round(strength * 100);
  return (
    <div className="strength">
      <label className="field-label" htmlFor={field}>
        Strength <span className="soft">{`${percent} %`}</span>
      </label>
      <input
        id={field}
        className="strength-range"
        type="range"
        min={0}
        max={100}
        step={5}
        value={percent}
        aria-valuetext={`${percent} %`}
        style={{ "--share": `${percent}%` } as CSSProperties}
        onChange={(event) => onChange(Number(event.currentTarget.value) / 100)}
      />
    </div>
  );
}

/** The two ways of laying it true. Picking a tool lets go of the selection, so the picture is selected after it. */
function PlacingActs({ id, locked }: { id: string; locked: boolean }) {
  const begin = (tool: ToolName) => () => {
    if (pickTool(tool)) select([{ kind: "underlay", id }]);
  };
  if (locked) return <p className="soft small">Locked where it lies.</p>;
  return (
    <>
      <p className="soft small">To make its distances true, lay it by</p>
      <div className="card-acts picture-acts">
        <Action onPress={begin("picture-points")}>Two known points</Action>
        <Action onPress={begin("picture-distance")}>A known distance</Action>
      </div>
    </>
  );
}
