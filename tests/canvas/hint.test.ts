import { describe, expect, it } from "vitest";
import { hintOf } from "../../src/canvas/stage/toolRun";

describe("the line below the plan", () => {
  const state = { hint: "Click one end of a distance" };

  it("says what the tool's next click does", () => {
    expect(hintOf({ state, question: null })).toBe(state.hint);
  });

  it("says to type the length while one is asked for, not to click on", () => {
    const answer = () => ({ ok: false, why: "" }) as const;
    const question = { at: [0, 0], label: "how long it is on the ground", m: 1, answer } as const;
    const hint = hintOf({ state, question: { ...question, at: [0, 0] } });
    expect(hint).toBe(
      "Type the length asked for (how long it is on the ground), then Enter; Esc leaves it as it is",
    );
  });
});
