/** Headers of picture files, put together from their specifications; there is no picture data behind them. */
import { crc32 } from "node:zlib";

type Order = "big" | "little";

function number(value: number, bytes: 1 | 2 | 3 | 4, order: Order): number[] {
  const big = Array.from({ length: bytes }, (_, i) => (value >>> (8 * (bytes - 1 - i))) & 255);
  return order === "big" ? big : big.reverse();
}

const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

/** A TIFF structure with one directory of three entries, of which the second is the orientation. */
export function tiffBlock(orientation: number, order: Order): number[] {
  const [two, four] = [(n: number) => number(n, 2, order), (n: number) => number(n, 4, order)];
  const entry = (tag: number, value: number) => [...two(tag), ...two(3), ...four(1), ...two(value), 0, 0];
  return [
    ...letters(order === "big" ? "MM" : "II"),
    ...two(42),
    ...four(8),
    ...two(3),
    ...entry(0x0103, 6),
    ...entry(0x0112, orientation),
    ...entry(0x0128, 2),
    ...four(0),
  ];
}

export function jpegBytes(width: number, height: number, exif?: readonly number[]): Uint8Array<ArrayBuffer> {
  const segment = (marker: number, data: readonly number[]) => [
    0xff,
    marker,
    ...number(data.length + 2, 2, "big"),
    ...data,
  ];
  return Uint8Array.from([
    0xff,
    0xd8,
    ...segment(0xe0, [...letters("JFIF\0"), 1, 2, 0, 0, 1, 0, 1, 0, 0]),
    ...(exif ? segment(0xe1, [...letters("Exif\0\0"), ...exif]) : []),
    0xff, // a fill byte
    // A table that is no frame header, although its marker lies among theirs.
    ...segment(0xc4, [0, 1, 2, 3, 4, 5]),
    ...segment(0xc2, [8, ...number(height, 2, "big"), ...number(width, 2, "big"), 3]),
    0xff,
    0xda,
  ]);
}

export function pngBytes(width: number, height: number, exif?: readonly number[]): Uint8Array<ArrayBuffer> {
  const chunk = (name: string, data: readonly number[]) => {
    const body = [...letters(name), ...data];
    return [...number(data.length, 4, "big"), ...body, ...number(crc32(Uint8Array.from(body)), 4, "big")];
  };
  return Uint8Array.from([
    ...letters("\x89PNG\r\n\x1a\n"),
    ...chunk("IHDR", [...number(width, 4, "big"), ...number(height, 4, "big"), 8, 2, 0, 0, 0]),
    ...(exif ? chunk("eXIf", exif) : []),
    ...chunk("IEND", []),
  ]);
}

/** The extended kind, which alone can hold EXIF. */
export function webpBytes(width: number, height: number, exif?: readonly number[]): Uint8Array<ArrayBuffer> {
  const chunk = (name: string, data: readonly number[]) => [
    ...letters(name),
    ...number(data.length, 4, "little"),
    ...data,
    ...(data.length % 2 ? [0] : []),
  ];
  return riff([
    ...chunk("VP8X", [8, 0, 0, 0, ...number(width - 1, 3, "little"), ...number(height - 1, 3, "little")]),
    ...chunk("ICCP", [1, 2, 3]),
    ...(exif ? chunk("EXIF", exif) : []),
  ]);
}

export function riff(chunks: readonly number[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from([
    ...letters("RIFF"),
    ...number(chunks.length + 4, 4, "little"),
    ...letters("WEBP"),
    ...chunks,
  ]);
}
