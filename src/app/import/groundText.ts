/** The ground as text of a file. What writes it is loaded when first needed. */
import type { Project } from "../../document";
import type { Results } from "../../solve/results";

export const groundFormats = {
  csv: {
    words: "points, CSV",
    ending: "csv",
    holds: "Name, easting, northing and height of each point, and whether it is ground or a mark.",
  },
  dxf: {
    words: "DXF drawing",
    ending: "dxf",
    holds: "Points, marks, breaklines, contours and triangles, each on a layer of its own.",
  },
  landxml: {
    words: "LandXML 1.2",
    ending: "xml",
    holds: "Points, marks, breaklines, contours and the triangles.",
  },
  geojson: {
    words: "GeoJSON",
    ending: "geojson",
    holds: "Points, marks, breaklines, contours and triangles.",
  },
} as const;

export type GroundFormat = keyof typeof groundFormats;

export async function groundText(format: GroundFormat, project: Project, results: Results): Promise<string> {
  const { dxfFile, geoJsonFile, landXmlFile, outgoing, pointsCsv } = await import("../../files/outgoing");
  const out = outgoing(project, results);
  const now = new Date().toISOString();
  const written: Readonly<Record<GroundFormat, () => string>> = {
    csv: () => pointsCsv(out),
    dxf: () => dxfFile(out),
    landxml: () => landXmlFile(out, now.slice(0, 10), now.slice(11, 19)),
    geojson: () => geoJsonFile(out),
  };
  return written[format]();
}
