/** GeoTIFF terrain → points. Only the window is unpacked. Source: the format's published keys, read by geotiff. */
import type { GeoTIFFImage } from "geotiff";
import { type IncomingUnits, type ReadResult, received, refused } from "./incoming";
import { goesOn, type Job, stopped } from "./job";
import { localPlane } from "./localPlane";
import { type Raster, type RasterWish, thinned, thinningWords } from "./raster";
import type { FileUnit } from "./units";

const MOST_CELLS = 50_000_000;
const linearUnits: Readonly<Record<number, FileUnit>> = { 9001: "m", 9002: "ft", 9003: "ft-us", 9036: "km" };

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
  try {
    const whole = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    const image = await (await fromArrayBuffer(whole)).getImage();
    const frame = frameOf(image);
    if (typeof frame === "string") return refused(`${file}: ${frame}`);
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
    return placed(file, image, taken);
  } catch {
    return refused(`${file} can't be unpacked as a GeoTIFF. Is the file whole?`);
  }
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
  const heights = Float64Array.from(band, (value) =>
    value === nothing || Math.abs(value) > 1e30 ? Number.NaN : value,
  );
  return { ...part, heights };
}

function placed(
  file: string,
  image: GeoTIFFImage,
  taken: NonNullable<ReturnType<typeof thinned>>,
): ReadResult {
  const keys = image.getGeoKeys();
  const said = thinningWords(file, taken);
  const parts = { kind: "geotiff", warnings: said ? [said] : [] } as const;
  if (keys?.GTModelTypeGeoKey === 2) return received(file, { ...parts, ...localPlane(taken.points, []) });
  const unit =
    linearUnits[Number(keys?.ProjLinearUnitsGeoKey)] ?? epsgMetres(Number(keys?.ProjectedCSTypeGeoKey));
  const units: IncomingUnits = unit ? { known: true, unit } : { known: false };
  const code = Number(keys?.ProjectedCSTypeGeoKey);
  const crs = keys?.GTCitationGeoKey ?? (code > 0 && code < 32767 ? `EPSG:${code}` : null);
  return received(file, { ...parts, points: taken.points, units, crs: crs === null ? null : String(crs) });
}

/** The universal transverse Mercator zones of WGS 84 are in metres by definition. */
function epsgMetres(code: number): FileUnit | null {
  return (code >= 32601 && code <= 32660) || (code >= 32701 && code <= 32760) ? "m" : null;
}
