/** What was typed into the level book and not understood: it stays in its cell until it is mended or taken back. */
import { createStore } from "zustand/vanilla";

export interface Draft {
  readonly text: string;
  readonly why: string;
}

type Drafts = ReadonlyMap<string, Draft>;

export const draftStore = createStore<{ readonly drafts: Drafts }>(() => ({ drafts: new Map() }));

export function draftKey(shot: string, column: string): string {
  return `${shot} ${column}`;
}

export function keepDraft(key: string, draft: Draft): void {
  draftStore.setState(({ drafts }) => ({ drafts: new Map(drafts).set(key, draft) }));
}

export function dropDraft(key: string): void {
  if (!draftStore.getState().drafts.has(key)) return;
  draftStore.setState(({ drafts }) => ({ drafts: new Map([...drafts].filter(([other]) => other !== key)) }));
}

export function clearDrafts(): void {
  draftStore.setState({ drafts: new Map() });
}
