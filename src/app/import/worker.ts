/** Reads a file of ground away from the window, so that the window answers meanwhile. */
import { readIncoming } from "../../files/incoming";
import type { ReadReply, ReadRequest } from "./messages";

const here = globalThis as unknown as Pick<Worker, "postMessage" | "onmessage">;

const tell = (reply: ReadReply) => here.postMessage(reply);

here.onmessage = async ({ data }: MessageEvent<ReadRequest>) => {
  let told = 0;
  const progress = (share: number) => {
    if (share - told < 0.01) return;
    told = share;
    tell({ share });
  };
  const { name, bytes, mapping } = data;
  try {
    tell({ result: await readIncoming(name, bytes, mapping ? { table: mapping } : {}, { progress }) });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const message = `${name} can't be read (${why}). Nothing was changed.`;
    tell({ result: { ok: false, stopped: false, message } });
  }
};
