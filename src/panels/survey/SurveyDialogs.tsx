/** The survey's own dialogs: the level run's page, the two-peg check, a grid of stakes. */
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { useStore } from "zustand";
import { IconAction } from "../fields/Choice";
import { LevelRun } from "./LevelRun";
import { PegSheet } from "./PegSheet";
import { StakesSheet } from "./StakesSheet";
import { openSurveyDialog, type SurveyDialog, surveyDialogs } from "./surveyDialogs";
import "./survey.css";

export function SurveyDialogs() {
  const open = useStore(surveyDialogs, (state) => state.open);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open !== null}
      onOpenChange={(to) => {
        if (!to) openSurveyDialog(null);
      }}
      isDismissable
    >
      <Modal className={open?.kind === "run" ? "modal modal-wide" : "modal modal-sheet"}>
        <Dialog className="dialog">
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openSurveyDialog(null)} />
          </div>
          {open ? <Content open={open} /> : null}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Content({ open }: { open: SurveyDialog }) {
  if (open.kind === "run") return <LevelRun />;
  return open.kind === "pegs" ? <PegSheet setup={open.setup} /> : <StakesSheet />;
}
