/** The kinds that a tool offers, each by its own name: found in the finder without knowing the tool. */
import { pickKind } from "../canvas/stage/toolRun";
import { type EarthKind, earthWords } from "../canvas/tools/earth/kinds";
import { type BreaklineKind, breaklineWord, type Feature, featureWords } from "../document";
import { breaklineKinds } from "../document/surveySchema";
import type { AppCommand } from "../panels/command";
import type { ToolName } from "../store/state";
import { onPlan } from "./whyNot";

const featureAlso: Readonly<Partial<Record<Feature["kind"], string>>> = {
  tree: "oak trunk roots keep",
  stump: "tree root hole grub",
  well: "water borehole drinking",
  septic: "leach drain field tank sewage",
  "buried-line": "pipe cable utility gas water electric sewer",
  "overhead-line": "power wire cable utility pole",
  house: "building existing neighbour",
  fence: "hedge wall boundary",
  road: "street lane path pavement",
  water: "creek stream pond river lake wetland",
  other: "thing anything obstacle",
};

const earthAlso: Readonly<Record<EarthKind, string>> = {
  parking: "car yard level",
  turning: "car truck yard turnaround",
  terrace: "bench level step",
  berm: "mound bund bank dike",
  wall: "block stone bank timber",
  point: "spot height hold grade elevation",
};

function commandFor(tool: ToolName, title: string, kind: string, words: string, also: string): AppCommand {
  return {
    id: `draw.${tool}.${kind}`,
    name: `${title}: ${words}`,
    place: "Draw",
    also,
    finderOnly: true,
    whyNot: onPlan,
    run: () => pickKind(tool, kind),
  };
}

const keysOf = <Key extends string>(record: Readonly<Record<Key, unknown>>) => Object.keys(record) as Key[];

export const kindCommands: readonly AppCommand[] = [
  ...keysOf(featureWords).map((kind) =>
    commandFor("feature", "Feature", kind, featureWords[kind], featureAlso[kind] ?? ""),
  ),
  ...keysOf(earthWords).map((kind) =>
    commandFor("earth", "Earth shape", kind, earthWords[kind], earthAlso[kind]),
  ),
  ...breaklineKinds.map((kind: BreaklineKind) =>
    commandFor("breakline", "Breakline", kind, breaklineWord(kind), "ground edge line"),
  ),
];
