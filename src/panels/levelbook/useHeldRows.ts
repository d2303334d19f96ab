import { useLayoutEffect, useRef } from "react";
import { type Cursor, followed } from "./cursor";

/** Keeps cursor and block with their rows when these get another order; `ids` as they are seen, null for a new row. */
export function useHeldRows(
  ids: readonly (string | null)[],
  cursor: Cursor,
  onMoved: (next: Cursor, before: readonly (string | null)[]) => void,
): void {
  const before = useRef(ids);
  useLayoutEffect(() => {
    const old = before.current;
    before.current = ids;
    if (old === ids || old.length === 0) return;
    const next = followed(cursor, old, ids);
    if (next !== cursor) onMoved(next, old);
  });
}
