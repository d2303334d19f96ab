/**
 * What is worked out once for an object that never changes (a project's list of shots, settled results), however often
 * views ask: a frame of a drag may not walk a million shots.
 */
export function oncePer<Key extends object, Answer>(work: (key: Key) => Answer): (key: Key) => Answer {
  const known = new WeakMap<Key, { readonly answer: Answer }>();
  return (key) => {
    const before = known.get(key);
    if (before) return before.answer;
    const answer = work(key);
    known.set(key, { answer });
    return answer;
  };
}
