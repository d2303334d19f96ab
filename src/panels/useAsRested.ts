/** What stays still while the floor is under the hand: rows neither come, go nor change places. */
import { useRef } from "react";
import { useApp } from "../store/useApp";

/** `value` as it was when the floor was last at rest; `value` itself while it is. */
export function useAsRested<T>(value: T): T {
  const resting = useApp((state) => state.floorDrag === null);
  const rested = useRef(value);
  if (resting) rested.current = value;
  return rested.current;
}
