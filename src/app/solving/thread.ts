/** Starts the solving thread. Where it can't start, the window solves by itself. */
import { solveInThread } from "../../store/solving";
import { type ThreadPort, threadOver } from "../../store/thread";
import SolvingWorker from "./worker?worker";

export function startSolvingThread(): void {
  try {
    solveInThread(threadOver(new SolvingWorker() as unknown as ThreadPort));
  } catch {
    // No worker here: nothing is lost but the window's ease.
  }
}
