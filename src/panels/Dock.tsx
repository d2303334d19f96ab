/**
 * The part below the plan; its height follows the hand, and is remembered for each of its contents. A tool that opens
 * another content leaves the height as it is: the plan must not change under the pointer.
 */
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { useStore } from "zustand";
import { useApp } from "../store/useApp";
import { type DockKind, roomFor } from "./dockRoom";
import { IconAction } from "./fields/Choice";
import { Icon } from "./icons";
import { bookRequests } from "./survey/bookRequest";
import { useStepsAbove } from "./useStepsAbove";
import { capital } from "./words";

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
/** Head, sentence, plan with what is said below it, steps above: these keep at least this much, of which a part grows with the words. */
const keeps = { still: 200, words: 215, steps: 36 } as const;

export interface DockProps {
  readonly kind: DockKind;
  readonly label: string;
  readonly children: ReactNode;
}

export function Dock({ kind, label, children }: DockProps) {
  const dock = useRef<HTMLElement>(null);
  const { height, folded, most, resize, fold, reset } = useDockRoom(dock, kind);
  const grip = useRef<{ readonly y: number; readonly height: number } | null>(null);
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    grip.current = { y: event.clientY, height: dock.current?.clientHeight ?? height };
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
      ref={dock}
      className={folded ? "dock dock-folded" : "dock"}
      data-tour="dock"
      style={folded ? undefined : { height: `min(${height}px, ${most.css})` }}
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
        aria-valuemax={most.px()}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={letGo}
        onPointerCancel={letGo}
        onKeyDown={onKeyDown}
        onDoubleClick={reset}
      />
      {folded ? (
        <button type="button" className="dock-title" aria-expanded={false} onClick={() => fold(false)}>
          <Icon name="right" />
          {capital(label)}
        </button>
      ) : (
        <>
          {children}
          <div className="dock-fold">
            <IconAction icon="down" label={`Fold the ${label} away`} onPress={() => fold(true)} />
          </div>
        </>
      )}
    </section>
  );
}

/** What the hand has made of it holds; else the plan keeps its share, and the dock has the rest or folds to its title. */
function useDockRoom(dock: RefObject<HTMLElement | null>, kind: DockKind) {
  const [heights, setHeights] = useState(() => each(read));
  const [folds, setFolds] = useState(() => each(readFold));
  const textSize = useApp((state) => state.preferences.textSize);
  const above = useStepsAbove();
  const both = useRoomOfBoth(dock);
  const roomOf = (of: DockKind) =>
    heights[of] ??
    roomFor({ kind: of, usual: grown(of, textSize), both, windowHeight: window.innerHeight, textSize });
  const shownOf = (of: DockKind): Shown => {
    const room = roomOf(of);
    return { height: room ?? grown(of, textSize), folded: folds[of] ?? room === null };
  };
  const [kept, keep] = useKept(kind, shownOf);
  const { height, folded } = kept ?? shownOf(kind);
  const words = keeps.words + (above ? keeps.steps : 0);
  const most = {
    px: () => Math.max(least, window.innerHeight - keeps.still - words * textSize),
    css: `calc(100vh - ${keeps.still}px - ${words}px * var(--text))`,
  };
  const put = (px: number | null, isFolded: boolean | null) => {
    keep(null);
    setHeights({ ...heights, [kind]: px });
    setFolds({ ...folds, [kind]: isFolded });
    remember(keyOf(kind), px === null ? null : String(px));
    remember(foldKeyOf(kind), isFolded === null ? null : String(isFolded));
  };
  // Whoever is asked to type in the level book must see it.
  const isAsked = useStore(bookRequests, ({ asked }) => asked !== null) && kind === "levelbook";
  useEffect(() => {
    if (!isAsked) return;
    keep(null);
    setFolds((before) => ({ ...before, levelbook: false }));
  }, [isAsked, keep]);
  return {
    height,
    folded,
    most,
    resize: (px: number) => put(Math.round(Math.min(most.px(), Math.max(least, px))), false),
    fold: (isFolded: boolean) => put(heights[kind], isFolded),
    reset: () => put(null, null),
  };
}

const each = <T,>(of: (kind: DockKind) => T): Readonly<Record<DockKind, T>> => ({
  section: of("section"),
  levelbook: of("levelbook"),
  elevations: of("elevations"),
  profile: of("profile"),
});

/** Height of plan and dock together, px: what one of them gains the other loses. */
function useRoomOfBoth(dock: RefObject<HTMLElement | null>): number | null {
  const [both, setBoth] = useState<number | null>(null);
  useLayoutEffect(() => {
    const section = dock.current;
    const plan = section?.parentElement?.querySelector(".plan-cell");
    if (!section || !plan || typeof ResizeObserver === "undefined") return;
    const measure = () =>
      setBoth(Math.round(section.getBoundingClientRect().bottom - plan.getBoundingClientRect().top));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(plan);
    return () => observer.disconnect();
  }, [dock]);
  return both;
}

interface Shown {
  readonly height: number;
  readonly folded: boolean;
}

/** What was there when a tool brought another content; null where the content has its own. */
function useKept(kind: DockKind, shownOf: (kind: DockKind) => Shown) {
  const tool = useApp((state) => state.tool);
  const [kept, keep] = useState<Shown | null>(null);
  const [before, setBefore] = useState({ kind, tool });
  if (before.kind !== kind || before.tool !== tool) {
    setBefore({ kind, tool });
    const byTool = before.tool !== tool && tool !== "select";
    if (before.kind !== kind) keep(byTool ? (kept ?? shownOf(before.kind)) : null);
  }
  return [kept, keep] as const;
}

const keyOf = (kind: DockKind) => `drysill.dock.${kind}`;
const foldKeyOf = (kind: DockKind) => `drysill.dock.${kind}.folded`;

/** What the hand has made it; null: as usual. */
function read(kind: DockKind): number | null {
  const px = Number(remembered(keyOf(kind)));
  return Number.isFinite(px) && px >= least ? px : null;
}

/** Folded or opened by hand; null: as there is room. */
function readFold(kind: DockKind): boolean | null {
  const word = remembered(foldKeyOf(kind));
  return word === null ? null : word === "true";
}

function remembered(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function remember(key: string, word: string | null): void {
  try {
    if (word === null) localStorage.removeItem(key);
    else localStorage.setItem(key, word);
  } catch {
    // It holds for this window.
  }
}
