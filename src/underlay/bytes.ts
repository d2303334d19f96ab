/** Reading numbers out of a file's bytes; places beyond the end read as null. */
export type ByteOrder = "big" | "little";

export function uint16(bytes: Uint8Array, at: number, order: ByteOrder): number | null {
  const [a, b] = [bytes[at], bytes[at + 1]];
  if (a === undefined || b === undefined) return null;
  return order === "big" ? a * 256 + b : b * 256 + a;
}

export function uint32(bytes: Uint8Array, at: number, order: ByteOrder): number | null {
  const [first, second] = [uint16(bytes, at, order), uint16(bytes, at + 2, order)];
  if (first === null || second === null) return null;
  return order === "big" ? first * 65536 + second : second * 65536 + first;
}

/** Do these plain characters stand at the place? */
export function says(bytes: Uint8Array, at: number, text: string): boolean {
  for (let i = 0; i < text.length; i++) if (bytes[at + i] !== text.charCodeAt(i)) return false;
  return true;
}
