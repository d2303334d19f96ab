/** Reads a file of ground away from the window, so that the window answers meanwhile. */
import { readIncoming, thinPoints } from "../../files/incoming";
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
  const { name, bytes, mapping, raster } = data;
  try {
    const result = await readIncoming(
      name,
      bytes,
      { ...(mapping && { table: mapping }), ...(raster && { raster }) },
      { progress },
    );
    tell({ result, thinned: result.ok ? thinPoints(result.incoming.points) : null });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const message = `${name} can't be read (${why}). Nothing was changed.`;
    tell({ result: { ok: false, stopped: false, message }, thinned: null });
  }
};
