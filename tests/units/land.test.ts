/** A lot's area as land is sold. An acre is 43,560 square feet, a hectare 10,000 square metres. */
import { expect, it } from "vitest";
import { formatLand } from "../../src/units";

it("a lot is told in acres or hectares", () => {
  const squareFoot = 0.3048 ** 2;
  expect(formatLand(43560 * squareFoot, "ft2")).toBe("1.000 acres");
  expect(formatLand(12146 * squareFoot, "ft2")).toBe("0.279 acres");
  expect(formatLand(12500, "m2")).toBe("1.250 ha");
});
