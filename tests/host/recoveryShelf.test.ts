import { describe, expect, it } from "vitest";
import { recoveryShelf, type ShelfStore, type UnsavedWork } from "../../src/host/recoveryShelf";

const work = (name: string, when: number, more: Partial<UnsavedWork> = {}): UnsavedWork => ({
  name,
  text: `text of ${name} at ${when}`,
  place: null,
  when,
  ...more,
});

function memoryStore(kept: Record<string, unknown> = {}) {
  const records = new Map(Object.entries(kept));
  const writes: string[] = [];
  const store: ShelfStore = {
    orphans: async () => [...records.keys()],
    read: async (key) => records.get(key) ?? null,
    write: async (key, value) => {
      writes.push(value.text);
      await Promise.resolve();
      records.set(key, value);
    },
    remove: async (key) => void records.delete(key),
  };
  return { store, records, writes };
}

describe("the recovery shelf", () => {
  it("finds nothing on an empty shelf, nor what it keeps itself", async () => {
    const { store } = memoryStore();
    const shelf = recoveryShelf(store, "own");
    expect(await shelf.found()).toBeNull();
    await shelf.keep(work("studio", 1));
    expect(await shelf.found()).toBeNull();
  });

  it("finds the newest of what earlier sessions left", async () => {
    const { store } = memoryStore({ a: work("a", 1), b: work("b", 3), c: work("c", 2) });
    expect(await recoveryShelf(store, "own").found()).toEqual(work("b", 3));
  });

  it.each([
    [null],
    ["text"],
    [{}],
    [{ name: "x", text: 1, place: null, when: 1 }],
    [{ ...work("x", 1), when: "1" }],
  ])("passes over a damaged note: %j", async (damaged) => {
    const { store } = memoryStore({ a: damaged });
    expect(await recoveryShelf(store, "own").found()).toBeNull();
  });

  it("forgets its own and what was found once that is saved or given up", async () => {
    const { store, records } = memoryStore({ a: work("a", 1), b: work("b", 2) });
    const shelf = recoveryShelf(store, "own");
    await shelf.keep(work("now", 3));
    await shelf.found();
    await shelf.keep(null);
    expect([...records.keys()]).toEqual(["a"]);
  });

  it("does not forget what it hasn't handed over yet", async () => {
    const { store, records } = memoryStore({ a: work("a", 1) });
    const shelf = recoveryShelf(store, "own");
    await shelf.keep(null);
    expect([...records.keys()]).toEqual(["a"]);
    const found = shelf.found();
    const forgotten = shelf.keep(null);
    expect(await found).toEqual(work("a", 1));
    await forgotten;
    expect([...records.keys()]).toEqual(["a"]);
  });

  it("drops what was found once newer work of the same file is kept, but not for another file", async () => {
    const { store, records } = memoryStore({ a: work("studio", 1, { place: "p" }) });
    const shelf = recoveryShelf(store, "own");
    await shelf.found();
    await shelf.keep(work("shed", 2));
    expect([...records.keys()].sort()).toEqual(["a", "own"]);
    await shelf.keep(work("studio", 3, { place: "p" }));
    expect([...records.keys()]).toEqual(["own"]);
  });

  it("gives up what was found even when newer work follows at once", async () => {
    const { store, records } = memoryStore({ a: work("a", 1) });
    const shelf = recoveryShelf(store, "own");
    await shelf.found();
    void shelf.keep(null);
    await shelf.keep(work("other", 2));
    expect([...records.keys()]).toEqual(["own"]);
  });

  it("writes only the last of several notes handed in at once", async () => {
    const { store, records, writes } = memoryStore();
    const shelf = recoveryShelf(store, "own");
    await Promise.all([1, 2, 3, 4].map((when) => shelf.keep(work("studio", when))));
    expect(writes).toEqual(["text of studio at 4"]);
    expect(records.get("own")).toEqual(work("studio", 4));
  });

  it("goes on after a note that couldn't be written", async () => {
    const { store, records } = memoryStore();
    let full = true;
    const write: ShelfStore["write"] = (key, value) =>
      full ? Promise.reject(new Error("no room")) : store.write(key, value);
    const shelf = recoveryShelf({ ...store, write }, "own");
    await expect(shelf.keep(work("studio", 1))).rejects.toThrow("no room");
    full = false;
    await shelf.keep(work("studio", 2));
    expect(records.get("own")).toEqual(work("studio", 2));
  });
});
