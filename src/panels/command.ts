/** An act of the person, once: the menu, the keys, the finder, the header and the native menu all read the same list. */
import type { AppState } from "../store/state";

export const menuPlaces = ["Plan", "Edit", "Arrange", "View", "Draw", "Steps", "Help"] as const;
export type MenuPlace = (typeof menuPlaces)[number];

export interface AppCommand {
  readonly id: string;
  readonly name: string;
  readonly place: MenuPlace;
  /** Shortcuts such as "Mod+K", "Shift+Mod+Z" or "F"; Mod is Ctrl, or Cmd on a Mac. */
  readonly keys?: readonly string[];
  /** Other words a person might look for. */
  readonly also?: string;
  /** A part of another item (one kind of a tool's): the finder lists it, the menus don't. */
  readonly finderOnly?: boolean;
  /** Why it makes no sense now, in words; null where it does. Left out: it always does. */
  readonly whyNot?: (state: AppState) => string | null;
  readonly run: () => void;
}

export type RunCommand = (id: string) => void;

export function canRun(command: AppCommand, state: AppState): boolean {
  return (command.whyNot?.(state) ?? null) === null;
}
