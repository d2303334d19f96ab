import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fittedSize, pictureLimits, readHeader } from "../../src/underlay";
import { jpegBytes, pngBytes, riff, tiffBlock, webpBytes } from "./pictures";

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const side = fc.integer({ min: 1, max: 16_383 });

describe("format and size from the first bytes", () => {
  it("of any size, with and without EXIF before them", () => {
    fc.assert(
      fc.property(side, side, fc.boolean(), (width, height, turned) => {
        const exif = turned ? tiffBlock(8, "big") : undefined;
        expect(readHeader(jpegBytes(width, height, exif))).toEqual({ media: "image/jpeg", width, height });
        expect(readHeader(pngBytes(width, height, exif))).toEqual({ media: "image/png", width, height });
        expect(readHeader(webpBytes(width, height, exif))).toEqual({ media: "image/webp", width, height });
      }),
    );
  });

  it("of a simple lossy WebP: RFC 6386 9.1, two times fourteen bits", () => {
    const frame = [0x30, 1, 0, 0x9d, 0x01, 0x2a, 0x40, 0x41, 0xf0, 0x00];
    const bytes = riff([...letters("VP8 "), 10, 0, 0, 0, ...frame]);
    expect(readHeader(bytes)).toEqual({ media: "image/webp", width: 320, height: 240 });
  });

  it("of a simple lossless WebP: two times fourteen bits, less one", () => {
    const packed = 319 | (239 << 14);
    const bits = [0, 8, 16, 24].map((shift) => (packed >>> shift) & 255);
    const bytes = riff([...letters("VP8L"), 5, 0, 0, 0, 0x2f, ...bits]);
    expect(readHeader(bytes)).toEqual({ media: "image/webp", width: 320, height: 240 });
  });

  it("of nothing else: other files, cut headers, no size", () => {
    for (const bytes of [
      Uint8Array.from(letters("%PDF-1.7")),
      Uint8Array.from(letters("GIF89a")),
      new Uint8Array(0),
      pngBytes(8, 4).subarray(0, 20),
      jpegBytes(8, 4).subarray(0, 30),
      webpBytes(8, 4).subarray(0, 26),
      pngBytes(0, 4),
    ])
      expect(readHeader(bytes)).toBeNull();
  });
});

describe("the size that is kept", () => {
  it("is the picture's own while it fits", () =>
    expect(fittedSize(4096, 3000)).toEqual({ width: 4096, height: 3000 }));

  it("is the same shape with its longest side at the limit", () => {
    expect(fittedSize(8192, 4000)).toEqual({ width: 4096, height: 2000 });
    expect(fittedSize(3000, 12_288)).toEqual({ width: 1000, height: 4096 });
    expect(fittedSize(90_000, 2)).toEqual({ width: pictureLimits.side, height: 1 });
  });
});
