import { describe, expect, it } from "vitest";
import { glossary, guideSteps, guides, searchTerms, termOf, wordsOf } from "../../src/help";
import { textsOf } from "../../src/help/guides";
import { linksIn } from "../../src/help/words";
import { stepNames } from "../../src/store/state";

describe("the words of the trade", () => {
  it("are many, each with a meaning of its own, none twice", () => {
    expect(glossary.length).toBeGreaterThanOrEqual(60);
    const names = glossary
      .flatMap(({ name, also = [] }) => [name, ...also])
      .map((name) => name.toLowerCase());
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect(new Set(glossary.map(({ meaning }) => meaning)).size).toBe(glossary.length);
    for (const { name, meaning } of glossary) {
      expect(meaning, name).toMatch(/^[A-Z].{20,}[.?]$/s);
      expect(meaning.length, name).toBeLessThan(320);
    }
  });

  it("stand by the alphabet", () => {
    const names = glossary.map(({ name }) => name);
    expect(names).toEqual([...names].sort());
  });

  it("link only to words that are there", () => {
    const broken = glossary.flatMap(({ name, meaning }) =>
      linksIn(meaning)
        .filter((link) => termOf(link) === null)
        .map((link) => `${name}: ${link}`),
    );
    expect(broken).toEqual([]);
  });

  it("are found by name, by another name, and by what they mean, in that order", () => {
    expect(searchTerms("swal")[0]?.name).toBe("swale");
    expect(searchTerms("Bulking")[0]?.name).toBe("swell");
    expect(searchTerms("caves").map(({ name }) => name)).toEqual([]);
    expect(searchTerms("can cave")[0]?.name).toBe("trench");
    const fill = searchTerms("fill").map(({ name }) => name);
    expect(fill[0]).toBe("fill");
    expect(fill.indexOf("backfill")).toBeLessThan(fill.indexOf("bench"));
    expect(searchTerms("  ")).toBe(glossary);
    expect(searchTerms("zeppelin")).toEqual([]);
  });
});

describe("the guides", () => {
  it("are there for each step of the window", () => {
    expect([...guideSteps]).toEqual([...stepNames]);
  });

  it.each(stepNames)("%s: says what to do, what to watch, what goes wrong and where it hurts", (step) => {
    const guide = guides[step];
    expect(guide.doing.length).toBeGreaterThanOrEqual(3);
    expect(guide.watch.length).toBeGreaterThanOrEqual(2);
    expect(guide.slips.length).toBeGreaterThanOrEqual(2);
    expect(guide.cautions.length).toBeGreaterThanOrEqual(1);
    for (const text of textsOf(guide)) expect(text).toMatch(/^[A-Z“[].*[.?]$/s);
  });

  it.each(stepNames)("%s: links only to words that are in the glossary", (step) => {
    const broken = textsOf(guides[step]).flatMap((text) =>
      linksIn(text).filter((link) => termOf(link) === null),
    );
    expect(broken).toEqual([]);
  });

  it("explain many words by a link", () => {
    const linked = new Set(guideSteps.flatMap((step) => textsOf(guides[step]).flatMap(linksIn)));
    expect(linked.size).toBeGreaterThanOrEqual(25);
  });
});

describe("text with links", () => {
  it("is cut into words and terms", () => {
    const words = wordsOf("Read [[the mark|benchmark]], then [[rod]].");
    expect(words.map(({ text, term }) => [text, term?.name ?? null])).toEqual([
      ["Read ", null],
      ["the mark", "benchmark"],
      [", then ", null],
      ["rod", "rod"],
      [".", null],
    ]);
  });

  it("keeps the words of a link that leads nowhere", () => {
    expect(wordsOf("a [[gnomon]]")).toEqual([
      { text: "a ", term: null },
      { text: "gnomon", term: null },
    ]);
  });
});
