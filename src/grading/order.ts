/** The order in which acts shape the ground. */

/**
 * Things in the order of a list of ids. Those that the list doesn't name keep their place in the usual order: each
 * comes right after the one that is usually before it.
 */
export function inOrder<T extends { readonly id: string }>(
  usual: readonly T[],
  order: readonly string[],
): T[] {
  if (order.length === 0) return [...usual];
  const named = order.flatMap((id) => usual.find((one) => one.id === id) ?? []);
  const placed: T[] = named.filter((one, i) => named.indexOf(one) === i);
  usual.forEach((one, i) => {
    if (placed.includes(one)) return;
    const before = usual[i - 1];
    placed.splice(before ? placed.indexOf(before) + 1 : 0, 0, one);
  });
  return placed;
}
