/** Where the typed figures of a section stand: in the gutters beside it, each as near to its dimension as the others let it. */

export interface GutterPlace {
  /** Where it would like to stand, px from the top. */
  readonly wanted: number;
}

/**
 * Tops for fields of one height in a gutter: in the order in which they are wanted, none over another, none outside.
 * Pushed down first, then up from the foot where they would run out.
 */
export function gutterTops(places: readonly GutterPlace[], height: number, room: number): number[] {
  const order = places.map((_, i) => i).sort((a, b) => (places[a]?.wanted ?? 0) - (places[b]?.wanted ?? 0));
  const tops: number[] = places.map(() => 0);
  let next = 0;
  for (const i of order) {
    next = Math.max(next, (places[i]?.wanted ?? 0) - height / 2);
    tops[i] = next;
    next += height;
  }
  let last = Math.max(room, places.length * height);
  for (const i of [...order].reverse()) {
    last = Math.min(tops[i] as number, last - height);
    tops[i] = last;
  }
  return tops;
}
