/** The kinds that a tool offers, each by its own name: found in the finder without knowing the tool. */
import { pickKind } from "../canvas/stage/toolRun";
import { type BuildingKind, buildingKinds, buildingWords } from "../canvas/tools/building/kinds";
import { type EarthKind, earthWords } from "../canvas/tools/earth/kinds";
import { type BreaklineKind, breaklineWord, type Feature, featureWords } from "../document";
import { breaklineKinds } from "../document/surveySchema";
import type { AppCommand } from "../panels/command";
import type { ToolName } from "../store/state";
import { onPlan, withBuilding } from "./whyNot";

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

const buildingAlso: Readonly<Record<BuildingKind, string>> = {
  corners: "rectangle box square house garage size width depth",
  side: "three points turned angled rotated rectangle bearing",
  outline: "polygon free shape corners L T U walls freehand",
  pull: "push piece jog bump out notch L T U shape stretch",
  "add-on": "addition wing extension annex porch lean-to build on",
};

/** These change a building that stands; the others draw one. */
const changesBuilding: readonly BuildingKind[] = ["pull", "add-on"];

function commandFor(tool: ToolName, title: string, kind: string, words: string, also: string): AppCommand {
  return {
    id: `draw.${tool}.${kind}`,
    name: `${title}: ${words}`,
    place: "Draw",
    also,
    finderOnly: true,
    whyNot: onPlan,
    run: () => void pickKind(tool, kind),
  };
}

const keysOf = <Key extends string>(record: Readonly<Record<Key, unknown>>) => Object.keys(record) as Key[];

/** What changes a building that stands is in the menu too: there is no other way to it by name. */
function buildingCommand(kind: BuildingKind): AppCommand {
  const named = commandFor("building", "Building", kind, buildingWords[kind], buildingAlso[kind]);
  return changesBuilding.includes(kind) ? { ...named, finderOnly: false, whyNot: withBuilding } : named;
}

export const kindCommands: readonly AppCommand[] = [
  ...buildingKinds.map(buildingCommand),
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
