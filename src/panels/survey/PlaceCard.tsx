/** The place of the selected shot, in each way a place is measured in. Measuring it again moves the shot. */
import { type FormEvent, useEffect, useState } from "react";
import { useStore } from "zustand";
import { type Project, type Shot, surveyEdits, tapeCandidates } from "../../document";
import { cornerName } from "../../grading";
import { tryRun } from "../../store/actions";
import { showCandidates } from "../../store/candidates";
import { useApp } from "../../store/useApp";
import { Action, Choice } from "../fields/Choice";
import { placeText } from "../levelbook/columns";
import { useNotation, useProject } from "../useProject";
import { pickOnPlan } from "./pickOnPlan";
import { foldPlaceCard, placeCardStore } from "./placeCard";
import {
  anchorOptions,
  draftOf,
  faultOf,
  type PlaceDraft,
  placeFrom,
  placeKinds,
  whyNowhere,
} from "./placeDraft";
import "./survey.css";

export function PlaceCard() {
  const id = useApp(({ selection: [only, ...more] }) =>
    only?.kind === "shot" && more.length === 0 ? only.id : null,
  );
  const shot = useProject(({ survey }) => survey.shots.find((each) => each.id === id));
  const row = useProject(({ survey }) => survey.shots.findIndex((each) => each.id === id));
  const open = useStore(placeCardStore, (state) => state.open);
  const notation = useNotation();
  if (!shot || shot.kind === "check") return null;
  const where = placeText(shot.place, notation) || "not placed";
  return (
    <details
      id="place-of-shot"
      className="card survey-more survey-place"
      open={open}
      onToggle={(event) => foldPlaceCard(event.currentTarget.open)}
    >
      <summary>{`Place of ${shot.name || `row ${row + 1}`}: ${where}`}</summary>
      {open ? <PlaceForm key={shot.id} shot={shot} /> : null}
    </details>
  );
}

function PlaceForm({ shot }: { shot: Shot }) {
  const project = useProject((present) => present);
  const notation = useNotation();
  const [draft, setDraft] = useState(() => draftOf(shot, project, notation));
  const [fault, setFault] = useState<string | null>(null);
  const change = (patch: Partial<PlaceDraft>) => {
    setFault(null);
    setDraft({ ...draft, ...patch });
  };
  const place = (with_: PlaceDraft) => {
    const made = placeFrom(with_, project);
    if (!made.ok) return setFault(made.why);
    const lost = faultOf(made.place, project, shot.id);
    if (lost) return setFault(lost);
    const edit = tryRun(surveyEdits.placeShot, { id: shot.id, place: made.place });
    setFault(edit.ok ? null : edit.why);
  };
  const both = useTapes(draft, project, (side) => {
    change({ side });
    place({ ...draft, side });
  });
  const said = fault ?? whyNowhere(draft, project, shot.id);
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    place(draft);
  };
  return (
    <form className="survey-form" onSubmit={onSubmit}>
      <Choice
        label="Measured by"
        value={draft.kind}
        options={placeKinds}
        onChoose={(kind) => change({ kind })}
      />
      <Fields draft={draft} project={project} but={shot.id} both={both} change={change} />
      {said ? (
        <p className="field-fault" role={fault ? "alert" : "status"}>
          {said}
        </p>
      ) : null}
      <div className="survey-acts">
        <Action look="accent" type="submit">
          {shot.place.kind === "none" ? "Place it" : "Move it there"}
        </Action>
        <Action look="quiet" icon="place" onPress={() => pickOnPlan(shot)}>
          {shot.place.kind === "none" ? "Click on the plan" : "Click its place anew"}
        </Action>
      </div>
    </form>
  );
}

/** Both places that two tapes leave are drawn on the plan while they are typed; picking one places the shot. Whether there are two. */
function useTapes(draft: PlaceDraft, project: Project, pick: (side: "left" | "right") => void): boolean {
  const made = draft.kind === "tapes" ? placeFrom(draft, project) : null;
  const tapes = made?.ok && made.place.kind === "tapes" ? made.place : null;
  const both = tapes && tapeCandidates(project, tapes.from, [tapes.lengths[0].m, tapes.lengths[1].m]);
  useEffect(() => {
    showCandidates(
      both
        ? (["left", "right"] as const).map((side) => ({
            at: both[side],
            words: `${side} of the two`,
            chosen: draft.side === side,
            choose: () => pick(side),
          }))
        : [],
    );
  });
  useEffect(() => () => showCandidates([]), []);
  return both !== null;
}

