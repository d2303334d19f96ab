/** The survey's own dialogs: the level run's page, the two-peg check, a grid of stakes. */
import { useEffect } from "react";
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { useStore } from "zustand";
import { stakeGridStore } from "../../store/stakeGrid";
import { IconAction } from "../fields/Choice";
import { LevelRun } from "./LevelRun";
import { PegSheet } from "./PegSheet";
import { StakesSheet } from "./StakesSheet";
import { openSurveyDialog, type SurveyDialog, surveyDialogs } from "./surveyDialogs";
import "./survey.css";

export function SurveyDialogs() {
  const open = useStore(surveyDialogs, (state) => state.open);
  const picked = useStore(stakeGridStore, (state) => state.picked !== null);
  useEffect(() => {
    if (picked) openSurveyDialog({ kind: "stakes" });
  }, [picked]);
  return (
    <ModalOverlay
      // Stakes are seen on the plan while they are typed.
      className={open?.kind === "stakes" ? "overlay overlay-clear" : "overlay"}
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
