/** What people ask about the floor, the foundation, the drive and the quantities, answered for this plan as it stands. */
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { type Answer, answers } from "../../solve/answers";
import { wordsFor } from "../../solve/words";
import { openDialog, setStep } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, IconAction } from "../fields/Choice";
import { stepTitles } from "../steps";
import { useProject, useResults } from "../useProject";
import { capital } from "../words";

export function AnswersDialog() {
  const open = useApp((state) => state.dialog === "answers");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "answers" : null)}
      isDismissable
    >
      <Modal className="modal modal-glossary">
        <Dialog className="dialog answers">
          <Heading slot="title" className="dialog-title">
            What people ask
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          {open ? <Answers /> : null}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Answers() {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const all = answers(project, results, wordsFor(project.display));
  if (all.length === 0)
    return <p className="soft">Nothing can be answered yet: shoot the ground and draw the building first.</p>;
  return (
    <>
      <p className="soft small">
        For the plan as it stands now; change it, and each answer changes with it. Codes, officials and
        licensed people decide where they differ.
      </p>
      <ul className="answers-list">
        {all.map((answer) => (
          <AnswerCard key={answer.id} answer={answer} />
        ))}
      </ul>
    </>
  );
}

function AnswerCard({ answer }: { answer: Answer }) {
  const { question, where, margin, change, step } = answer;
  const go = () => {
    openDialog(null);
    setStep(step);
  };
  return (
    <li className="answers-one">
      <h3>{question}</h3>
      <p className="answers-figure">{`${capital(answer.answer)}.`}</p>
      <dl>
        {where === "" ? null : <Part name="Where" text={where} />}
        {margin === "" ? null : <Part name="Margin" text={margin} />}
        <Part name="What changes it" text={change} />
      </dl>
      <Action look="quiet" onPress={go}>
        {`To the step: ${stepTitles[step]}`}
      </Action>
    </li>
  );
}

function Part({ name, text }: { name: string; text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{capital(text)}</dd>
    </div>
  );
}
