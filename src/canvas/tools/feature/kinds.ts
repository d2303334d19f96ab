/** The kinds of features to choose from: words, and what to mind about them. */
import { type Feature, featureForms, featureWords, type Project, usualKeepClear } from "../../../document";
import { featureAdvice } from "../../../solve/near-features";
import { lengthWords } from "../liveMarks";
import { firstHint, type RingWay, ringWayChoices } from "../rectangle/ways";
import type { Choices, ToolContext } from "../tool";

export type FeatureKind = Feature["kind"];

const items = (Object.keys(featureWords) as FeatureKind[]).map((value) => ({
  value,
  words: featureWords[value],
}));

export function isKind(value: string): value is FeatureKind {
  return value in featureWords;
}

/** What an area is called while it is drawn. */
const areaWords: Partial<Record<FeatureKind, string>> = { septic: "septic field's area", water: "water" };

export function areaWord(kind: FeatureKind): string {
  return areaWords[kind] ?? featureWords[kind];
}

/** The kinds, with the chosen one's caution, the distance to keep clear and the ways to draw it where it is an area. */
export function kindChoices(
  project: Project,
  { kind, keepClear, way }: { readonly kind: FeatureKind; readonly keepClear: number; readonly way: RingWay },
): Choices {
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
    ...(featureForms[kind] === "area" && { ways: ringWayChoices(way) }),
  };
}

export function formHint(context: ToolContext, kind: FeatureKind, way: RingWay): string {
  const word = kind === "other" ? "thing" : featureWords[kind];
  if (featureForms[kind] === "place") return `Click where the ${word} stands`;
  if (featureForms[kind] === "line") return `Click along the ${word}; Enter ends it`;
  if (kind === "water" && way === "outline")
    return "Click round the water's edge; the first place again, or Enter, closes it";
  return firstHint(context, areaWord(kind), way, false);
}
