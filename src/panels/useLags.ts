/** Whether a part of the window still shows what was before the present move. */
import { useStore } from "zustand";
import { calmStore } from "../store/calmStore";
import { appStore } from "../store/store";
import { useApp } from "../store/useApp";

/** What a part is worked out from: the layout alone, or the floor's height too. */
export type Follows = "layout" | "floor";

/** Undefined: it never lags. What follows the layout alone isn't old while only the floor is dragged. */
export function useLags(follows: Follows | undefined): boolean {
  return useApp(({ results, floorDrag }) => {
    if (follows === undefined || !results.lagging) return false;
    return follows === "floor" || floorDrag === null;
  });
}

/** All panels wait until the hand rests: a plan of very many shots is being dragged. */
export function usePanelsWait(): boolean {
  const behind = useApp((state) => state !== calmStore.getState());
  const stillBehind = useStore(calmStore, (calm) => calm !== appStore.getState());
  return behind && stillBehind;
}
