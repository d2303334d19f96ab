/** What a picture's first bytes say about it: its format and its size, before anything is unpacked. */
import { says, uint16, uint32 } from "./bytes";
import { jpegSegments } from "./jpeg";

export interface PictureHeader {
  readonly media: "image/png" | "image/jpeg" | "image/webp";
  /** As stored, px; a turn that the file asks for is not applied. */
  readonly width: number;
  readonly height: number;
}

/**
 * Format and size of a PNG, JPEG or WebP file; null for anything else, or where the header is cut off.
 * Sources: PNG specification (W3C) 11.2.2 IHDR; ITU-T T.81 B.2.2 frame header; RFC 9649 (WebP) 2.5 to 2.7 and RFC 6386 9.1.
 */
export function readHeader(bytes: Uint8Array): PictureHeader | null {
  const size = pngSize(bytes) ?? jpegSize(bytes) ?? webpSize(bytes);
  return size && size.width > 0 && size.height > 0 ? size : null;
}

function pngSize(bytes: Uint8Array): PictureHeader | null {
  if (!says(bytes, 0, "\x89PNG\r\n\x1a\n") || !says(bytes, 12, "IHDR")) return null;
  return header("image/png", uint32(bytes, 16, "big"), uint32(bytes, 20, "big"));
}

function jpegSize(bytes: Uint8Array): PictureHeader | null {
  // Frame headers SOF0 to SOF15, less the markers among them that mean something else (DHT, JPG, DAC).
  const frame = jpegSegments(bytes).find(
    ({ marker }) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker),
  );
  if (!frame) return null;
  return header("image/jpeg", uint16(bytes, frame.at + 3, "big"), uint16(bytes, frame.at + 1, "big"));
}

function webpSize(bytes: Uint8Array): PictureHeader | null {
  if (!says(bytes, 0, "RIFF") || !says(bytes, 8, "WEBP")) return null;
  const low = (at: number) => uint16(bytes, at, "little");
  if (says(bytes, 12, "VP8X")) return header("image/webp", plusOne(bytes, 24), plusOne(bytes, 27));
  if (says(bytes, 12, "VP8 ")) return header("image/webp", fourteen(low(26)), fourteen(low(28)));
  if (!says(bytes, 12, "VP8L")) return null;
  const packed = uint32(bytes, 21, "little");
  if (packed === null) return null;
  return header("image/webp", (packed & 0x3fff) + 1, ((packed >>> 14) & 0x3fff) + 1);
}

function header(
  media: PictureHeader["media"],
  width: number | null,
  height: number | null,
): PictureHeader | null {
  return width === null || height === null ? null : { media, width, height };
}

const fourteen = (value: number | null): number | null => (value === null ? null : value & 0x3fff);

/** Three bytes, little end first, that hold the size less one. */
function plusOne(bytes: Uint8Array, at: number): number | null {
  const low = uint16(bytes, at, "little");
  const high = bytes[at + 2];
  return low === null || high === undefined ? null : 1 + low + high * 65536;
}
