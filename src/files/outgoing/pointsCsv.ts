/** Points as CSV with the columns name, x, y, z, whose heads tell the unit; metres, in as many digits as read back exactly. */
import { type Outgoing, plain } from "./outgoing";

export function pointsCsv({ points }: Pick<Outgoing, "points">): string {
  const rows = points.map(({ name, x, y, z }) =>
    [quoted(name), plain(x), plain(y), z === null ? "" : plain(z)].join(","),
  );
  return `${["name,x (m),y (m),z (m)", ...rows].join("\n")}\n`;
}

function quoted(name: string): string {
  const line = name.replace(/\s*[\r\n]+\s*/g, " ");
  return /[",;#]|^\s|\s$/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
}