interface FieldsProps {
  readonly draft: PlaceDraft;
  readonly project: Project;
  readonly but: string;
  /** Both places that two tapes leave are drawn on the plan. */
  readonly both: boolean;
  readonly change: (patch: Partial<PlaceDraft>) => void;
}

function Fields({ draft, project, but, both, change }: FieldsProps) {
  const text = (id: TextField, label: string, help?: string) => (
    <Typed key={id} label={label} text={draft[id]} help={help} onType={(typed) => change({ [id]: typed })} />
  );
  const points = anchorOptions(project, but);
  const point = (id: "first" | "second", label: string) => (
    <Choice
      key={id}
      label={label}
      value={draft[id]}
      options={points}
      onChoose={(value) => change({ [id]: value })}
    />
  );
  const corners = project.building?.outline.length ?? 0;
  const needs = needed(draft.kind, corners, points.length);
  if (needs) return <p className="field-help">{needs}</p>;
  switch (draft.kind) {
    case "at":
      return text("coordinates", "East, north", "Such as 12', 34'6\".");
    case "corner":
      return (
        <Choice
          label="Corner"
          value={draft.corner}
          options={Array.from({ length: corners }, (_, i) => ({ value: String(i), words: cornerName(i) }))}
          onChoose={(corner) => change({ corner })}
        />
      );
    case "wall":
      return (
        <>
          <Choice
            label="Wall"
            value={draft.wall}
            options={Array.from({ length: corners }, (_, i) => ({
              value: String(i),
              words: `${cornerName(i)}–${cornerName((i + 1) % corners)}`,
            }))}
            onChoose={(wall) => change({ wall })}
          />
          {text("along", "Along it", `From corner ${cornerName(Number(draft.wall))}.`)}
          {text("out", "Out from it")}
        </>
      );
    case "tapes":
      return (
        <>
          {point("first", "From")}
          {text("firstTape", "Tape")}
          {point("second", "And from")}
          {text("secondTape", "Tape")}
          <Choice
            label="Side"
            value={draft.side}
            options={[
              { value: "left", words: "left of the way between" },
              { value: "right", words: "right of the way between" },
            ]}
            onChoose={(side) => change({ side })}
            help={both ? "Both are drawn on the plan: click the right one." : undefined}
          />
        </>
      );
    case "baseline":
      return (
        <>
          {point("first", "From")}
          {point("second", "Towards")}
          {text("along", "Along")}
          {text("right", "Off to the right", "A minus is to the left.")}
        </>
      );
    case "polar":
      return (
        <>
          {point("first", "From")}
          <Choice
            label="Turned from"
            value={draft.second}
            options={[{ value: "", words: "the top of the plan" }, ...points]}
            onChoose={(second) => change({ second })}
          />
          {text("angle", "Angle, clockwise")}
          {text("distance", "Distance")}
        </>
      );
    case "none":
      return null;
  }
}

type TextField = Exclude<keyof PlaceDraft, "kind" | "side" | "corner" | "wall" | "first" | "second">;

function needed(kind: PlaceDraft["kind"], corners: number, points: number): string | null {
  if ((kind === "corner" || kind === "wall") && corners === 0) return "There is no building yet.";
  if (kind === "polar" && points === 0) return "A known point is needed to measure from.";
  const measured = kind === "tapes" || kind === "baseline";
  return measured && points < 2
    ? "Two known points are needed: building corners, marks or other shots that have a place."
    : null;
}

interface TypedProps {
  readonly label: string;
  readonly text: string;
  readonly help: string | undefined;
  readonly onType: (text: string) => void;
}

function Typed({ label, text, help, onType }: TypedProps) {
  return (
    <div className="field field-row">
      <label className="survey-typed">
        <span className="field-label">{label}</span>
        <input
          className="field-input"
          value={text}
          spellCheck={false}
          autoComplete="off"
          data-typed="true"
          onChange={(event) => onType(event.currentTarget.value)}
        />
      </label>
      {help ? <p className="field-help">{help}</p> : null}
    </div>
  );
}
