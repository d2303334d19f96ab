import { type Project, thingKindWord } from "../../../document";
import type { Selected } from "../../../store/state";

/** What a person calls a thing of this kind. */
export function thingWord(project: Project, thing: Selected): string {
  return thing.kind === "lot" ? "lot line" : thingKindWord(project, thing);
}
