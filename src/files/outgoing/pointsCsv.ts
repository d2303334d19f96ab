/**
 * Points as CSV with the columns name, x, y, z, whose heads tell the unit, and kind: "ground", or "mark" for a known height
 * that isn't ground. Metres, in as many digits as read back exactly.
 */
import { type Outgoing, type OutgoingPoint, plain } from "./outgoing";

export function pointsCsv({ points, marks }: Pick<Outgoing, "points" | "marks">): string {
  const row = (kind: string) => (point: OutgoingPoint) => {
    const { name, x, y, z } = point;
    return [quoted(name), plain(x), plain(y), z === null ? "" : plain(z), kind].join(",");
  };
  const rows = [...points.map(row("ground")), ...marks.map(row("mark"))];
  return `${["name,x (m),y (m),z (m),kind", ...rows].join("\n")}\n`;
}

function quoted(name: string): string {
  const line = name.replace(/\s*[\r\n]+\s*/g, " ");
  return /[",;#]|^\s|\s$/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
}
