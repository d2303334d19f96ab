/**
 * LandXML 1.2: named points, breaklines and contours as source data, and the triangles. Metres; northing first, as the
 * format has it. `day` (yyyy-mm-dd) and `time` (hh:mm:ss) are wanted by its schema, and come from the caller.
 *
 * Source  the format's published schema.
 */
import { type Outgoing, type OutgoingPoint, plain } from "./outgoing";

export function landXmlFile(out: Outgoing, day: string, time = "00:00:00"): string {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<LandXML xmlns="http://www.landxml.org/schema/LandXML-1.2" version="1.2" date="${day}" time="${time}" language="English" readOnly="false">`,
    '<Units><Metric areaUnit="squareMeter" linearUnit="meter" volumeUnit="cubicMeter" temperatureUnit="celsius" pressureUnit="milliBars" angularUnit="decimal degrees" directionUnit="decimal degrees"/></Units>',
    `<Project name="${escaped(out.name)}"/>`,
    '<Application name="Drysill" version="0.1.0"/>',
    ...points(out),
    ...surfaces(out),
    "</LandXML>",
  ];
  return `${lines.join("\n")}\n`;
}

function points({ points: all, marks }: Outgoing): string[] {
  if (all.length + marks.length === 0) return [];
  const names = new Set<string>();
  const row = (code: string) => (point: OutgoingPoint) => {
    const { name, x, y, z } = point;
    const height = z === null ? "" : ` ${plain(z)}`;
    return `<CgPoint name="${escaped(once(name, names))}" code="${code}">${plain(y)} ${plain(x)}${height}</CgPoint>`;
  };
  return ["<CgPoints>", ...all.map(row("ground")), ...marks.map(row("mark")), "</CgPoints>"];
}

/** Names of points are keys in the format: a second one of a name gets a number. */
function once(name: string, taken: Set<string>): string {
  let free = name;
  for (let i = 2; taken.has(free); i++) free = `${name} (${i})`;
  taken.add(free);
  return free;
}

function surfaces(out: Outgoing): string[] {
  const parts = [...sourceData(out), ...definition(out)];
  if (parts.length === 0) return [];
  return ['<Surfaces><Surface name="existing ground">', ...parts, "</Surface></Surfaces>"];
}

function definition({ surface }: Outgoing): string[] {
  if (!surface || surface.triangles.length === 0) return [];
  const { x, y, z, triangles } = surface;
  const place = (i: number) => [y, x, z].map((values) => plain(values[i] as number)).join(" ");
  const corners = Array.from(x, (_, i) => `<P id="${i + 1}">${place(i)}</P>`);
  const faces: string[] = [];
  for (let t = 0; t < triangles.length; t += 3)
    faces.push(`<F>${[0, 1, 2].map((k) => (triangles[t + k] as number) + 1).join(" ")}</F>`);
  return [
    '<Definition surfType="TIN"><Pnts>',
    ...corners,
    "</Pnts><Faces>",
    ...faces,
    "</Faces></Definition>",
  ];
}

/** The format knows lines with all heights or none: where one corner has none, the line goes out without. */
function sourceData({ lines, contours }: Outgoing): string[] {
  const breaklines = lines.map(({ name, kind, closed, points: corners }) => {
    const round = closed && corners[0] ? [...corners, corners[0]] : corners;
    const high = round.every(([, , z]) => z !== null);
    const list = round
      .map(([x, y, z]) => `${plain(y)} ${plain(x)}${high ? ` ${plain(z as number)}` : ""}`)
      .join(" ");
    const form = high ? "PntList3D" : "PntList2D";
    return `<Breakline name="${escaped(name)}" desc="${escaped(kind)}" brkType="standard"><${form}>${list}</${form}></Breakline>`;
  });
  const contourRows = contours.flatMap(({ height, lines: runs }) =>
    runs.map((run) => `<Contour elev="${plain(height)}"><PntList2D>${flat(run)}</PntList2D></Contour>`),
  );
  if (breaklines.length + contourRows.length === 0) return [];
  return [
    "<SourceData>",
    ...(breaklines.length ? ["<Breaklines>", ...breaklines, "</Breaklines>"] : []),
    ...(contourRows.length ? ["<Contours>", ...contourRows, "</Contours>"] : []),
    "</SourceData>",
  ];
}

function flat(run: Float64Array): string {
  const words: string[] = [];
  for (let i = 0; i < run.length; i += 2)
    words.push(`${plain(run[i + 1] as number)} ${plain(run[i] as number)}`);
  return words.join(" ");
}

/** XML can't hold most control characters at all. */
function escaped(text: string): string {
  return text
    .replace(/[\p{Cc}\ufffe\uffff]/gu, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
