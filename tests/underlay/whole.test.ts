import { describe, expect, it } from "vitest";
import { isWhole } from "../../src/underlay";
import { pngBytes } from "./pictures";

describe("a picture's file", () => {
  const png = pngBytes(40, 30);

  it("is whole with every chunk as its check sum says", () => {
    expect(isWhole(png)).toBe(true);
  });

  it.each(Array.from({ length: png.length - 12 }, (_, i) => [i + 12]))("isn't with byte %d changed", (at) => {
    const changed = png.slice();
    changed[at] = (changed[at] ?? 0) ^ 1;
    expect(isWhole(changed)).toBe(false);
  });

  it("isn't when it is cut off", () => {
    for (let end = 0; end < png.length; end++) expect(isWhole(png.slice(0, end))).toBe(false);
  });

  it("is a whole JPEG only with its end mark", () => {
    const head = [0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 2, 0, 3, 1, 1, 0x11, 0, 0xff, 0xda, 0, 2];
    expect(isWhole(Uint8Array.from([...head, 1, 2, 0xff, 0xd9]))).toBe(true);
    expect(isWhole(Uint8Array.from([...head, 1, 2]))).toBe(false);
  });
});
