/** What a pipe under a drive does, in the same words everywhere. */
import { standardPipes } from "../drainage";
import type { PipeResult } from "./results";

/** Smallest standard pipe, m. */
const leastBore = (standardPipes[0] ?? 12) * 0.0254;

interface Figures {
  readonly length: (metres: number) => string;
  readonly bore: (metres: number) => string;
}

/** One sentence on a pipe: its size, and what would mend it. */
export function pipeWords(pipe: PipeResult, { length, bore }: Figures): string {
  if (pipe.verdict === "doesn't fall")
    return "The swale's bed doesn't fall here, so no pipe can drain. Mend the swale first.";
  if (pipe.verdict === null) return "Type the rain of the storm, and the least pipe that carries it follows.";
  if (pipe.bore === null)
    return "No standard pipe carries the storm with the water under the drive. Raise the drive, lead less water here, or lay two.";
  const size = `${bore(pipe.bore)} bore`;
  if (pipe.verdict === "overtops")
    return `${size}: the storm's water would stand at ${length(pipe.headwater ?? 0)} and run over the drive. Take a larger one.`;
  if (pipe.verdict === "too little cover")
    return `${size} carries the storm, but only ${length(Math.max(0, pipe.cover ?? 0))} of cover is left over it at the least. Raise the drive, deepen the swale${pipe.bore > leastBore + 1e-9 ? ", or take two smaller ones" : ""}.`;
  return `${size} carries the storm, with ${length(pipe.cover ?? 0)} of cover over it.`;
}
