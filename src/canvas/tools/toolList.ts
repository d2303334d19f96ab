/** The tools of the plan: their names and keys, for the tool strip, the menu and the finder. */
import type { ToolName } from "../../store/state";

export interface ToolEntry {
  readonly name: ToolName;
  readonly label: string;
  /** Plain key that picks the tool. */
  readonly key: string;
  /** What it is for, in a few words. */
  readonly what: string;
  /** Other words, of the trade and of every day, that a person might look for. */
  readonly also?: string;
  /** Tools of one group stand together in the strip. */
  readonly group: "hand" | "site" | "works" | "words";
}

export const planTools: readonly ToolEntry[] = [
  {
    name: "select",
    label: "Select",
    key: "V",
    what: "select, move, turn and pull things on the plan",
    also: "pick choose arrow hand pointer edit",
    group: "hand",
  },
  {
    name: "measure",
    label: "Measure",
    key: "Q",
    what: "measure distance, angle, area and fall; nothing is kept",
    also: "ruler tape length how far size slope",
    group: "hand",
  },
  {
    name: "shot",
    label: "Shot",
    key: "S",
    what: "place the shots of the level book",
    also: "point spot survey laser reading elevation level",
    group: "site",
  },
  {
    name: "mark",
    label: "Mark",
    key: "M",
    what: "place the reference mark",
    also: "benchmark datum bm reference zero nail peg",
    group: "site",
  },
  {
    name: "breakline",
    label: "Breakline",
    key: "E",
    what: "draw a ditch, a ridge, a bank or another line at which the ground bends",
    also: "gully crest toe top of slope kerb curb edge",
    group: "site",
  },
  {
    name: "pit",
    label: "Test pit",
    key: "H",
    what: "put test pits where they were dug",
    also: "hole dig soil rock groundwater borehole",
    group: "site",
  },
  {
    name: "lot",
    label: "Lot",
    key: "L",
    what: "draw the lot's lines",
    also: "property boundary line plot parcel land corner deed",
    group: "site",
  },
  {
    name: "feature",
    label: "Feature",
    key: "T",
    what: "put a tree, a well, a buried line or another thing on the lot",
    also: "obstacle utility pipe cable keep clear",
    group: "site",
  },
  {
    name: "building",
    label: "Building",
    key: "B",
    what: "draw the building",
    also: "house garage shed barn workshop footprint outline walls addition",
    group: "works",
  },
  {
    name: "door",
    label: "Door",
    key: "D",
    what: "put a door on a wall",
    also: "opening garage entrance gate",
    group: "works",
  },
  {
    name: "window",
    label: "Window",
    key: "O",
    what: "put a window on a wall",
    also: "opening",
    group: "works",
  },
  {
    name: "drive",
    label: "Drive",
    key: "R",
    what: "draw the drive from the road to the door",
    also: "driveway access ramp track lane road",
    group: "works",
  },
  {
    name: "swale",
    label: "Swale",
    key: "W",
    what: "draw a swale from its high end to its outlet",
    also: "ditch drain drainage gutter channel dish water",
    group: "works",
  },
  {
    name: "earth",
    label: "Earth shape",
    key: "P",
    what: "draw a parking pad, a terrace, a berm, a retaining wall or a grade point",
    also: "grading pad level area yard bank bund mound terrace bench",
    group: "works",
  },
  {
    name: "note",
    label: "Note",
    key: "N",
    what: "write words on the plan",
    also: "text comment label words write",
    group: "words",
  },
  {
    name: "dimension",
    label: "Dimension",
    key: "I",
    what: "dimension between two places",
    also: "length distance measure size",
    group: "words",
  },
  {
    name: "section",
    label: "Section line",
    key: "X",
    what: "draw where the ground is cut and seen from the side",
    also: "cross section profile cut through side view elevation",
    group: "words",
  },
];
