import { useEffect, useRef } from "react";
import type { Shot } from "../../document";
import { useApp } from "../../store/useApp";

/** Follows a shot that was selected elsewhere (on the plan, from a problem) to its row. */
export function useFollowSelection(
  shots: readonly Shot[],
  row: number,
  onFound: (row: number) => void,
): void {
  const selected = useApp(({ selection }) =>
    selection.length === 1 && selection[0]?.kind === "shot" ? selection[0].id : null,
  );
  const latest = useRef({ shots, row, onFound });
  latest.current = { shots, row, onFound };
  useEffect(() => {
    if (selected === null) return;
    const { shots: present, row: here, onFound: found } = latest.current;
    const index = present.findIndex(({ id }) => id === selected);
    if (index >= 0 && index !== here) found(index);
  }, [selected]);
}
