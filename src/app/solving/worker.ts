/** The thread that works out the long parts of solves. */
import type { ThreadReply, ThreadRequest } from "../../solve/thread-messages";
import { solveServer } from "../../solve/thread-server";

const here = globalThis as unknown as Pick<Worker, "onmessage"> & {
  postMessage(reply: ThreadReply, handedOver: readonly ArrayBufferLike[]): void;
};

const handle = solveServer(
  (reply, handedOver) => here.postMessage(reply, handedOver),
  (turn) => setTimeout(turn),
);

here.onmessage = ({ data }: MessageEvent<ThreadRequest>) => handle(data);
