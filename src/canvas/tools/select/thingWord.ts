import { kindWord } from "../../../document";
import type { Selected } from "../../../store/state";

/** What a person calls a thing of this kind. */
export function thingWord(thing: Selected): string {
  return thing.kind === "lot" ? "lot line" : kindWord(thing.kind);
}
