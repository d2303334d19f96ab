/** An act of the person, once: the menu, the keys, the finder, the header and the native menu all read the same list. */
import type { AppState } from "../store/state";

export const menuPlaces = ["Plan", "Edit", "View", "Draw", "Steps", "Help"] as const;
export type MenuPlace = (typeof menuPlaces)[number];

export interface AppCommand {
  readonly id: string;
  readonly name: string;
  readonly place: MenuPlace;
  /** Shortcuts such as "Mod+K", "Shift+Mod+Z" or "F"; Mod is Ctrl, or Cmd on a Mac. */
  readonly keys?: readonly string[];
  /** Other words a person might look for. */
  readonly also?: string;
  readonly enabled?: (state: AppState) => boolean;
  readonly run: () => void;
}

export type RunCommand = (id: string) => void;
