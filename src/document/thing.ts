/** A thing of the document that a person can point at, and how it is written down. */

export const thingKinds = [
  "door",
  "window",
  "shot",
  "mark",
  "drive",
  "swale",
  "pad",
  "berm",
  "retaining-wall",
  "grade-point",
  "breakline",
  "pit",
  "feature",
  "note",
  "dimension",
  "section",
  "underlay",
] as const;
type ThingKind = (typeof thingKinds)[number];

/** There is one building and one lot; of the others there can be many, each with its id. */
export type Thing =
  | { readonly kind: "building" }
  | { readonly kind: "lot" }
  | { [Kind in ThingKind]: { readonly kind: Kind; readonly id: string } }[ThingKind];

/** The thing in one word, as the project's lists of locked and hidden things keep it. */
export function thingKey(thing: Thing): string {
  return "id" in thing ? `${thing.kind}:${thing.id}` : thing.kind;
}
