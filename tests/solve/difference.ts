/** Where two results first differ, byte by byte for arrays of numbers; null where they are the same. */
export function difference(a: unknown, b: unknown, path = "results"): string | null {
  if (Object.is(a, b)) return null;
  if (ArrayBuffer.isView(a) && ArrayBuffer.isView(b)) return sameBytes(a, b) ? null : path;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return path;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  for (const key of keys) {
    const found = difference(
      (a as Record<string, unknown>)[key],
      (b as Record<string, unknown>)[key],
      `${path}.${key}`,
    );
    if (found) return found;
  }
  return null;
}

function sameBytes(a: ArrayBufferView, b: ArrayBufferView): boolean {
  const bytes = (view: ArrayBufferView) => Buffer.from(view.buffer, view.byteOffset, view.byteLength);
  return a.constructor === b.constructor && bytes(a).equals(bytes(b));
}
