/**
 * The part below the plan; its height follows the hand, and is remembered for each of its contents. A tool that opens
 * another content leaves the height as it is: the plan must not change under the pointer.
 */
import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef, useState } from "react";
import { useApp } from "../store/useApp";

export type DockKind = "section" | "levelbook" | "elevations" | "profile";

const usual: Readonly<Record<DockKind, number>> = {
  // On a low screen the plan needs the room more.
  section: Math.min(240, Math.max(150, Math.round(window.innerHeight / 5))),
  levelbook: 300,
  elevations: Math.min(260, Math.max(170, Math.round(window.innerHeight / 4))),
  profile: Math.min(240, Math.max(150, Math.round(window.innerHeight / 5))),
};
/** A section or a profile that nobody has pulled keeps some of its drawing beside larger words. */
const grown = (kind: DockKind, textSize: number) =>
  Math.round(usual[kind] * (kind === "levelbook" ? 1 : (1 + textSize) / 2));
const least = 96;
/** Head, sentence, plan with what is said below it: these keep at least this much, of which a part grows with the words. */
const keeps = { still: 200, words: 215 } as const;

export interface DockProps {
  readonly kind: DockKind;
  readonly label: string;
  readonly children: ReactNode;
}

export function Dock({ kind, label, children }: DockProps) {
  const [heights, setHeights] = useState(() => ({
    section: read("section"),
    levelbook: read("levelbook"),
    elevations: read("elevations"),
    profile: read("profile"),
  }));
  const grip = useRef<{ readonly y: number; readonly height: number } | null>(null);
  const textSize = useApp((state) => state.preferences.textSize);
  const heightOf = (each: DockKind) => heights[each] ?? grown(each, textSize);
  const [kept, keep] = useKeptHeight(kind, heightOf);
  const height = kept ?? heightOf(kind);
  const most = () => Math.max(least, window.innerHeight - keeps.still - keeps.words * textSize);
  const resize = (px: number) => {
    const next = Math.round(Math.min(most(), Math.max(least, px)));
    keep(null);
    setHeights({ ...heights, [kind]: next });
    remember(kind, next);
  };
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    grip.current = { y: event.clientY, height };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onPointerMove = (event: PointerEvent) => {
    if (grip.current) resize(grip.current.height + grip.current.y - event.clientY);
  };
  const letGo = () => {
    grip.current = null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === "ArrowUp" ? 16 : event.key === "ArrowDown" ? -16 : 0;
    if (by === 0) return;
    event.preventDefault();
    resize(height + by);
  };
  return (
    <section
      className="dock"
      data-tour="dock"
      style={{ height: `min(${height}px, calc(100vh - ${keeps.still}px - ${keeps.words}px * var(--text)))` }}
      aria-label={`Below the plan: ${label}`}
    >
      {/* biome-ignore lint/a11y/useSemanticElements: a splitter that moves is not a rule */}
      <div
        className="dock-grip"
        role="separator"
        tabIndex={0}
        aria-orientation="horizontal"
        aria-label={`Height of the ${label}`}
        aria-valuenow={height}
        aria-valuemin={least}
        aria-valuemax={most()}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={letGo}
        onPointerCancel={letGo}
        onKeyDown={onKeyDown}
        onDoubleClick={() => resize(grown(kind, textSize))}
      />
      {children}
    </section>
  );
}

/** The height that was there when a tool brought another content; null where the content has its own. */
function useKeptHeight(kind: DockKind, heightOf: (kind: DockKind) => number) {
  const tool = useApp((state) => state.tool);
  const [kept, keep] = useState<number | null>(null);
  const [before, setBefore] = useState({ kind, tool });
  if (before.kind !== kind || before.tool !== tool) {
    setBefore({ kind, tool });
    const byTool = before.tool !== tool && tool !== "select";
    if (before.kind !== kind) keep(byTool ? (kept ?? heightOf(before.kind)) : null);
  }
  return [kept, keep] as const;
}

const keyOf = (kind: DockKind) => `drysill.dock.${kind}`;

/** What the hand has made it; null: as usual. */
function read(kind: DockKind): number | null {
  try {
    const px = Number(localStorage.getItem(keyOf(kind)));
    return Number.isFinite(px) && px >= least ? px : null;
  } catch {
    return null;
  }
}

function remember(kind: DockKind, px: number): void {
  try {
    localStorage.setItem(keyOf(kind), String(px));
  } catch {
    // The height holds for this window.
  }
}
