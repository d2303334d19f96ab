/**
 * GeoTIFF terrain → points. Only the window is unpacked. Heights are scaled and shifted where the file says so, and turned
 * into the unit of its coordinates where they are said to be in another.
 *
 * Source  the format's published keys (OGC GeoTIFF 1.1: 3076 and 4099 units, 4096 vertical system), read by geotiff; scale,
 *         offset and unit of a band as GDAL writes them.
 */
import type { GeoTIFFImage } from "geotiff";
import { type IncomingUnits, type ReadResult, received, refused } from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { localPlane } from "./localPlane";
import { type Raster, type RasterWish, thinned, thinningWords } from "./raster";
import { type FileUnit, metresPer, unitWords } from "./units";

const MOST_CELLS = 50_000_000;
const linearUnits: Readonly<Record<number, FileUnit>> = { 9001: "m", 9002: "ft", 9003: "ft-us", 9036: "km" };
/** EPSG vertical systems that are common in terrain files: NAVD88 in metres, US survey and international feet; EGM96, EGM2008. */
const verticalSystems: Readonly<Record<number, FileUnit>> = {
  5703: "m",
  6360: "ft-us",
  8228: "ft",
  5773: "m",
  3855: "m",
};
const compressions: Readonly<Record<number, string>> = {
  1: "none",
  5: "LZW",
  7: "JPEG",
  8: "deflate",
  32773: "PackBits",
  32946: "deflate",
  34887: "LERC",
  34925: "LZMA",
  50000: "Zstandard",
  50001: "WebP",
};

/** Values of the tag PhotometricInterpretation (TIFF 6.0). */
const RGB = 2;
const PALETTE = 3;
const YCBCR = 6;

export function isTiff(bytes: Uint8Array): boolean {
  const [a, b, c, d] = bytes;
  return (
    (a === 0x49 && b === 0x49 && (c === 42 || c === 43) && d === 0) ||
    (a === 0x4d && b === 0x4d && c === 0 && (d === 42 || d === 43))
  );
}

export async function readGeoTiff(
  file: string,
  bytes: Uint8Array,
  wish: RasterWish = {},
  job: Job = {},
): Promise<ReadResult> {
  const { fromArrayBuffer } = await import("geotiff");
  let packing = "";
  try {
    const whole = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    const image = await (await fromArrayBuffer(whole)).getImage();
    const frame = frameOf(image);
    if (typeof frame === "string") return refused(`${file}: ${frame}`);
    packing = await packingOf(image);
    if (!image.littleEndian && packing.includes("predictor"))
      return refused(
        `${file} is packed in a way that can't be read here (${packing}, high byte first). ${saveAnew}`,
      );
    const part = cellsWithin(frame, wish);
    if (part === null) return refused(`${file}: it doesn't reach into the window.`);
    if (part.columns * part.rows > MOST_CELLS)
      return refused(
        `${file} has ${part.columns * part.rows} cells there; at most ${MOST_CELLS} can be read. Choose a smaller window.`,
      );
    if (!(await goesOn(job, 0.1))) return stopped;
    const raster = await unpacked(image, part);
    if (!(await goesOn(job, 0.8))) return stopped;
    const taken = thinned(raster, { ...wish, window: undefined } as RasterWish);
    if (taken === null) return refused(`${file}: there are no heights within the window.`);
    return placed(file, image, taken, await heightUnitOf(image));
  } catch {
    const packed = packing === "" ? "" : ` Its packing: ${packing}. ${saveAnew}`;
    return refused(`${file} can't be unpacked as a GeoTIFF. Is the file whole?${packed}`);
  }
}

const saveAnew = "Save it anew with deflate or LZW and no predictor.";

/** How the cells are packed, in words; a predictor stores differences instead of heights. */
async function packingOf(image: GeoTIFFImage): Promise<string> {
  const code = Number((await image.fileDirectory.loadValue("Compression")) ?? 1);
  const predictor = Number((await image.fileDirectory.loadValue("Predictor")) ?? 1);
  const name = compressions[code] ?? `compression ${code}`;
  return predictor > 1 ? `${name} with predictor ${predictor}` : name;
}

type Frame = Omit<Raster, "heights">;
type Part = Frame & { readonly left: number; readonly top: number };

function frameOf(image: GeoTIFFImage): Frame | string {
  const keys = image.getGeoKeys();
  let origin: number[];
  let step: number[];
  try {
    origin = image.getOrigin();
    step = image.getResolution();
  } catch {
    return "it is a picture without a place on the ground (no georeference).";
  }
  const shown = Number(image.fileDirectory.getValue("PhotometricInterpretation"));
  if (shown === RGB || shown === PALETTE || shown === YCBCR)
    return "it is a coloured picture, not terrain. As a picture it can lie under the plan.";
  if (isTurned(image))
    return "its rows are turned against north; turn it so that they run west to east first.";
  const [x = 0, y = 0] = origin;
  const [stepX = 0, stepY = 0] = step;
  if (!(stepX > 0 && stepY < 0))
    return "its rows don't run from north to south and west to east; turn it so first.";
  // Value at the centre of a cell, unless the file says that a value stands at its corner.
  const half = keys?.GTRasterTypeGeoKey === 2 ? 0 : 0.5;
  return {
    columns: image.getWidth(),
    rows: image.getHeight(),
    stepX,
    stepY: -stepY,
    x: x + half * stepX,
    y: y + half * stepY,
  };
}

