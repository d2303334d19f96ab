/** The bill as a table of comma-separated values, for a spreadsheet: in the plan's own units, priced as typed. */
import type { Display } from "../document/schema";
import { countedIn, weighedIn } from "../units";
import type { BillItem, Results } from "./results";

/** In the order of work (waste a share, price for one unit); then the total of what has a price. RFC 4180. */
export function billCsv({ bill, cost }: Pick<Results, "bill" | "cost">, display: Display): string {
  const head = headOf(display);
  const rows = bill.map((item) => rowOf(item, display));
  const total = head.map((name) => (name === "cost" ? cost.total.toFixed(2) : ""));
  total[1] = "Together, of what has a price";
  return `${[head, ...rows, total].map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}

function headOf(display: Display): string[] {
  const loose = `loose_${countedIn("m3", display).name}`;
  const weight = weighedIn(display).name;
  return [
    ...["stage", "item", "quantity", "unit", "least", "most", "waste"],
    ...[loose, weight, "loads", "price", "cost", "how"],
  ];
}

function rowOf(item: BillItem, display: Display): string[] {
  const { name, size } = countedIn(item.unit, display);
  const volume = countedIn("m3", display).size;
  const weight = weighedIn(display).size;
  return [
    item.stage,
    item.item,
    figure(item.quantity / size),
    name,
    ...(item.range ?? [null, null]).map((end) => (end === null ? "" : figure(end / size))),
    figure(item.waste),
    ...(item.trucked
      ? [figure(item.trucked.loose / volume), figure(item.trucked.mass / weight), figure(item.trucked.loads)]
      : ["", "", ""]),
    item.price === null ? "" : figure(item.price * size),
    item.cost === null ? "" : item.cost.toFixed(2),
    item.how,
  ];
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}
