/** A stand of the laser: how it got its height, its rod, how exact its beam is, and whether it was bumped. */
import { memo } from "react";
import { type Setup, surveyEdits } from "../../document";
import type { SetupResult } from "../../solve/results";
import { run, select, tryRun } from "../../store/actions";
import { Action, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Icon } from "../icons";
import { readPlace } from "../levelbook/typing";
import { Facts } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { BeamFields } from "./BeamFields";
import { Bumps } from "./Bumps";
import { RodFields } from "./RodFields";
import { plusMinus } from "./rowState";
import "./survey.css";

export const SetupCard = memo(function SetupCard({
  setup,
  result,
}: {
  setup: Setup;
  result: SetupResult | null;
}) {
  const { id, name } = setup;
  const tied = result?.tied === true && result.beam !== null;
  return (
    <section className="card" aria-label={name}>
      <WordsField
        label="Name"
        text={name}
        onCommit={(text) => tryRun(surveyEdits.changeSetup, { id, patch: { name: text } })}
      />
      {tied && result ? <Tied setup={setup} result={result} /> : <NotTied setup={setup} />}
      <AssumedBeam setup={setup} tied={tied} />
      <Bumps setup={setup} />
      <RodFields setup={setup} />
      <details className="survey-more">
        <summary>Where it stood, and how exact its beam is</summary>
        <Stand setup={setup} />
        <BeamFields setup={setup} />
      </details>
      <div className="card-acts">
        <span />
        <IconAction
          icon="trash"
          label={`Remove ${name}`}
          onPress={() => run(surveyEdits.removeSetup, { id })}
        />
      </div>
    </section>
  );
});

function Tied({ setup: { id, name }, result }: { setup: Setup; result: SetupResult }) {
  const notation = useNotation();
  const sure = plusMinus(result.sigma, notation);
  return (
    <>
      <Facts
        facts={[
          {
            name: result.reads === "up" ? "Ground where it reads zero" : "Height of the beam",
            figure: `${notation.length(result.beam ?? 0)}${sure ? ` ${sure}` : ""}`,
            note: result.tie,
            why: { kind: "beam", id, of: `height of the beam, ${name}` },
          },
        ]}
      />
      <Ties setup={id} />
    </>
  );
}

/** What ties it, each with what is left of it once all are adjusted together. */
function Ties({ setup }: { setup: string }) {
  const shots = useProject(({ survey }) => survey.shots);
  const marks = useProject(({ survey }) => survey.marks);
  const points = useResults(({ survey }) => survey.points);
  const notation = useNotation();
  const shifts = new Map(points.map(({ shot, shift }) => [shot, shift]));
  const ties = shots.filter(
    (shot) =>
      shot.setup === setup &&
      !shot.aside &&
      shot.reading !== null &&
      (shot.kind === "mark" || (shot.kind === "turning" && shot.of !== null)),
  );
  if (ties.length < 2) return null;
  const nameOf = (id: string | null) =>
    marks.find((mark) => mark.id === id)?.name || shots.find((shot) => shot.id === id)?.name || "a point";
  return (
    <Facts
      facts={ties.map((shot) => {
        const shift = shifts.get(shot.id) ?? null;
        return {
          name: `Tie on ${nameOf(shot.of)}`,
          figure: shift === null ? "–" : notation.signed(shift),
          note: "found less known",
        };
      })}
    />
  );
}

function NotTied({ setup: { id } }: { setup: Setup }) {
  const mark = useProject(({ survey }) => survey.marks[0]);
  const waits = useProject(
    ({ survey }) => survey.shots.filter((shot) => shot.setup === id && shot.reading !== null).length,
  );
  const read = () => {
    if (!mark) return;
    const edit = run(surveyEdits.addShot, { setup: id, name: mark.name, kind: "mark", of: mark.id });
    if (edit.ok && edit.made !== undefined) select([{ kind: "shot", id: edit.made }]);
  };
  return (
    <>
      <p className="untied">
        <Icon name="warn" />
        <span>
          {`Not tied: it has no height yet${waits > 0 ? `, so its ${waits} ${waits === 1 ? "reading gives" : "readings give"} none` : ""}. Add a reading on a mark, read a turning point of another set-up, or assume a beam height below.`}
        </span>
      </p>
      {mark ? (
        <Action look="quiet" icon="plus" onPress={read}>
          {`Add a reading on ${mark.name}`}
        </Action>
      ) : null}
    </>
  );
}

function AssumedBeam({ setup: { id, assumedBeam }, tied }: { setup: Setup; tied: boolean }) {
  const notation = useNotation();
  return (
    <TypedField
      label="Assumed beam"
      shown={assumedBeam === null ? "" : notation.length(assumedBeam.m)}
      placeholder="none"
      help={
        tied && assumedBeam === null
          ? undefined
          : "Used only where no reading ties this set-up. Leave it empty otherwise."
      }
      commit={(text) => refusal(tryRun(surveyEdits.setAssumedBeam, { id, text }))}
    />
  );
}

/** Distances, and so how sure each height is, need the laser's own place. */
function Stand({ setup: { id, at } }: { setup: Setup }) {
  const project = useProject((present) => present);
  const notation = useNotation();
  const commit = (text: string): string | null => {
    const read = readPlace(text, project);
    if (!read.ok) return read.message;
    const { place } = read;
    const corner = place.kind === "corner" ? project.building?.outline[place.corner] : undefined;
    const to: Setup["at"] = place.kind === "at" ? [place.x, place.y] : (corner ?? null);
    return refusal(tryRun(surveyEdits.changeSetup, { id, patch: { at: to } }));
  };
  return (
    <TypedField
      label="Stood at"
      layout="stack"
      shown={at === null ? "" : `${notation.length(at[0])}, ${notation.length(at[1])}`}
      placeholder="not known"
      help="East and north, or a corner such as A. With it and the beam's accuracy each height says how sure it is."
      commit={commit}
    />
  );
}
