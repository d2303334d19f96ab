/** Words beside the thing in hand: they lie on nothing that the plan writes, while there is such a place. */
import { afterEach, describe, expect, it } from "vitest";
import { rimOf, textOnScreen, writtenBy } from "../../src/canvas/scene/written";
import { clearOfWords } from "../../src/canvas/stage/interactionMarks";
import { floating, isFloating } from "../../src/canvas/tools/liveMarks";
import type { View } from "../../src/canvas/view/view";
import type { TextMark } from "../../src/drawing/marks";

const view: View = { centre: [0, 0], scale: 20, angle: 0, width: 800, height: 600 };
const size = (at: readonly [number, number]): TextMark => ({
  kind: "text",
  at,
  text: "32′ × 24′",
  style: "building-label",
  anchor: "middle",
});

const meet = (a: TextMark, b: TextMark) => {
  const [one, two] = [a, b].map((mark) => rimOf(textOnScreen(mark, view)));
  return (
    !!one &&
    !!two &&
    one.left < two.right &&
    two.left < one.right &&
    one.top < two.bottom &&
    two.top < one.bottom
  );
};

describe("words beside the thing in hand", () => {
  afterEach(() => writtenBy(() => []));

  it("stay where they are while nothing is written there", () => {
    const words = floating([0, 0], "moved 12′ 0″");
    writtenBy(() => [size([-15, 0])]);
    expect(clearOfWords(words, view)).toBe(words);
  });

  it("go to another side of it, off the building's size", () => {
    for (const at of [
      [1.5, 1.2],
      [2, 0.8],
      [0.5, 1],
    ] as const) {
      const words = floating([0, 0], "moved 12′ 0″");
      const label = size(at);
      expect(meet(words, label)).toBe(true);
      writtenBy(() => [label]);
      const moved = clearOfWords(words, view);
      expect(moved.at).toEqual([0, 0]);
      expect(meet(moved, label)).toBe(false);
    }
  });

  it("are told from figures along a piece, which stay at it", () => {
    expect(isFloating(floating([0, 0], "moved 1 m"))).toBe(true);
    expect(isFloating({ ...floating([0, 0], "1 m"), angle: 0.2, anchor: "middle" })).toBe(false);
  });
});
