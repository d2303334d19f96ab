import { useEffect, useMemo, useState } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { type Project, visibleProject } from "../document";
import { Action, Choice, Toggle } from "../panels/fields/Choice";
import { useToLookAt } from "../panels/Problems";
import { Facts } from "../panels/parts";
import { PaperChoice, TitleBlock } from "../panels/steps/SheetsPanel";
import { useProject, useResults } from "../panels/useProject";
import { counted } from "../panels/words";
import { standardScales } from "../sheets/scales";
import { inOneList, lookWords } from "../solve/to-look-at";
import { openDialog } from "../store/actions";
import { useApp } from "../store/useApp";
import { type DrawnPlan, drawSitePlan, type SheetChoice, scalesAhead } from "./exportPlan";
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
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const ahead = useMemo(() => scalesAhead(project, results), [project, results]);
  const [scale, setScale] = useState(auto);
  const { paper } = project.display;
  const [pictures, setPictures] = useState(true);
  const { drawn, why } = useDrawn(project, { paper, scale: scale === auto ? null : Number(scale), pictures });
  const [saving, setSaving] = useState(false);
  const scales = [
    { value: auto, words: `${ahead[paper]}, the largest that fits` },
    ...standardScales(project.display, paper).map(({ ratio, words }) => ({ value: String(ratio), words })),
  ];
  const save = async () => {
    if (!drawn) return;
    setSaving(true);
    await files.exportBytes(drawn.name, drawn.bytes);
    setSaving(false);
    openDialog(null);
  };
  return (
    <>
      <div className="part">
        <PaperChoice note={(each) => ahead[each]} />
        <Choice
          label="Scale"
          value={scale}
          options={scales}
          onChoose={setScale}
          help="True on paper when it is printed at 100 %."
        />
        {visibleProject(project).drawing.underlays.length > 0 ? (
          <Toggle label="Pictures under the plan" on={pictures} onToggle={setPictures} />
        ) : null}
      </div>
      <TitleBlock />
      <Facts
        facts={[
          { name: "On paper", figure: drawn ? counted(drawn.sheets, "sheet") : why ? "–" : "drawing…" },
          { name: "Before it goes out", ...useOpenPoints() },
        ]}
      />
      {why ? (
        <p className="field-fault" role="alert">
          {`The site plan could not be drawn: ${why} Your plan is unchanged.`}
        </p>
      ) : null}
      <div className="dialog-acts">
        <Action look="accent" icon="sheet" isDisabled={!drawn || saving} onPress={() => void save()}>
          Export as PDF
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </>
  );
}

/** How many are named; the whole list stands at the foot of the steps. */
const named = 3;

function useOpenPoints(): { readonly figure: string; readonly note?: string } {
  const list = inOneList(useToLookAt());
  if (list.length === 0) return { figure: lookWords(0).toLowerCase() };
  const places = [...new Set(list.map(({ where }) => where))];
  const more = places.length > named ? ` and ${places.length - named} more` : "";
  return { figure: lookWords(list.length), note: `${places.slice(0, named).join(", ")}${more}` };
}

/** A pause in typing before it is drawn anew, ms. */
const pause = 150;

/** Draws the plan ahead, so that the dialog can say how many sheets it has; null while that goes on. */
function useDrawn(project: Project, { paper, scale, pictures }: SheetChoice) {
  const [answer, setAnswer] = useState<{ drawn: DrawnPlan | null; why: string | null }>(undrawn);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the project is what is drawn, read from the store
  useEffect(() => {
    let here = true;
    setAnswer(undrawn);
    const draw = async () => {
      try {
        const drawn = await drawSitePlan({ paper, scale, pictures });
        if (here) setAnswer({ drawn, why: null });
      } catch (error) {
        if (here) setAnswer({ drawn: null, why: error instanceof Error ? error.message : String(error) });
      }
    };
    const timer = setTimeout(() => void draw(), pause);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, [project, paper, scale, pictures]);
  return answer;
}

const undrawn = { drawn: null, why: null };
