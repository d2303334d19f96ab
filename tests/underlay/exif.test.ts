/** EXIF 2.3, tag 0x0112, read from bytes that are built here by the book. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  exifOrientation,
  type Orientation,
  uprightMatrix,
  uprightSize,
  withoutOrientation,
} from "../../src/underlay";
import { jpegBytes, pngBytes, tiffBlock, webpBytes } from "./pictures";

const all: Orientation[] = [1, 2, 3, 4, 5, 6, 7, 8];

describe("the orientation a file asks for", () => {
  it.each(all)("%i is read in both byte orders and all three formats", (orientation) => {
    for (const order of ["big", "little"] as const) {
      const exif = tiffBlock(orientation, order);
      for (const bytes of [jpegBytes(8, 4, exif), pngBytes(8, 4, exif), webpBytes(8, 4, exif)])
        expect(exifOrientation(bytes)).toBe(orientation);
    }
  });

  it("is as stored where nothing is said", () => {
    for (const bytes of [jpegBytes(8, 4), pngBytes(8, 4), webpBytes(8, 4), new Uint8Array(0)])
      expect(exifOrientation(bytes)).toBe(1);
  });

  it.each([0, 9, 65535])("a value of %i means nothing", (value) =>
    expect(exifOrientation(jpegBytes(8, 4, tiffBlock(value, "big")))).toBe(1),
  );

  it("never fails on bytes cut short or spoilt", () => {
    const whole = jpegBytes(8, 4, tiffBlock(6, "little"));
    for (let length = 0; length < whole.length; length++)
      expect([1, 6]).toContain(exifOrientation(whole.subarray(0, length)));
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, value) => {
        const spoilt = whole.slice();
        spoilt[at] = value;
        expect(all).toContain(exifOrientation(spoilt));
      }),
    );
  });
});

describe("taking the wish out", () => {
  it.each(["big", "little"] as const)("leaves a file that asks for nothing (%s end first)", (order) => {
    const exif = tiffBlock(6, order);
    for (const bytes of [jpegBytes(8, 4, exif), pngBytes(8, 4, exif), webpBytes(8, 4, exif)]) {
      const before = bytes.slice();
      expect(exifOrientation(withoutOrientation(bytes))).toBe(1);
      expect(bytes).toEqual(before);
    }
  });

  it("takes a PNG's whole chunk, since a check sum guards it", () =>
    expect(withoutOrientation(pngBytes(8, 4, tiffBlock(3, "big")))).toEqual(pngBytes(8, 4)));

  it("hands back the very bytes where nothing is asked", () => {
    const bytes = jpegBytes(8, 4);
    expect(withoutOrientation(bytes)).toBe(bytes);
  });
});

describe("standing it upright", () => {
  const [width, height] = [40, 30];
  const toUpright = (orientation: Orientation, x: number, y: number) => {
    const [a, b, c, d, e, f] = uprightMatrix(orientation, width, height);
    return [a * x + c * y + e, b * x + d * y + f];
  };

  // EXIF 2.3, table of tag 0x0112: where the stored 0th row and 0th column lie in the upright picture.
  const table: [Orientation, row: string, column: string][] = [
    [1, "top", "left"],
    [2, "top", "right"],
    [3, "bottom", "right"],
    [4, "bottom", "left"],
    [5, "left", "top"],
    [6, "right", "top"],
    [7, "right", "bottom"],
    [8, "left", "bottom"],
  ];

  it.each(table)(
    "%i: the first row is the %s side, the first column the %s side",
    (orientation, row, column) => {
      const upright = uprightSize(orientation, width, height);
      const isOn = (side: string, [x, y]: number[]) =>
        ({ top: y === 0, bottom: y === upright.height, left: x === 0, right: x === upright.width })[side];
      for (const along of [0, 0.25, 1]) {
        expect(isOn(row, toUpright(orientation, along * width, 0))).toBe(true);
        expect(isOn(column, toUpright(orientation, 0, along * height))).toBe(true);
      }
    },
  );
});
