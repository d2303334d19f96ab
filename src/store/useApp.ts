/** Reads one part of the store in a component. Select narrowly; a selector that builds an object needs `useShallow`. */
import { useStore } from "zustand";
import type { AppState } from "./state";
import { appStore } from "./store";

export function useApp<T>(selector: (state: AppState) => T): T {
  return useStore(appStore, selector);
}
