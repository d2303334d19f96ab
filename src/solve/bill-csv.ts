/** The bill as a table of comma-separated values, for a spreadsheet. Metres, square and cubic metres, whole loads. */
import type { Results } from "./results";

/** Columns item, quantity, unit, waste (a share), price (for one unit), cost, how; then the total of what has a price. RFC 4180. */
export function billCsv({ bill, cost }: Pick<Results, "bill" | "cost">): string {
  const rows = bill.map(({ item, quantity, unit, waste, price, cost: part, how }) => [
    item,
    figure(quantity),
    unit,
    figure(waste),
    price === null ? "" : figure(price),
    part === null ? "" : part.toFixed(2),
    how,
  ]);
  const total = ["Together, of what has a price", "", "", "", "", cost.total.toFixed(2), ""];
  const head = ["item", "quantity", "unit", "waste", "price", "cost", "how"];
  return `${[head, ...rows, total].map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}
