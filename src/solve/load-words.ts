/** Truck loads in words, the same in the window and on the sheet. */

/** A load this nearly full is told as a load. */
const nearlyFull = 0.95;

/**
 * "12 loads", "1,240 loads", "less than one load".
 *
 * `count`: whole loads; `loose`: what they carry, m3; `truck`: what one holds, m3.
 */
export function loadsText(count: number, loose: number, truck: number): string {
  if (count === 1 && loose < nearlyFull * truck) return "less than one load";
  return `${count.toFixed(0).replace(/\B(?=(\d{3})+$)/g, ",")} load${count === 1 ? "" : "s"}`;
}
