/** Whether a picture's file is all there, before anything relies on unpacking it. */
import { says, uint32 } from "./bytes";
import { readHeader } from "./header";

/**
 * A PNG whose chunks follow each other to the last with their check sums right, or a JPEG that ends as one does.
 * Others count as whole where their header can be read.
 *
 * Sources: PNG specification (W3C) 5.3 chunk layout and 5.5 CRC; ITU-T T.81 B.1.1.3 end of image.
 */
export function isWhole(bytes: Uint8Array): boolean {
  const header = readHeader(bytes);
  if (!header) return false;
  if (header.media === "image/png") return chunksAreWhole(bytes);
  return header.media !== "image/jpeg" || endsAsJpeg(bytes);
}

/** Cameras may write padding behind the end mark; it lies near the end all the same. */
const mostPadding = 4096;

function endsAsJpeg(bytes: Uint8Array): boolean {
  const from = Math.max(0, bytes.length - mostPadding);
  for (let i = bytes.length - 2; i >= from; i--) if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
}

function chunksAreWhole(bytes: Uint8Array): boolean {
  const signature = 8;
  for (let at = signature; at < bytes.length; ) {
    const length = uint32(bytes, at, "big");
    if (length === null) return false;
    const end = at + 8 + length;
    if (uint32(bytes, end, "big") !== checkSum(bytes, at + 4, end)) return false;
    if (says(bytes, at + 4, "IEND")) return true;
    at = end + 4;
  }
  return false;
}

/** CRC-32 with the polynomial of ISO 3309. */
function checkSum(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0xffffffff;
  for (let i = from; i < to; i++) sum = (table[(sum ^ (bytes[i] ?? 0)) & 255] as number) ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  return sum;
});
