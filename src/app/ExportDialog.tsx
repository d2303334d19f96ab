import { useState } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { Action, Choice } from "../panels/fields/Choice";
import { PaperChoice, TitleBlock } from "../panels/steps/SheetsPanel";
import { useProject } from "../panels/useProject";
import { standardScales } from "../sheets/scales";
import { openDialog, tell } from "../store/actions";
import { useApp } from "../store/useApp";
import { exportSitePlan } from "./exportPlan";
import type { Files } from "./files";

const auto = "auto";

/** Paper, scale and title block of the site plan, and the button that draws it. */
export function ExportDialog({ files }: { files: Files }) {
  const open = useApp((state) => state.dialog === "export");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "export" : null)}
      isDismissable
    >
      <Modal className="modal modal-small">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Export the site plan
          </Heading>
          <ExportForm files={files} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function ExportForm({ files }: { files: Files }) {
  const display = useProject((project) => project.display);
  const [scale, setScale] = useState(auto);
  const [drawing, setDrawing] = useState(false);
  const scales = [
    { value: auto, words: "the largest that fits" },
    ...standardScales(display).map(({ ratio, words }) => ({ value: String(ratio), words })),
  ];
  const draw = async () => {
    setDrawing(true);
    try {
      await exportSitePlan(files, { paper: display.paper, scale: scale === auto ? null : Number(scale) });
      openDialog(null);
    } catch (error) {
      tell({
        tone: "error",
        text: "The site plan could not be drawn. Your plan is unchanged.",
        more: error instanceof Error ? error.message : String(error),
      });
    } finally {
      setDrawing(false);
    }
  };
  return (
    <>
      <div className="part">
        <PaperChoice />
        <Choice
          label="Scale"
          value={scale}
          options={scales}
          onChoose={setScale}
          help="True on paper when it is printed at 100 %."
        />
      </div>
      <TitleBlock />
      <div className="dialog-acts">
        <Action look="accent" icon="sheet" isDisabled={drawing} onPress={() => void draw()}>
          {drawing ? "Drawing…" : "Export as PDF"}
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </>
  );
}
