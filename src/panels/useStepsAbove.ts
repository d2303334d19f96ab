/** Whether the steps stand above the plan in one row: a window that is narrow for its words needs its width for the plan. */
import { useSyncExternalStore } from "react";
import { useApp } from "../store/useApp";

/** Steps, rod and panel beside the plan leave it half of a window of this width, px for words of usual size. */
const enough = 1240;

export function useStepsAbove(): boolean {
  const textSize = useApp(({ preferences }) => preferences.textSize);
  const width = useSyncExternalStore(
    (changed) => {
      window.addEventListener("resize", changed);
      return () => window.removeEventListener("resize", changed);
    },
    () => window.innerWidth,
  );
  return width < enough * textSize;
}
