import { Button, Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { useStore } from "zustand";
import { askedStore, lastChoice } from "./asking";

/** Shows the question that waits for an answer. */
export function AskingDialog() {
  const { question, answer } = useStore(askedStore);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={question !== null}
      onOpenChange={(open) => {
        if (!open) answer(lastChoice(question));
      }}
    >
      <Modal className="modal modal-small">
        <Dialog className="dialog" role="alertdialog">
          <Heading slot="title" className="dialog-title">
            {question?.title}
          </Heading>
          <p>{question?.text}</p>
          <div className="dialog-acts">
            {question?.choices.map((choice, index) => (
              <Button
                key={choice.id}
                className={`button button-${choice.look ?? "plain"}`}
                autoFocus={index === 0}
                onPress={() => answer(choice.id)}
              >
                {choice.words}
              </Button>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
