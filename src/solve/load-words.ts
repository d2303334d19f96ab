/** Truck loads in words, the same in the window and on the sheet. */
import type { Truck } from "../document/schema";
import type { BillItem, OneStep } from "./results";

/** Loads of fill or of cut as the bill counts them, in words; null where none are driven. */
export function loadsOf(kind: "fill" | "cut", bill: readonly BillItem[], truck: Truck): string | null {
  const quantity = (id: string) => bill.find((item) => item.id === id)?.quantity ?? 0;
  const count = quantity(`${kind}-loads`);
  if (count === 0) return null;
  const beside = kind === "cut" ? quantity("trench-left") : quantity("slab-fill-loose");
  return loadsText(count, quantity(`${kind}-loose`) + beside, truck.volume);
}

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

/** Loads that a step of the floor adds or saves, in words: "about 1.8 loads more to bring". */
export function loadsWords({ loadsIn, loadsOut }: Pick<OneStep, "loadsIn" | "loadsOut">): string {
  const told = (loads: number, what: string) =>
    Math.abs(loads) < 0.05
      ? []
      : [`${Math.abs(loads).toFixed(1)} loads ${loads > 0 ? "more" : "fewer"} ${what}`];
  const all = [...told(loadsIn, "to bring"), ...told(loadsOut, "to take away")];
  return all.length === 0 ? "less than a tenth of a load" : `about ${all.join(", ")}`;
}
