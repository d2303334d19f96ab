import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, it } from "vitest";

const assets = resolve(import.meta.dirname, "../../assets");

/** Width and height of a PNG. Source: W3C, PNG specification, 11.2.2 (IHDR: the first chunk, from byte 16). */
function pngSize(path: string): { width: number; height: number } {
  const bytes = readFileSync(path);
  expect(bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}

it.each([16, 24, 32, 48, 64, 128, 256, 512])("the program's sign is there at %i pixels", (size) => {
  expect(pngSize(`${assets}/icons/icon-${size}.png`)).toEqual({ width: size, height: size });
});
