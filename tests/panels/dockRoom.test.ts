/** What stands below the plan gives way to it: it shrinks, and folds where too little of it would be left. */
import { describe, expect, it } from "vitest";
import { roomFor } from "../../src/panels/dockRoom";

const usual = { kind: "section", usual: 160, windowHeight: 800, textSize: 1 } as const;

describe("the room of the part below the plan", () => {
  it("is the usual one while the plan keeps its share", () => {
    expect(roomFor({ ...usual, both: 680 })).toBe(160);
    expect(roomFor({ ...usual, both: null })).toBe(160);
  });

  it("shrinks before the plan does", () => {
    // 45 % of 800 px, and two lines with their rim below it.
    expect(roomFor({ ...usual, both: 550 })).toBe(550 - 360 - 48);
  });

  it("is only a title where less than something useful would be left", () => {
    expect(roomFor({ ...usual, both: 360 + 48 + 96 })).toBe(96);
    expect(roomFor({ ...usual, both: 360 + 48 + 95 })).toBeNull();
    expect(roomFor({ ...usual, both: 558, usual: 200, textSize: 1.5 })).toBeNull();
  });

  it("leaves a level book more than a drawing", () => {
    const book = { ...usual, kind: "levelbook", usual: 300 } as const;
    expect(roomFor({ ...book, both: 680 })).toBe(300);
    expect(roomFor({ ...book, both: 600 })).toBe(600 - 320 - 48);
  });
});
