/** The kinds of features to choose from: words, and what to mind about them. */
import { type Feature, featureForms, type Project } from "../../../document";
import { featureAdvice } from "../../../solve/clearances";
import { lengthWords } from "../liveMarks";
import type { Choices } from "../tool";

export type FeatureKind = Feature["kind"];

const words: Readonly<Record<FeatureKind, string>> = {
  tree: "tree",
  stump: "stump",
  well: "well",
  septic: "septic field",
  "buried-line": "buried line",
  "overhead-line": "overhead line",
  house: "house",
  fence: "fence",
  road: "road",
  water: "water",
  other: "other",
};

export function kindWord(kind: FeatureKind): string {
  return words[kind];
}

const items = (Object.keys(words) as FeatureKind[]).map((value) => ({ value, words: words[value] }));

export function isKind(value: string): value is FeatureKind {
  return value in words;
}

/** The kinds, with the chosen one's caution and the distance to keep clear. */
export function kindChoices(project: Project, kind: FeatureKind, keepClear: number): Choices {
  const clear = keepClear > 0 ? `keep clear ${lengthWords(keepClear, project)}` : "nothing kept clear yet";
  return {
    label: "What it is",
    chosen: kind,
    items,
    typed: `${clear}: type a distance`,
    caution: featureAdvice[kind] ?? null,
  };
}

const lineHints: Partial<Record<FeatureKind, string>> = {
  septic: "Click the corners of the septic field's area; the first again, or Enter, closes it",
  house: "Click the house's corners; the first again, or Enter, closes it",
  water: "Click round the water's edge; the first place again, or Enter, closes it",
};

export function formHint(kind: FeatureKind): string {
  if (featureForms[kind] === "place")
    return `Click where the ${words[kind] === "other" ? "thing" : words[kind]} stands`;
  return lineHints[kind] ?? `Click along the ${words[kind]}; Enter ends it`;
}
