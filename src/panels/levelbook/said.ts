/** What the level book says of an act that shows little: below the table, and to a screen reader. */
import { createStore } from "zustand/vanilla";

export const saidStore = createStore<{ readonly said: string }>(() => ({ said: "" }));

export function say(said: string): void {
  saidStore.setState({ said });
}
