/**
 * The turn that a camera wrote beside a picture: it stores the picture as its sensor lay, and says in the orientation
 * tag how the picture is to be turned or mirrored to stand upright.
 * Source: EXIF 2.3 (CIPA DC-008), tag 0x0112 of the first directory, and its TIFF 6.0 structure.
 */
import { says, uint16, uint32 } from "./bytes";
import { jpegSegments } from "./jpeg";

/**
 * Where the stored first row and first column are in the upright picture: 1 top, left; 2 top, right; 3 bottom, right;
 * 4 bottom, left; 5 left, top; 6 right, top; 7 right, bottom; 8 left, bottom.
 */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const orientationTag = 0x0112;
const shortType = 3;

/** The orientation that a JPEG, PNG or WebP file asks for; 1 (as stored) where it says nothing that can be read. */
export function exifOrientation(bytes: Uint8Array): Orientation {
  const found = findValue(bytes);
  return found?.value ?? 1;
}

/**
 * The same file without its wish to be turned, so that whoever unpacks it gets the stored rows: an unpacker may or
 * may not heed the tag. The bytes themselves where there is nothing to take out. The input is never changed.
 */
export function withoutOrientation(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const found = findValue(bytes);
  if (!found || found.value === 1) return bytes;
  const { pngChunk } = found;
  if (pngChunk) return withoutPiece(bytes, pngChunk.from, pngChunk.to);
  const plain = bytes.slice();
  plain[found.at] = found.order === "big" ? 0 : 1;
  plain[found.at + 1] = found.order === "big" ? 1 : 0;
  return plain;
}

/** Size of the upright picture, px: orientations 5 to 8 lay the stored picture on its side. */
export function uprightSize(orientation: Orientation, width: number, height: number) {
  return orientation >= 5 ? { width: height, height: width } : { width, height };
}

type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/**
 * From places of the stored picture (px, y down, of the stored width and height) to the upright one:
 * x' = a x + c y + e, y' = b x + d y + f.
 */
export function uprightMatrix(orientation: Orientation, width: number, height: number): Matrix {
  const matrices: Readonly<Record<Orientation, Matrix>> = {
    1: [1, 0, 0, 1, 0, 0],
    2: [-1, 0, 0, 1, width, 0],
    3: [-1, 0, 0, -1, width, height],
    4: [1, 0, 0, -1, 0, height],
    5: [0, 1, 1, 0, 0, 0],
    6: [0, 1, -1, 0, height, 0],
    7: [0, -1, -1, 0, height, width],
    8: [0, -1, 1, 0, 0, width],
  };
  return matrices[orientation];
}

interface Block {
  /** First byte of the TIFF structure, and the byte after its last. */
  readonly at: number;
  readonly end: number;
  /** The whole chunk, in a PNG: its bytes are guarded by a check sum. */
  readonly pngChunk?: { readonly from: number; readonly to: number };
}

interface Found extends Pick<Block, "pngChunk"> {
  readonly value: Orientation;
  readonly at: number;
  readonly order: "big" | "little";
}

function findValue(bytes: Uint8Array): Found | null {
  const block = jpegBlock(bytes) ?? webpBlock(bytes) ?? pngBlock(bytes);
  return block && tagOf(bytes, block);
}

function jpegBlock(bytes: Uint8Array): Block | null {
  const segment = jpegSegments(bytes).find(
    ({ marker, at }) => marker === 0xe1 && says(bytes, at, "Exif\0\0"),
  );
  return segment ? { at: segment.at + 6, end: segment.at + segment.length } : null;
}

function webpBlock(bytes: Uint8Array): Block | null {
  if (!says(bytes, 0, "RIFF") || !says(bytes, 8, "WEBP")) return null;
  let at = 12;
  for (;;) {
    const length = uint32(bytes, at + 4, "little");
    if (length === null) return null;
    const start = at + 8;
    if (says(bytes, at, "EXIF")) {
      // Some writers keep the JPEG segment's heading.
      const tiff = says(bytes, start, "Exif\0\0") ? start + 6 : start;
      return { at: tiff, end: start + length };
    }
    at = start + length + (length % 2);
  }
}

function pngBlock(bytes: Uint8Array): Block | null {
  if (!says(bytes, 0, "\x89PNG\r\n\x1a\n")) return null;
  let at = 8;
  for (;;) {
    const length = uint32(bytes, at, "big");
    if (length === null) return null;
    const to = at + 12 + length;
    if (says(bytes, at + 4, "eXIf")) return { at: at + 8, end: to - 4, pngChunk: { from: at, to } };
    at = to;
  }
}

/** The orientation tag in the first directory of a TIFF structure. */
function tagOf(bytes: Uint8Array, { at, end, pngChunk }: Block): Found | null {
  const order = says(bytes, at, "II") ? "little" : says(bytes, at, "MM") ? "big" : null;
  if (!order || uint16(bytes, at + 2, order) !== 42) return null;
  const directory = at + (uint32(bytes, at + 4, order) ?? Number.POSITIVE_INFINITY);
  const count = uint16(bytes, directory, order) ?? 0;
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + i * 12;
    if (entry + 12 > Math.min(end, bytes.length)) return null;
    if (uint16(bytes, entry, order) !== orientationTag) continue;
    const value = uint16(bytes, entry + 8, order);
    const sound = uint16(bytes, entry + 2, order) === shortType && value !== null && value >= 1 && value <= 8;
    return sound
      ? { value: value as Orientation, at: entry + 8, order, ...(pngChunk ? { pngChunk } : {}) }
      : null;
  }
  return null;
}

function withoutPiece(bytes: Uint8Array, from: number, to: number): Uint8Array<ArrayBuffer> {
  const rest = new Uint8Array(bytes.length - (to - from));
  rest.set(bytes.subarray(0, from));
  rest.set(bytes.subarray(to), from);
  return rest;
}
