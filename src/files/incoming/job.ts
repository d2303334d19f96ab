/** Long readings go in steps: between two of them they tell how far they are, and stop when asked to. */
import type { ReadResult } from "./incoming";

export interface Job {
  /** Told the share that is done, 0 to 1. */
  readonly progress?: (share: number) => void;
  /** An AbortSignal, or anything with its flag. */
  readonly signal?: { readonly aborted: boolean };
  /** Lets waiting messages in, so that a signal can come; nothing: the reading goes on at once. */
  readonly pause?: () => Promise<void>;
}

export const stopped: ReadResult = {
  ok: false,
  stopped: true,
  message: "The import was stopped. Nothing was changed.",
};

/** Tells the share; answers whether to go on. */
export async function goesOn(job: Job, share: number): Promise<boolean> {
  job.progress?.(share);
  if (job.pause) await job.pause();
  return job.signal?.aborted !== true;
}
