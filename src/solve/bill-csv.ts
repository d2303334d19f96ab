/** The bill as a table of comma-separated values, for a spreadsheet. Metres, square and cubic metres, pieces, whole loads, hours. */
import type { Results } from "./results";

/** In the order of work; columns as in `head` (waste a share, price for one unit); then the total of what has a price. RFC 4180. */
export function billCsv({ bill, cost }: Pick<Results, "bill" | "cost">): string {
  const rows = bill.map((item) => [
    item.stage,
    item.item,
    figure(item.quantity),
    item.unit,
    ...(item.range ?? [null, null]).map(figureOrNone),
    figure(item.waste),
    ...(item.trucked
      ? [figure(item.trucked.loose), figure(item.trucked.mass / 1000), figure(item.trucked.loads)]
      : ["", "", ""]),
    figureOrNone(item.price),
    item.cost === null ? "" : item.cost.toFixed(2),
    item.how,
  ]);
  const total = head.map((name) => (name === "cost" ? cost.total.toFixed(2) : ""));
  total[1] = "Together, of what has a price";
  return `${[head, ...rows, total].map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}

const head = [
  "stage",
  "item",
  "quantity",
  "unit",
  "least",
  "most",
  "waste",
  "loose_m3",
  "tonnes",
  "loads",
  "price",
  "cost",
  "how",
];

function figureOrNone(value: number | null): string {
  return value === null ? "" : figure(value);
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}
