/** Figures as JSON text, without the noise of binary fractions. */

/** Places kept behind the point: a nanometre is less than anything here is known to. */
const places = 1e9;

/** JSON of a value whose numbers are rounded to 1e-9. */
export function jsonText(value: unknown): string {
  return JSON.stringify(value, (_key, item: unknown) => (typeof item === "number" ? rounded(item) : item), 2);
}

function rounded(value: number): number {
  const whole = Math.round(value * places);
  // Beyond 2^53 there is no fraction left to round; adding 0 drops the sign of a zero.
  return Number.isSafeInteger(whole) ? whole / places + 0 : value;
}
