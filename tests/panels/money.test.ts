import { describe, expect, it } from "vitest";
import { parseMoney } from "../../src/panels/cost/money";
import { formatMoney } from "../../src/units";

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

describe("an amount of money", () => {
  it("is whole above a thousand, thousands apart as the plan's volumes write them", () => {
    expect(formatMoney(12_345.6, "yd3")).toBe("12,346");
    expect(formatMoney(12_345.6, "m3")).toBe("12\u202f346");
    expect(formatMoney(999.5, "yd3")).toBe("999.50");
    expect(formatMoney(-1_200, "yd3")).toBe("\u22121,200");
  });
});
