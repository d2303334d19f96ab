/** The marker segments of a JPEG file before its picture data (ITU-T T.81 B.1). */
import { uint16 } from "./bytes";

export interface JpegSegment {
  readonly marker: number;
  /** First byte of what it holds, after its length. */
  readonly at: number;
  /** Bytes that it holds. */
  readonly length: number;
}

const startOfScan = 0xda;
const endOfImage = 0xd9;

/** Segments in their order, up to the picture data or the first fault; none where the bytes are no JPEG. */
export function jpegSegments(bytes: Uint8Array): JpegSegment[] {
  const segments: JpegSegment[] = [];
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return segments;
  let at = 2;
  while (bytes[at] === 0xff) {
    // Any number of fill bytes may stand before a marker.
    while (bytes[at + 1] === 0xff) at++;
    const marker = bytes[at + 1];
    const length = uint16(bytes, at + 2, "big");
    if (marker === undefined || marker === startOfScan || marker === endOfImage) break;
    if (length === null || length < 2) break;
    segments.push({ marker, at: at + 4, length: length - 2 });
    at += 2 + length;
  }
  return segments;
}
