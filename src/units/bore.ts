import { INCH } from "./constants";

/** Bore of a pipe as it is sold: "15 in", or "381 mm" in metric plans. */
export function formatBore(m: number, feet: boolean): string {
  return feet ? `${Number((m / INCH).toFixed(1))} in` : `${Math.round(m * 1000)} mm`;
}
