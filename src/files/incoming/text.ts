/** Bytes of a file → text, or what kind of file they are. */

/** The largest file that is read, bytes: more wouldn't fit beside its points in 1.5 GB. */
export const largestFile = 256 * 1024 * 1024;

/** Why a file of this size isn't read, or null. Ask before reading it. */
export function tooLarge(file: string, bytes: number): string | null {
  if (bytes <= largestFile) return null;
  const size = bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${Math.round(bytes / 1e6)} MB`;
  return `${file} is ${size}; at most ${Math.round(largestFile / 1e6)} MB can be read. Cut it to the lot, or thin it, and try again.`;
}

/** UTF-8, or UTF-16 with its byte-order mark, or the old Western code page that some programs still write. */
export function textOf(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Is this no text at all? A zero byte is in none. */
export function isBinary(bytes: Uint8Array): boolean {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return false;
  return bytes.subarray(0, 1024).includes(0);
}

/** Something found in a file, short enough for a message. */
export function shown(text: string): string {
  if (text === "") return "nothing";
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}