/** The resolution of a turned picture is that along its own rows: only the matrix shows the turn. */
function isTurned(image: GeoTIFFImage): boolean {
  const matrix = image.fileDirectory.getValue("ModelTransformation") as ArrayLike<number> | undefined;
  if (!matrix) return false;
  const step = Math.abs(matrix[0] as number) + Math.abs(matrix[5] as number);
  return Math.abs(matrix[1] as number) + Math.abs(matrix[4] as number) > 1e-9 * step;
}

function cellsWithin(frame: Frame, { window }: RasterWish): Part | null {
  if (!window) return { ...frame, left: 0, top: 0 };
  const left = Math.max(0, Math.ceil((window.minX - frame.x) / frame.stepX - 1e-9));
  const right = Math.min(frame.columns - 1, Math.floor((window.maxX - frame.x) / frame.stepX + 1e-9));
  const top = Math.max(0, Math.ceil((frame.y - window.maxY) / frame.stepY - 1e-9));
  const bottom = Math.min(frame.rows - 1, Math.floor((frame.y - window.minY) / frame.stepY + 1e-9));
  if (left > right || top > bottom) return null;
  return {
    ...frame,
    left,
    top,
    columns: right - left + 1,
    rows: bottom - top + 1,
    x: frame.x + left * frame.stepX,
    y: frame.y - top * frame.stepY,
  };
}

async function unpacked(image: GeoTIFFImage, part: Part): Promise<Raster> {
  const bands = await image.readRasters({
    window: [part.left, part.top, part.left + part.columns, part.top + part.rows],
    samples: [0],
  });
  const band = (bands as unknown as ArrayLike<number>[])[0] ?? [];
  const nothing = image.getGDALNoData();
  const told = await image.getGDALMetadata(0);
  const scale = told?.SCALE === undefined ? 1 : Number(told.SCALE);
  const offset = Number(told?.OFFSET ?? 0);
  const heights = Float64Array.from(band, (value) =>
    value === nothing || Math.abs(value) > 1e30 ? Number.NaN : value * scale + offset,
  );
  return { ...part, heights };
}

/** The unit of the heights where the file names one. */
async function heightUnitOf(image: GeoTIFFImage): Promise<FileUnit | null> {
  const keys = image.getGeoKeys();
  const typed = String((await image.getGDALMetadata(0))?.UNITTYPE ?? "").toLowerCase();
  return (
    linearUnits[Number(keys?.VerticalUnitsGeoKey)] ??
    verticalSystems[Number(keys?.VerticalCSTypeGeoKey)] ??
    bandUnits[typed] ??
    null
  );
}

const bandUnits: Readonly<Record<string, FileUnit>> = {
  m: "m",
  metre: "m",
  meter: "m",
  metres: "m",
  meters: "m",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  "us survey foot": "ft-us",
  ftus: "ft-us",
  "us-ft": "ft-us",
};

function placed(
  file: string,
  image: GeoTIFFImage,
  taken: NonNullable<ReturnType<typeof thinned>>,
  heightUnit: FileUnit | null,
): ReadResult {
  const keys = image.getGeoKeys();
  const said = thinningWords(file, taken);
  const warnings = said ? [said] : [];
  const parts = { kind: "geotiff", warnings } as const;
  const isGeographic = keys?.GTModelTypeGeoKey === 2;
  // Degrees say nothing of the heights beside them.
  if (isGeographic) {
    const heights: IncomingUnits = heightUnit ? { known: true, unit: heightUnit } : { known: false };
    return received(file, { ...parts, ...localPlane(taken.points, []), units: heights });
  }
  const unit =
    linearUnits[Number(keys?.ProjLinearUnitsGeoKey)] ?? epsgMetres(Number(keys?.ProjectedCSTypeGeoKey));
  if (heightUnit && unit && heightUnit !== unit) {
    const factor = metresPer(heightUnit) / metresPer(unit);
    for (let i = 0; i < taken.points.z.length; i++)
      taken.points.z[i] = (taken.points.z[i] as number) * factor;
    warnings.push(
      `${file}: its heights are in ${unitWords(heightUnit)}; they were turned into ${unitWords(unit)}.`,
    );
  }
  const units: IncomingUnits = unit ? { known: true, unit } : { known: false };
  const code = Number(keys?.ProjectedCSTypeGeoKey);
  const crs = keys?.GTCitationGeoKey ?? (code > 0 && code < 32767 ? `EPSG:${code}` : null);
  // Terrain in feet of a state's plane often has its heights in metres, and the other way round.
  const heightsAsked = unit !== null && heightUnit === null;
  const system = crs === null ? null : String(crs);
  return received(file, { ...parts, points: taken.points, units, heightsAsked, crs: system });
}

/** The universal transverse Mercator zones of WGS 84 are in metres by definition. */
function epsgMetres(code: number): FileUnit | null {
  return (code >= 32601 && code <= 32660) || (code >= 32701 && code <= 32760) ? "m" : null;
}
