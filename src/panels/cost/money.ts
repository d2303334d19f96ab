import { halfWidth } from "../../units";

/** A typed amount: with a sign of money or without, a comma before three digits setting thousands apart; NaN where it is none. */
export function parseMoney(text: string): number {
  const plain = halfWidth(text)
    .trim()
    .replace(/^[$€£]\s*|\s*[$€£]$/g, "")
    .replace(/[\s\u202f]/g, "");
  if (plain === "") return Number.NaN;
  return Number(/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(plain) ? plain.replace(/,/g, "") : plain.replace(",", "."));
}
