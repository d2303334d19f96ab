/** The tools of the plan: their names and keys, for the tool strip, the menu and the finder. */
import type { ToolName } from "../../store/state";

export interface ToolEntry {
  readonly name: ToolName;
  readonly label: string;
  /** Plain key that picks the tool. */
  readonly key: string;
  /** What it is for, in a few words. */
  readonly what: string;
}

export const planTools: readonly ToolEntry[] = [
  { name: "select", label: "Select", key: "V", what: "select, move, turn and pull things on the plan" },
  { name: "shot", label: "Shot", key: "S", what: "place the shots of the level book" },
  { name: "mark", label: "Mark", key: "M", what: "place the reference mark" },
  { name: "lot", label: "Lot", key: "L", what: "draw the lot's lines" },
  { name: "building", label: "Building", key: "B", what: "draw the building" },
  { name: "door", label: "Door", key: "D", what: "put a door on a wall" },
  { name: "drive", label: "Drive", key: "R", what: "draw the drive from the road to the door" },
  { name: "swale", label: "Swale", key: "W", what: "draw a swale from its high end to its outlet" },
];
