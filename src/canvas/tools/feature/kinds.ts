/** The kinds of features to choose from: words, and what to mind about them. */
import { type Feature, featureForms, featureWords, type Project, usualKeepClear } from "../../../document";
import { featureAdvice } from "../../../solve/near-features";
import { lengthWords } from "../liveMarks";
import type { Choices } from "../tool";

export type FeatureKind = Feature["kind"];

const items = (Object.keys(featureWords) as FeatureKind[]).map((value) => ({
  value,
  words: featureWords[value],
}));

export function isKind(value: string): value is FeatureKind {
  return value in featureWords;
}

/** The kinds, with the chosen one's caution and the distance to keep clear. */
export function kindChoices(project: Project, kind: FeatureKind, keepClear: number): Choices {
  const usual = usualKeepClear({ kind, trunk: null });
  const offered = usual === null ? "" : `, usual ${lengthWords(usual.m, project)}`;
  const isUsual = keepClear === usual?.m ? ", as usual" : "";
  const clear =
    keepClear > 0
      ? `keep clear ${lengthWords(keepClear, project)}${isUsual}`
      : `nothing kept clear yet${offered}`;
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
  const word = kind === "other" ? "thing" : featureWords[kind];
  if (featureForms[kind] === "place") return `Click where the ${word} stands`;
  return lineHints[kind] ?? `Click along the ${word}; Enter ends it`;
}
