/** Hands a file to the reading worker. Stopping ends the worker, whatever it is at. */
import type { ReadResult } from "../../files/incoming";
import { stopped } from "../../files/incoming/job";
import type { ReadReply, ReadRequest } from "./messages";
import ReadingWorker from "./worker?worker";

export interface Reading {
  readonly result: Promise<ReadResult>;
  stop(): void;
}

export function beginReading(request: ReadRequest, onShare: (share: number) => void): Reading {
  const worker = new ReadingWorker();
  let end: (result: ReadResult) => void = () => undefined;
  const result = new Promise<ReadResult>((resolve) => {
    end = (answer) => {
      worker.terminate();
      resolve(answer);
    };
  });
  worker.onmessage = ({ data }: MessageEvent<ReadReply>) => {
    if ("share" in data) onShare(data.share);
    else end(data.result);
  };
  worker.onerror = () =>
    end({
      ok: false,
      stopped: false,
      message: `${request.name} can't be read: there isn't enough memory for it, or the reader failed. Nothing was changed.`,
    });
  worker.postMessage(request);
  return { result, stop: () => end(stopped) };
}
