/** The ground as a file for other programs: points, contours and triangles. */
import { useState } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { present } from "../../document";
import { Action, Choice } from "../../panels/fields/Choice";
import { Facts } from "../../panels/parts";
import { useResults } from "../../panels/useProject";
import { counted } from "../../panels/words";
import { openDialog } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { type Files, suggestedName } from "../files";
import { type GroundFormat, groundFormats, groundText } from "./groundText";

export function GroundExportDialog({ files }: { files: Files }) {
  const open = useApp((state) => state.dialog === "export-ground");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "export-ground" : null)}
      isDismissable
    >
      <Modal className="modal modal-small">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Export the ground
          </Heading>
          {open ? <ExportForm files={files} /> : null}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

const options = Object.entries(groundFormats).map(([value, { words }]) => ({
  value: value as GroundFormat,
  words,
}));

function ExportForm({ files }: { files: Files }) {
  const [format, setFormat] = useState<GroundFormat>("csv");
  const [saving, setSaving] = useState(false);
  const points = useResults(({ survey }) => survey.points.filter(({ at }) => at !== null).length);
  const contours = useResults(({ existingContours }) => existingContours.length);
  const { holds, ending } = groundFormats[format];
  const save = async () => {
    setSaving(true);
    const { history, results } = appStore.getState();
    const project = present(history);
    const text = await groundText(format, project, results);
    await files.exportBytes(suggestedName(project, `-ground.${ending}`), new TextEncoder().encode(text));
    setSaving(false);
    openDialog(null);
  };
  return (
    <>
      <Choice label="As" value={format} options={options} onChoose={setFormat} help={holds} />
      <Facts
        facts={[
          { name: "Placed points", figure: counted(points, "point") },
          { name: "Contours of the ground", figure: counted(contours, "height") },
        ]}
      />
      <p className="soft small">
        Lengths and heights are in metres, in the plan's own coordinates. Triangles over guessed ground are
        left out.
      </p>
      <div className="dialog-acts">
        <Action look="accent" icon="sheet" isDisabled={points === 0 || saving} onPress={() => void save()}>
          Export
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </>
  );
}
