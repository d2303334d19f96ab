/**
 * Sizes that a new thing begins with in a metric plan: those that are sold and formed in whole centimetres, not inches turned
 * into metres. Common practice, no source. Lengths that a published rule names (2 ft of room for spoil, 10 ft of fall away)
 * stay what the rule says.
 *
 * Units   metres.
 */
import type { Display } from "./schema";

/** Size in inches or feet, as metres, and the one that stands in its place. */
const pairs: readonly (readonly [feet: number, metric: number])[] = [
  [0.1016, 0.1],
  [0.127, 0.125],
  [0.1397, 0.14],
  [0.1524, 0.15],
  [0.2032, 0.2],
  [0.2667, 0.27],
  [0.3048, 0.3],
  [0.4064, 0.4],
  [0.4572, 0.45],
  [0.6096, 0.6],
  [0.9144, 0.9],
  [1.2192, 1.2],
  [2.4384, 2.4],
  [3.6576, 3.6],
];
const metricOf = new Map(pairs);
/** What a rule names. */
const published = new Set(["spoilBack", "benchHeight"]);

/** A thing as its schema makes it, with the sizes that are usual in the plan's units. */
export function inUsualSizes<Thing>(thing: Thing, { length }: Pick<Display, "length">): Thing {
  return length === "ft-in" || length === "in" || length === "ft" ? thing : (metric(thing) as Thing);
}

function metric(value: unknown): unknown {
  if (typeof value === "number") return metricOf.get(value) ?? value;
  if (Array.isArray(value) || value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, published.has(key) ? part : metric(part)]),
  );
}
