import { readFile, stat } from "node:fs/promises";
import { basename } from "node:path";
import type { HostFailure, PickedPicture } from "../src/host/host";
import { isPictureName, tooLarge } from "../src/host/pictureFile";
import { openFailure } from "./failureWords";

/** The bytes of a picture or PDF that the person chose; nothing is read of any other file, or of one too large. */
export async function readPicture(path: string): Promise<PickedPicture | HostFailure> {
  const name = basename(path);
  if (!isPictureName(name)) {
    return { failed: `“${name}” is no picture. Choose a PNG, JPEG, WebP or PDF file.` };
  }
  try {
    const failure = tooLarge(name, (await stat(path)).size);
    return failure ?? { name, bytes: new Uint8Array(await readFile(path)) };
  } catch (error) {
    return { failed: openFailure(error, path) };
  }
}
