import { describe, expect, it } from "vitest";

import { flowUnit, formatRate, rainUnit, speedUnit } from "../../src/units";

describe("rain and flows in the plan's units", () => {
  it("are inches an hour and cubic feet a second, or millimetres an hour and litres a second", () => {
    expect(formatRate(3 * rainUnit(true).factor, rainUnit(true))).toBe("3.00 in/h");
    expect(formatRate(85 / 3.6e6, rainUnit(false))).toBe("85.0 mm/h");
    expect(formatRate(0.0283168, flowUnit(true))).toBe("1.00 ft³/s");
    expect(formatRate(0.1234, flowUnit(false))).toBe("123 l/s");
    expect(formatRate(1.2192, speedUnit(true))).toBe("4.00 ft/s");
  });
});
