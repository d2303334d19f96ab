import type { Host } from "./host";

/** What the Electron preload puts on the page's window: the host itself, answered by the main process. */
export type Bridge = Omit<Host, "kind" | "keepUnsaved"> & {
  keepUnsaved(work: { name: string; text: string; token: string | null } | null): void;
};

/** Its name there. */
export const bridgeName = "drysill";

/** The largest things that cross the bridge. A million shots take some 210 million characters in a plan's file. */
export const limits = {
  textCharacters: 400_000_000,
  exportBytes: 200_000_000,
  /** A picture or PDF file to put under the plan. */
  pictureBytes: 80_000_000,
  nameCharacters: 200,
  /** Commands that the page offers to the native menu. */
  commands: 400,
} as const;
