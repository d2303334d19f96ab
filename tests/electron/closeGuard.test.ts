import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { CloseGuard } from "../../electron/closeGuard";

let asked: number;
let personAsked: number;
let personSays: (close: boolean) => void;
let closed: boolean[];
let guard: CloseGuard;

beforeEach(() => {
  vi.useFakeTimers();
  asked = 0;
  personAsked = 0;
  closed = [];
  guard = new CloseGuard({
    askPage: () => asked++,
    askPerson: () => {
      personAsked++;
      return new Promise((resolve) => {
        personSays = resolve;
      });
    },
    close: (agreed) => closed.push(agreed),
    patience: 4000,
  });
});
afterEach(() => vi.useRealTimers());

const person = async (close: boolean) => {
  personSays(close);
  await vi.advanceTimersByTimeAsync(0);
};

describe("a page that answers", () => {
  it("closes when it agrees", () => {
    guard.wanted();
    guard.heard();
    guard.answered(true);
    expect(closed).toEqual([true]);
  });

  it("stays when it doesn't, and is asked again the next time", () => {
    guard.wanted();
    guard.heard();
    guard.answered(false);
    expect(closed).toEqual([]);
    guard.wanted();
    expect(asked).toBe(2);
  });

  it("may take as long as the person thinks, once it has heard", async () => {
    guard.wanted();
    guard.heard();
    await vi.advanceTimersByTimeAsync(600_000);
    expect(personAsked).toBe(0);
    guard.answered(true);
    expect(closed).toEqual([true]);
  });

  it("answers before it is asked in vain", () => {
    guard.answered(true);
    expect(closed).toEqual([]);
  });
});

describe("a page that hangs", () => {
  beforeEach(() => guard.wanted());

  it("leaves it to the person after the patience, who may close", async () => {
    await vi.advanceTimersByTimeAsync(3999);
    expect(personAsked).toBe(0);
    await vi.advanceTimersByTimeAsync(1);
    expect(personAsked).toBe(1);
    await person(true);
    expect(closed).toEqual([false]);
  });

  it("may still answer after the person chose to wait", async () => {
    await vi.advanceTimersByTimeAsync(4000);
    await person(false);
    expect(closed).toEqual([]);
    guard.answered(true);
    expect(closed).toEqual([true]);
  });

  it("lets the person ask once more", async () => {
    await vi.advanceTimersByTimeAsync(4000);
    await person(false);
    guard.wanted();
    expect(personAsked).toBe(2);
    await person(true);
    expect(closed).toEqual([false]);
  });
});

describe("a page that has heard but owes its answer", () => {
  it("leaves it to the person when closing is wanted once more", async () => {
    guard.wanted();
    guard.heard();
    guard.wanted();
    expect(personAsked).toBe(1);
    await person(true);
    expect(closed).toEqual([false]);
  });

  it("is not asked twice while the first question is out", () => {
    guard.wanted();
    guard.wanted();
    expect(asked).toBe(1);
    expect(personAsked).toBe(0);
  });
});

describe("a page that fails", () => {
  it("at its own question leaves it to the person at once", async () => {
    guard.wanted();
    guard.heard();
    guard.failed();
    expect(personAsked).toBe(1);
    await person(true);
    expect(closed).toEqual([false]);
  });

  it("and is replaced starts afresh", async () => {
    guard.wanted();
    guard.pageLost();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(personAsked).toBe(0);
    guard.wanted();
    expect(asked).toBe(2);
  });
});
