import type { Selected } from "../../../store/state";

/** What a person calls a thing of this kind. */
export function thingWord(thing: Selected): string {
  if (thing.kind === "underlay") return "picture";
  return thing.kind === "lot" || thing.kind === "section" ? `${thing.kind} line` : thing.kind;
}
