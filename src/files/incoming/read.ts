/** Any file of ground → what it brings in. What it is shows in its first bytes; its name is only for messages. */
import { isAsciiGrid, readAsciiGrid } from "./asciiGrid";
import { dxfText, readDxf } from "./dxf";
import { readGeoJson } from "./geoJson";
import { isTiff, readGeoTiff } from "./geoTiff";
import { type ReadResult, refused } from "./incoming";
import type { Job } from "./job";
import { readLandXml } from "./landXml";
import type { RasterWish } from "./raster";
import { readTableFile, type TableMapping } from "./table";
import { guessTable } from "./tableForm";
import { isBinary, textOf, tooLarge } from "./text";

export interface ReadOptions {
  /** For tables; nothing: as guessed. */
  readonly table?: TableMapping;
  /** For grids and GeoTIFF: window and thinning. */
  readonly raster?: RasterWish;
}

export type FileKind = "table" | "dxf" | "landxml" | "geojson" | "ascii-grid" | "geotiff";

/** What kind of file of ground this is, or in words why it is none. */
export function fileKind(file: string, bytes: Uint8Array): FileKind | { readonly fault: string } {
  if (bytes.length === 0) return { fault: `${file} is empty.` };
  if (isTiff(bytes)) return "geotiff";
  const start = new TextDecoder("windows-1252").decode(bytes.subarray(0, 4096));
  if (start.startsWith("AutoCAD Binary DXF"))
    return { fault: `${file} is a DXF drawing in binary form. Save it as a text DXF and try again.` };
  if (/^AC10\d\d/.test(start))
    return { fault: `${file} is a DWG drawing. Save it as a text DXF and try again.` };
  if (start.startsWith("PK"))
    return { fault: `${file} is packed (zip, or a spreadsheet). Unpack it, or save the sheet as CSV.` };
  if (isBinary(bytes))
    return {
      fault: `${file} is no file of ground that can be read: tables, DXF, LandXML, GeoJSON, ASCII grids and GeoTIFF can.`,
    };
  const text = textOf(bytes.subarray(0, 4096)).replace(/^\ufeff/, "");
  if (/^\s*</.test(text)) return "landxml";
  if (/^\s*[{[]/.test(text)) return "geojson";
  if (isAsciiGrid(text)) return "ascii-grid";
  if (/^\s*(999\s*[\r\n][^\r\n]*[\r\n]+\s*)*0\s*[\r\n]+\s*SECTION/.test(text)) return "dxf";
  return "table";
}

/** Reads a whole file. Never throws on its content: it is refused in words. */
export async function readIncoming(
  file: string,
  bytes: Uint8Array,
  options: ReadOptions = {},
  job: Job = {},
): Promise<ReadResult> {
  const large = tooLarge(file, bytes.length);
  if (large) return refused(large);
  const kind = fileKind(file, bytes);
  if (typeof kind === "object") return refused(kind.fault);
  switch (kind) {
    case "geotiff":
      return readGeoTiff(file, bytes, options.raster, job);
    case "dxf":
      return readDxf(file, dxfText(bytes), job);
    case "landxml":
      return readLandXml(file, textOf(bytes), job);
    case "geojson":
      return readGeoJson(file, textOf(bytes).replace(/^\ufeff/, ""), job);
    case "ascii-grid":
      return readAsciiGrid(file, textOf(bytes), options.raster, job);
    case "table": {
      const text = textOf(bytes);
      return readTableFile(file, text, options.table ?? guessTable(text), job);
    }
  }
}
