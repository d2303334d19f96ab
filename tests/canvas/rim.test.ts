/** A plan moves in from its rim under a pointer that draws, the faster the nearer; and what is drawn is told while it is. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { rimOf, textOnScreen } from "../../src/canvas/scene/written";
import { drawnPlaces } from "../../src/canvas/stage/drawnPlaces";
import { Rim, rimSpeed } from "../../src/canvas/stage/rim";
import { ringWords } from "../../src/canvas/tools/liveMarks";
import { toScreen } from "../../src/canvas/view/view";
import type { Point } from "../../src/document";
import { handOn, view as handView, metricProject } from "./support/hand";

const view = { width: 800, height: 600 };

describe("the plan's rim", () => {
  it("moves nothing away from it", () => {
    expect(rimSpeed([400, 300], view)).toEqual([0, 0]);
    expect(rimSpeed([12, 588], view)).toEqual([0, 0]);
  });

  it("brings in what lies beyond the side that the pointer is near", () => {
    expect(rimSpeed([0, 300], view)[0]).toBeGreaterThan(0);
    expect(rimSpeed([800, 300], view)[0]).toBeLessThan(0);
    expect(rimSpeed([400, 2], view)[1]).toBeGreaterThan(0);
    expect(rimSpeed([400, 598], view)[1]).toBeLessThan(0);
  });

  it("is quicker nearer to it, and no quicker beyond", () => {
    const at = (x: number) => rimSpeed([x, 300], view)[0];
    expect(at(2)).toBeGreaterThan(at(8));
    expect(at(-50)).toBe(at(0));
  });
});

describe("a pointer that rests near the rim while a tool draws", () => {
  let frames: FrameRequestCallback[] = [];
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["performance"] });
    vi.stubGlobal("requestAnimationFrame", (frame: FrameRequestCallback) => frames.push(frame));
    vi.stubGlobal("cancelAnimationFrame", () => {
      frames = [];
    });
  });
  afterEach(() => {
    frames = [];
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  /** How far the plan comes in while the pointer rests there for a second, px. */
  function comesIn(at: readonly [number, number], holds = false): number {
    let moved = 0;
    const rim = new Rim({
      view: () => ({ ...handView, width: 800, height: 600 }),
      draws: () => true,
      holds: () => holds,
      pan: (dx, dy) => {
        moved += Math.hypot(dx, dy);
      },
      moved: () => undefined,
    });
    rim.at(at);
    for (let frame = 0; frame < 60; frame++) {
      vi.advanceTimersByTime(1000 / 60);
      for (const step of frames.splice(0)) step(performance.now());
    }
    rim.leave();
    return moved;
  }

  it("brings in what lies beyond it", () => {
    expect(comesIn([400, 4])).toBeGreaterThan(100);
  });

  it("leaves the plan where it is on a corner as near to the rim as a plan shown whole has them", () => {
    expect(comesIn([783, 17])).toBe(0);
  });

  it("leaves it also nearer, where a thing of the plan is held, but for the outermost pixels", () => {
    expect(comesIn([400, 8], true)).toBe(0);
    expect(comesIn([400, 8])).toBeGreaterThan(0);
    expect(comesIn([400, 1], true)).toBeGreaterThan(100);
  });
});

describe("a lot that is being drawn", () => {
  it("tells its area and the way round it", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.click(40, 0);
    hand.move(40, 30);
    expect(hand.texts().slice(-2)).toEqual(["6,458 ft²", "120.000 m round"]);
  });

  it("tells them also while the pointer rests on the corner that was just set", () => {
    const hand = handOn(metricProject(), "lot");
    hand.click(0, 0);
    hand.click(40, 0);
    hand.click(40, 30);
    expect(hand.texts().slice(-2)).toEqual(["6,458 ft²", "120.000 m round"]);
  });

  it("tells no area while its sides cross", () => {
    const crossing: Point[] = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ];
    expect(ringWords(crossing, metricProject(), handView)).toEqual([]);
  });

  it("writes both where no side runs through them, the closing one neither, however the plan is turned", () => {
    for (const [size, angle] of [
      [1, 0],
      [2, 0.5],
      [2, -1.2],
    ] as const) {
      const ring: Point[] = [
        [0, 0],
        [40 * size, 0],
        [40 * size, 20 * size],
        [30 * size, 4 * size],
      ];
      const seen = { ...handView, angle };
      const corners = ring.map((at) => toScreen(seen, at));
      const words = ringWords(ring, metricProject(), seen);
      expect(words).toHaveLength(2);
      for (const { left, right, top, bottom } of words.map((mark) => rimOf(textOnScreen(mark, seen))))
        for (const [i, a] of corners.entries()) {
          const b = corners[(i + 1) % corners.length] ?? a;
          const along = Array.from({ length: 2001 }, (_, k) => k / 2000);
          const within = along.some((t) => {
            const [x, y] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
            return x > left && x < right && y > top && y < bottom;
          });
          expect(within, `side ${i}, turned ${angle}`).toBe(false);
        }
    }
  });

  it("is part of what the view can be fitted to", () => {
    const places = drawnPlaces({
      name: "next",
      hint: "",
      cursor: "default",
      marks: [{ kind: "line", points: [0, 0, 90, 5], style: "preview" }],
      cancel: () => "leave",
      lost() {
        return this as never;
      },
    });
    expect(places).toEqual([
      [0, 0],
      [90, 5],
    ]);
  });
});
