/** Asking for a picture or PDF with the browser's picker where it has one, else with a file field. */
import { chooseFile, filePickers, pictureType } from "./filePickers";
import type { HostAnswer, HostFailure, PickedPicture } from "./host";
import { pictureEndings, tooLarge } from "./pictureFile";

export async function pickPicture(): HostAnswer<PickedPicture> {
  try {
    const file = await chosen();
    return file && (await readPicture(file));
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return null;
    const said = error instanceof Error ? error.message : String(error);
    return { failed: `The picture couldn't be read (${said}). Choose it again, or another one.` };
  }
}

async function chosen(): Promise<File | null> {
  const pickers = filePickers();
  if (!pickers) return chooseFile(pictureEndings.map((ending) => `.${ending}`).join(","));
  const [handle] = await pickers.showOpenFilePicker({ types: [pictureType] });
  return handle ? handle.getFile() : null;
}

/** The file's bytes, unless there are too many to read. */
export async function readPicture(file: File): Promise<PickedPicture | HostFailure> {
  return (
    tooLarge(file.name, file.size) ?? { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }
  );
}
