/** Unsaved work, kept so that a crash loses little. Where it is kept is the store's business. */
export interface UnsavedWork {
  readonly name: string;
  readonly text: string;
  /** The file it belongs to, as the host names it; null for a plan never saved. */
  readonly place: string | null;
  /** Milliseconds since 1970. */
  readonly when: number;
}

/** A session may keep its work in a form of its own, as long as it is read as text. */
type Kept = Pick<UnsavedWork, "name" | "place" | "when">;

export interface ShelfStore<Work extends Kept = UnsavedWork> {
  /** Keys of what is kept and no running session owns. */
  orphans(): Promise<readonly string[]>;
  /** What is kept under the key, unchecked; null where it can't be read. */
  read(key: string): Promise<unknown>;
  /** All or nothing. */
  write(key: string, work: Work): Promise<void>;
  remove(key: string): Promise<void>;
}

export interface RecoveryShelf<Work extends Kept = UnsavedWork> {
  /** Keeps the newest unsaved work; null forgets it, and what `found` handed over with it. */
  keep(work: Work | null): Promise<void>;
  /** The newest work that an earlier session left behind, or null. */
  found(): Promise<UnsavedWork | null>;
}

/**
 * The shelf of one session, which keeps under its own key. Acts run one after another; of several works handed
 * in while one is being written only the last is written. Work found is removed once it is saved or given up
 * (`keep(null)`), or once this page keeps newer work of the same file; other orphans stay for the next time.
 */
export function recoveryShelf<Work extends Kept = UnsavedWork>(
  store: ShelfStore<Work>,
  ownKey: string,
): RecoveryShelf<Work> {
  let handedOver: Found | null = null;
  let givenUp: Found | null = null;
  let newest: Work | null = null;
  let last: Promise<unknown> = Promise.resolve();
  let waiting: Promise<void> | null = null;

  const inTurn = <T>(act: () => Promise<T>): Promise<T> => {
    const turn = last.then(act);
    last = turn.catch(() => undefined);
    return turn;
  };

  const remove = async (found: Found) => {
    await store.remove(found.key);
    if (handedOver === found) handedOver = null;
  };

  const keepNewest = async () => {
    waiting = null;
    const work = newest;
    // The text of a million shots isn't held for longer than it takes to write it.
    newest = null;
    if (work) await store.write(ownKey, work);
    else await store.remove(ownKey);
    if (givenUp) await remove(givenUp);
    givenUp = null;
    if (work && handedOver && sameFile(work, handedOver.work)) await remove(handedOver);
  };

  return {
    keep(work) {
      newest = work;
      if (work === null) givenUp = handedOver;
      waiting ??= inTurn(keepNewest);
      return waiting;
    },
    found: () =>
      inTurn(async () => {
        handedOver = await newestOrphan(store, ownKey);
        return handedOver?.work ?? null;
      }),
  };
}

interface Found {
  readonly key: string;
  readonly work: UnsavedWork;
}

const sameFile = (a: Kept, b: Kept) => a.name === b.name && a.place === b.place;

async function newestOrphan(
  store: Pick<ShelfStore, "orphans" | "read">,
  ownKey: string,
): Promise<Found | null> {
  let best: Found | null = null;
  for (const key of await store.orphans()) {
    if (key === ownKey) continue;
    const work = asUnsavedWork(await store.read(key));
    if (work && (best === null || work.when > best.work.when)) best = { key, work };
  }
  return best;
}

function asUnsavedWork(value: unknown): UnsavedWork | null {
  if (typeof value !== "object" || value === null) return null;
  const { name, text, place, when } = value as Record<string, unknown>;
  if (typeof name !== "string" || typeof text !== "string" || typeof when !== "number") return null;
  if (place !== null && typeof place !== "string") return null;
  return { name, text, place, when };
}
