/** Puts a picture or a page of a PDF under the plan: read, made small enough, laid in the middle of the view. */
import { isHalfDrawn } from "../../canvas/stage/toolRun";
import { planView } from "../../canvas/view/planView";
import { toWorld, type XY } from "../../canvas/view/view";
import { drawingEdits, present } from "../../document";
import type { HostFailure, PickedPicture } from "../../host";
import { run, select, setStep, setTool, tell } from "../../store/actions";
import { appStore } from "../../store/store";
import { pictureLimits } from "../../underlay";
import { askPage } from "./askingPage";
import { type KeptImage, keepCanvas, keepImage, Unreadable } from "./keepImage";
import { openPdf } from "./pdfFile";

/** `on` is the place of the screen, px from the plan's corner, where its middle goes; the middle of the view without. */
export async function placePicture(picked: PickedPicture | HostFailure | null, on?: XY): Promise<void> {
  if (picked === null) return;
  if ("failed" in picked) {
    tell({ tone: "error", text: picked.failed });
    return;
  }
  const { file } = appStore.getState();
  try {
    const read = await readPicture(picked);
    // Another plan may have been opened while the picture was read.
    if (read && appStore.getState().file === file) place(picked.name, read, on);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    const text = error instanceof Unreadable ? said : `“${picked.name}” can't be placed (${said}).`;
    // Nothing was lost by it.
    tell({ tone: "caution", text });
  }
}

interface ReadPicture {
  /** As the project lists it. */
  readonly name: string;
  readonly image: KeptImage;
}

async function readPicture({ name, bytes }: PickedPicture): Promise<ReadPicture | null> {
  return isPdf(bytes) ? readPage(name, bytes) : { name: plain(name), image: await keepImage(name, bytes) };
}

/** A file's name without its ending. */
function plain(name: string): string {
  return name.replace(/\.[a-z0-9]+$/i, "") || name;
}

/** A reader finds the mark among the first thousand bytes (ISO 32000-1, annex H, note 13). */
function isPdf(bytes: Uint8Array): boolean {
  return new TextDecoder("latin1").decode(bytes.subarray(0, 1024)).includes("%PDF-");
}

async function readPage(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<ReadPicture | null> {
  const file = await openPdf(name, bytes);
  try {
    const page = file.pages === 1 ? 1 : await askPage(name, file);
    if (page === null) return null;
    const kept = await keepCanvas(await file.draw(page, pictureLimits.side), "image/png");
    const which = file.pages === 1 ? "" : `, page ${page}`;
    return { name: plain(name) + which, image: { ...kept, change: null } };
  } finally {
    await file.close();
  }
}

/** Share of the view that a new picture takes. */
const newShare = 0.7;

function place(file: string, { name, image: { change, ...kept } }: ReadPicture, on?: XY): void {
  const { underlays } = present(appStore.getState().history).drawing;
  const bytes = [...underlays, kept].reduce((sum, { data }) => sum + data.length * 0.75, 0);
  if (bytes > pictureLimits.allBytes) {
    const most = Math.round(pictureLimits.allBytes / 1e6);
    throw new Unreadable(
      `“${file}” isn't placed: together the project's pictures would have more than ${most} MB. Remove one first.`,
    );
  }
  const { view } = planView.getState();
  const share = Math.min((view.width * newShare) / kept.width, (view.height * newShare) / kept.height);
  const underlay = {
    ...kept,
    name,
    at: toWorld(view, on ?? [view.width / 2, view.height / 2]),
    scale: share / view.scale,
    turn: -view.angle || 0,
    strength: 0.5,
  };
  const edit = run(drawingEdits.addUnderlay, { underlay });
  if (!edit.ok || edit.made === undefined) return;
  setStep("lot");
  // What is half drawn is drawn on; the picture lies under it.
  if (!isHalfDrawn()) {
    setTool("select");
    select([{ kind: "underlay", id: edit.made }]);
  }
  if (change) tell({ tone: "done", text: `“${file}” was ${change}.` });
}
