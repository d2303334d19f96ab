/** The two-peg check: four readings, two distances, and what they say of the beam. */
import { useState } from "react";
import { Heading } from "react-aria-components";
import { surveyEdits } from "../../document";
import { run } from "../../store/actions";
import { Action, Choice } from "../fields/Choice";
import { Area, Laser, Line, Note, Size } from "../help/drawings/parts";
import { useNotation, useProject } from "../useProject";
import { beamErrorWords, noPegs, type PegAnswer, type Pegs, pegAnswer } from "./pegs";
import { openSurveyDialog } from "./surveyDialogs";

const fields: readonly { readonly id: keyof Pegs; readonly label: string }[] = [
  { id: "apart", label: "Peg A to peg B" },
  { id: "midA", label: "From the middle: reading on A" },
  { id: "midB", label: "From the middle: reading on B" },
  { id: "toA", label: "Second stand: distance to A" },
  { id: "nearA", label: "From near A: reading on A" },
  { id: "nearB", label: "From near A: reading on B" },
];

export function PegSheet({ setup }: { setup: string | null }) {
  const [pegs, setPegs] = useState(noPegs);
  const notation = useNotation();
  const answer = pegAnswer(pegs, notation.display.reading, notation.display.length);
  return (
    <>
      <Heading slot="title" className="dialog-title">
        Two-peg check
      </Heading>
      <p className="soft">
        {`Two pegs, some ${notation.rule("100 ft", "30 m")} apart.`} Read both from the middle, where a tilted
        beam errs the same on each; then from close to A, between the pegs. What differs is the beam's error.
      </p>
      <PegDrawing />
      <div className="survey-pegs">
        {fields.map(({ id, label }) => (
          <label key={id} className="field field-row">
            <span className="field-label">{label}</span>
            <input
              className="field-input"
              value={pegs[id]}
              spellCheck={false}
              autoComplete="off"
              data-typed="true"
              aria-invalid={answer.state === "fault" && answer.field === id}
              onChange={(event) => setPegs({ ...pegs, [id]: event.currentTarget.value })}
            />
          </label>
        ))}
      </div>
      <Found answer={answer} setup={setup} />
    </>
  );
}

function Found({ answer, setup }: { answer: PegAnswer; setup: string | null }) {
  const notation = useNotation();
  const setups = useProject(({ survey }) => survey.setups);
  const [chosen, setChosen] = useState(setup ?? setups[0]?.id ?? "");
  if (answer.state === "empty") return <p className="soft">Type all six, and what they say stands here.</p>;
  if (answer.state === "fault")
    return (
      <p className="field-fault" role="alert">
        {answer.why}
      </p>
    );
  const { error, trueDifference, correct } = answer.result;
  const use = () => {
    if (run(surveyEdits.setCollimation, { id: chosen, error }).ok) openSurveyDialog(null);
  };
  return (
    <section className="card" aria-label="What the pegs say">
      <p className="survey-lead" role="status">{`The beam reads ${beamErrorWords(error, notation)}.`}</p>
      <p className="soft">{`Peg B against peg A: ${notation.aboveBelow(trueDifference)}. From near A a true beam would have read ${notation.reading(correct.a)} and ${notation.reading(correct.b)}.`}</p>
      {setups.length === 0 ? (
        <p className="soft">Add a set-up of the laser to correct its readings by this.</p>
      ) : (
        <>
          <Choice
            label="For set-up"
            value={chosen}
            options={setups.map(({ id, name }) => ({ value: id, words: name }))}
            onChoose={setChosen}
            help="Its readings are corrected by distance, so say where it stood."
          />
          <div className="dialog-acts">
            <Action look="accent" onPress={use}>
              Use it
            </Action>
          </div>
        </>
      )}
    </section>
  );
}

function PegDrawing() {
  return (
    <svg
      className="peg-drawing"
      viewBox="0 0 460 120"
      role="img"
      aria-label="Two pegs with the laser once in the middle and once close to peg A; its tilted beam errs more on the far peg."
    >
      <Area of="earth" d="M0 96 460 104V120H0z" />
      <Area of="thing" d="M40 84h8v16h-8zM412 88h8v16h-8z" />
      <Laser x={230} beam={44} foot={100} />
      <Line look="accent" d="M44 40 230 44 416 40" />
      <Line look="soft" dashed d="M90 60 416 46" />
      <Note x={44} y={78} anchor="middle">
        A
      </Note>
      <Note x={416} y={82} anchor="middle">
        B
      </Note>
      <Note x={96} y={74} look="soft">
        second stand
      </Note>
      <Size look="soft" from={[44, 112]} to={[416, 112]} />
    </svg>
  );
}
