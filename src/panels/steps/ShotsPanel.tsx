import { memo } from "react";
import { type LengthNotation, type Mark, siteEdits, surveyEdits } from "../../document";
import { run as runEdit, select, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { Action, Choice, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { LengthField, refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { groundApart } from "../heightsApart";
import { Told } from "../inspector/Told";
import { Caution, Facts, Panel, Section } from "../parts";
import { beginSetup } from "../survey/beginSetup";
import { askBook } from "../survey/bookRequest";
import { PlaceCard } from "../survey/PlaceCard";
import { SetupCard } from "../survey/SetupCard";
import { openSurveyDialog } from "../survey/surveyDialogs";
import { useNotation, useProject, useResults } from "../useProject";
import { GroundLines } from "./GroundLines";

export function ShotsPanel() {
  return (
    <Panel step="shots" purpose="The ground as the laser saw it, told from a mark that stays.">
      <PlaceCard />
      <Marks />
      <Setups />
      <ReadingsNotation />
      <GroundLines />
      <Standing />
      <Caution>Don't look into the beam.</Caution>
    </Panel>
  );
}

function Marks() {
  const marks = useProject((project) => project.survey.marks);
  const add = () => {
    const first = marks.length === 0;
    runEdit(surveyEdits.addMark, { name: first ? "Mark" : `Mark ${marks.length + 1}`, height: "100" });
    // What comes next is the reading on it.
    if (first) askBook(null);
  };
  return (
    <Section title="Marks" aside={marks.length > 1 ? "the first is the reference" : undefined}>
      {marks.length === 0 ? (
        <p className="soft small">
          Choose a thing that will outlast the job: a bolt in a ledge, a spike in a pole, a corner of an old
          slab, at least twice the trench's depth away from the dig.
        </p>
      ) : null}
      {marks.map((mark) => (
        <Told key={mark.id} thing={{ kind: "mark", id: mark.id }}>
          <MarkCard mark={mark} />
        </Told>
      ))}
      <Action icon="plus" look={marks.length === 0 ? "accent" : "quiet"} onPress={add}>
        {marks.length === 0 ? "Add the mark" : "Add a spare mark"}
      </Action>
    </Section>
  );
}

const MarkCard = memo(function MarkCard({ mark }: { mark: Mark }) {
  const { id, name, at, height, note } = mark;
  const notation = useNotation();
  const change = (patch: Partial<Omit<Mark, "id">>) => tryRun(surveyEdits.changeMark, { id, patch });
  const placed = at !== null;
  const place = () => {
    if (pickTool("mark")) select([{ kind: "mark", id }]);
  };
  return (
    <div className="card">
      <WordsField label="Name" text={name} onCommit={(text) => change({ name: text })} />
      <TypedField
        label="Height"
        shown={notation.length(height.m)}
        help={`Typed as ${height.text}. Any round figure will do: every other height is told from it.`}
        commit={(text) => refusal(tryRun(surveyEdits.setMarkHeight, { id, text }))}
      />
      <WordsField
        label="Where to find it"
        layout="stack"
        text={note}
        onCommit={(text) => change({ note: text })}
      />
      {placed ? (
        <>
          <LengthField label="East" m={at[0]} onCommit={(m) => change({ at: [m, at[1]] })} />
          <LengthField label="North" m={at[1]} onCommit={(m) => change({ at: [at[0], m] })} />
        </>
      ) : null}
      <div className="card-acts">
        <Action icon="place" look="quiet" onPress={place}>
          {placed ? "Place it anew" : "Place it on the plan"}
        </Action>
        <IconAction
          icon="trash"
          label={`Remove ${name}`}
          onPress={() => runEdit(surveyEdits.removeMark, { id })}
        />
      </div>
    </div>
  );
});

function Setups() {
  const setups = useProject((project) => project.survey.setups);
  const results = useResults(({ survey }) => survey.setups);
  return (
    <Section title="Set-ups of the laser" aside="one each time it is moved">
      {setups.map((setup) => (
        <SetupCard key={setup.id} setup={setup} result={results.find(({ id }) => id === setup.id) ?? null} />
      ))}
      <div className="survey-acts">
        <Action icon="plus" look="quiet" onPress={beginSetup}>
          Add a set-up
        </Action>
        <Action look="quiet" onPress={() => openSurveyDialog({ kind: "run" })}>
          Level run…
        </Action>
        <Action look="quiet" onPress={() => openSurveyDialog({ kind: "stakes" })}>
          Grid of stakes…
        </Action>
      </div>
    </Section>
  );
}

const readingOptions: readonly { value: LengthNotation; words: string }[] = [
  { value: "in", words: "inches, 62⅝″" },
  { value: "ft-in", words: "feet and inches, 5′ 2⅝″" },
  { value: "ft", words: "feet and hundredths, 5.22′" },
  { value: "m", words: "metres, 1.591 m" },
  { value: "cm", words: "centimetres, 159.1 cm" },
  { value: "mm", words: "millimetres, 1591 mm" },
];

function ReadingsNotation() {
  const reading = useProject((project) => project.display.reading);
  return (
    <Section title="How readings are typed">
      <Choice
        label="A bare number is"
        value={reading}
        options={readingOptions}
        onChoose={(chosen) => runEdit(siteEdits.changeDisplay, { patch: { reading: chosen } })}
        help="A reading with its own unit is always understood as written."
      />
    </Section>
  );
}

function Standing() {
  const points = useResults(({ survey }) => survey.points);
  const shots = useProject(({ survey }) => survey.shots);
  const breaklines = useProject(({ survey }) => survey.breaklines);
  const notation = useNotation();
  const known = points.filter((point) => point.height !== null && point.kind !== "check");
  const apart = groundApart(points, breaklines);
  const placed = known.filter((point) => point.at !== null).length;
  const aside = shots.filter((shot) => shot.aside).length;
  if (shots.length === 0) return null;
  const onMarks = shots.filter(({ kind }) => kind === "mark").length;
  const notes = [
    ...(onMarks > 0 ? [`${onMarks === 1 ? "one" : onMarks} more on marks`] : []),
    ...(aside > 0 ? [`${aside} set aside`] : []),
  ];
  const facts = [
    {
      name: "Shots in the book",
      figure: String(shots.length - onMarks),
      ...(notes.length > 0 ? { note: notes.join(", ") } : {}),
    },
    { name: "With a height and a place", figure: String(placed) },
    ...(apart === null
      ? []
      : [{ name: "Ground, highest to lowest", figure: notation.length(apart), note: "without the marks" }]),
  ];
  return (
    <Section title="So far">
      <Facts facts={facts} />
    </Section>
  );
}
