import { describe, expect, it } from "vitest";
import { parseMoney } from "../../src/panels/cost/money";

describe("a typed price", () => {
  it.each([
    ["42.50", 42.5],
    ["42,50", 42.5],
    ["1,200", 1200],
    ["12,345.60", 12345.6],
    ["1 200", 1200],
    ["$25", 25],
    ["25 €", 25],
  ])("%s is %d", (text, amount) => {
    expect(parseMoney(text)).toBe(amount);
  });

  it.each(["", "a lot", "1.2.3", "12,34,5"])("%j is none", (text) => {
    expect(parseMoney(text)).toBeNaN();
  });
});
