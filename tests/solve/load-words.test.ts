import { describe, expect, it } from "vitest";

import { loadsText } from "../../src/solve/load-words";

describe("loads", () => {
  it("of less than a truck are told as a part load, many with separators", () => {
    expect(loadsText(1, 2.3, 9)).toBe("less than one load");
    expect(loadsText(1, 9, 9)).toBe("1 load");
    expect(loadsText(3, 25, 9)).toBe("3 loads");
    expect(loadsText(12345, 111_105, 9)).toBe("12,345 loads");
  });
});
