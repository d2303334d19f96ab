import type { RecoveredWork, UnsavedText } from "./host";
import { type KeptRecords, keptRecords } from "./keptRecords";
import { recoveryShelf, type ShelfStore, type UnsavedWork } from "./recoveryShelf";

const lockName = (key: string) => `drysill-session-${key}`;

/** The text lies in the browser's own store, not in the page: that of a million shots is large. */
interface BlobWork extends Omit<UnsavedWork, "text"> {
  readonly text: Blob;
}

/** The recovery journal of a browser page. Each page keeps under its own key and holds a lock while it lives. */
export function browserRecovery() {
  const ownKey = crypto.randomUUID();
  void navigator.locks.request(lockName(ownKey), () => new Promise<never>(() => undefined));
  const shelf = recoveryShelf(sessionStore(keptRecords("unsaved")), ownKey);
  return {
    keep(work: UnsavedText | null): void {
      const kept = work && { name: work.name, text: work.text, place: work.token, when: Date.now() };
      shelf.keep(kept).catch((error: unknown) => console.error("Unsaved work could not be noted:", error));
    },
    async found(): Promise<RecoveredWork | null> {
      const work = await shelf.found().catch(() => null);
      return work && { name: work.name, text: work.text, token: work.place, when: work.when };
    },
  };
}

/** Work of a page that is still open elsewhere is not an orphan. */
function sessionStore(records: KeptRecords): ShelfStore<BlobWork> {
  return {
    async orphans() {
      const { held = [] } = await navigator.locks.query();
      const living = new Set(held.map((lock) => lock.name));
      return (await records.keys()).filter((key) => !living.has(lockName(key)));
    },
    read: async (key) => withText(await records.read(key)),
    write: (key, work) => records.write(key, work),
    remove: (key) => records.remove(key),
  };
}

async function withText(work: unknown): Promise<unknown> {
  if (typeof work !== "object" || work === null || !("text" in work)) return work;
  return work.text instanceof Blob ? { ...work, text: await work.text.text() } : work;
}
