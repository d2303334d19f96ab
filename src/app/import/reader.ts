/** Hands a file to the reading worker. Stopping ends the worker, whatever it is at. */
import { stopped } from "../../files/incoming/job";
import type { ReadAnswer, ReadReply, ReadRequest } from "./messages";
import ReadingWorker from "./worker?worker";

export interface Reading {
  readonly answer: Promise<ReadAnswer>;
  stop(): void;
}

export function beginReading(request: ReadRequest, onShare: (share: number) => void): Reading {
  const worker = new ReadingWorker();
  let end: (answer: ReadAnswer) => void = () => undefined;
  const answer = new Promise<ReadAnswer>((resolve) => {
    end = (given) => {
      worker.terminate();
      resolve(given);
    };
  });
  const refuse = (result: ReadAnswer["result"]) => end({ result, thinned: null });
  worker.onmessage = ({ data }: MessageEvent<ReadReply>) => {
    if ("share" in data) onShare(data.share);
    else end(data);
  };
  worker.onerror = () =>
    refuse({
      ok: false,
      stopped: false,
      message: `${request.name} can't be read: there isn't enough memory for it, or the reader failed. Nothing was changed.`,
    });
  worker.postMessage(request);
  return { answer, stop: () => refuse(stopped) };
}
