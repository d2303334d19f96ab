/** Data that came over from another thread is all new objects: what says the same as before is handed back as those of before. */

/** `now`, with every part that says the same as in `before` as that very object. Plain data only. */
export function withSameData<T>(before: unknown, now: T): T {
  if (Object.is(before, now) || typeof now !== "object" || now === null) return now;
  if (typeof before !== "object" || before === null) return now;
  if (Array.isArray(now)) return Array.isArray(before) ? sharedList(before, now) : now;
  return Array.isArray(before) ? now : (sharedFields(before as Fields, now as Fields) as T);
}

type Fields = Record<string, unknown>;

function sharedList<T>(before: readonly unknown[], now: T): T {
  const list = now as readonly unknown[];
  const shared = list.map((item, i) => withSameData(before[i], item));
  const same = before.length === list.length && shared.every((item, i) => Object.is(item, before[i]));
  return (same ? before : shared) as T;
}

function sharedFields(before: Fields, now: Fields): Fields {
  const keys = Object.keys(now);
  const shared = Object.fromEntries(keys.map((key) => [key, withSameData(before[key], now[key])]));
  const same =
    keys.length === Object.keys(before).length && keys.every((key) => Object.is(shared[key], before[key]));
  return same ? before : shared;
}
