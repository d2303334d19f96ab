import { describe, expect, it } from "vitest";
import { answers } from "../../src/solve/answers";
import { createSolver } from "../../src/solve/pipeline";
import { wordsFor } from "../../src/solve/words";
import { demoProject } from "../support/demo";
import { plane, shed, site } from "./sites";

const answered = (project: ReturnType<typeof site>) => {
  const results = createSolver().solve(project);
  const words = wordsFor(project.display);
  const all = answers(project, results, words);
  return { results, words, all, of: (id: string) => all.find((answer) => answer.id === id) };
};

describe("what people ask", () => {
  it.each(["pottery-studio", "joinery-shed", "open-hillside", "potting-barn"])(
    "%s: every answer is whole, in the plan's own notation",
    (demo) => {
      const { all } = answered(demoProject(demo));
      expect(all.length).toBeGreaterThanOrEqual(14);
      for (const answer of all) {
        const text = Object.values(answer).join(" ");
        expect(text).not.toMatch(/NaN|undefined|null|Infinity|\[object/);
        expect(answer.answer).not.toBe("");
        expect(answer.change).not.toBe("");
      }
      expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    },
  );

  it("says what the results hold: the band, the fill, the fall, the bottom of the trench", () => {
    const { results, words, of } = answered(site({ surface: plane(100, 0, 0.01) }));
    expect(of("how-high")?.answer).toContain(words.length(results.band.low as number));
    expect(of("ground-fall")?.answer).toBe(
      `${words.length(0.08)}, ${words.slope(0.08 / Math.hypot(12, 8))} from corner to corner`,
    );
    const fill = results.bill.find(({ id }) => id === "fill");
    expect(of("how-much-fill")?.answer).toContain(words.volume(fill?.quantity ?? 0));
    const lowest = Math.min(...results.trench.map(({ bottom }) => bottom));
    expect(of("digger")?.answer).toContain(words.length(100 - lowest));
  });

  it("an empty band: no height, the two that clash, and how far apart", () => {
    const { results, words, of } = answered(
      site({ surface: plane(100, 0, 0.125), building: { ...shed, foundation: { kind: "crawl-space" } } }),
    );
    expect(of("how-high")).toMatchObject({
      answer: "no height keeps every limit",
      margin: `${words.length(results.band.clash?.gap ?? 0)} apart`,
    });
  });

  it("posts are asked about where there are posts, cost where something is priced", () => {
    const posts = answered(site({ building: { ...shed, foundation: { kind: "posts" } } }));
    expect(posts.of("posts")).toBeDefined();
    expect(posts.of("cost")).toBeUndefined();
    expect(answered(site({ rest: { prices: { slab: 100 } } })).of("cost")).toBeDefined();
  });

  it("nothing is answered without a building", () => {
    expect(answered(site({ building: null })).all).toEqual([]);
  });
});
