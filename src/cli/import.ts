import {
  type FileUnit,
  fileUnits,
  type Incoming,
  inMetres,
  readIncoming,
  unitWords,
} from "../files/incoming";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { counted } from "./count";

const wishes = {
  unit: "a unit of length",
  "height-unit": "a unit of length",
  window: "four numbers",
  most: "a number of heights",
};

export const importCommand: Command = {
  name: "import",
  usage: "import FILE [--unit U] [--height-unit U] [--window W,S,E,N] [--most N] [--json]",
  about: [
    "Tells what a file of ground holds: a table of points, DXF, LandXML, GeoJSON, an ASCII grid or GeoTIFF. It changes nothing.",
    "",
    `  --unit U   one of ${fileUnits.join(", ")} (ft: international foot, ft-us: US survey foot), over what the file says`,
    "  --height-unit U   the same for its heights alone, where the file doesn't say (a GeoTIFF often names one for its places only)",
    "  --window W,S,E,N   of a grid or GeoTIFF only what lies between these coordinates of the file: west, south, east, north",
    "  --most N   of a grid or GeoTIFF at most so many heights, evenly thinned; what that costs in height is told",
    "  --json     all of it: points, lines and faces, in metres where the unit is known or given, else as in the file",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, { files: ["FILE"], values: wishes, flags: ["json"] });
    const file = given.files[0] ?? "";
    const unit = unitTyped("unit", given.value("unit"));
    const heights = unitTyped("height-unit", given.value("height-unit"));
    const raster = { ...windowOf(given.value("window")), ...mostOf(given.value("most")) };
    const read = await readIncoming(file, io.readBytes(file), { raster });
    if (!read.ok) throw new InputError(read.message);
    for (const warning of read.incoming.warnings) io.say(warning);
    io.out(
      given.has("json") ? asJson(read.incoming, unit, heights) : summary(file, read.incoming, unit, heights),
    );
    return 0;
  },
};

function unitTyped(option: string, typed: string | undefined): FileUnit | undefined {
  const unit = fileUnits.find((candidate) => candidate === typed);
  if (typed !== undefined && unit === undefined)
    throw new InputError(`--${option} ${typed}: expected one of ${fileUnits.join(", ")}.`);
  return unit;
}

function windowOf(typed: string | undefined) {
  if (typed === undefined) return {};
  const sides = typed.split(",").map((side) => (side.trim() === "" ? Number.NaN : Number(side)));
  const [minX = Number.NaN, minY = Number.NaN, maxX = Number.NaN, maxY = Number.NaN] = sides;
  if (sides.length !== 4 || !sides.every(Number.isFinite) || minX >= maxX || minY >= maxY)
    throw new InputError(
      `--window ${typed}: expected four numbers west,south,east,north, such as 100,200,150,260.`,
    );
  return { window: { minX, minY, maxX, maxY } };
}

function mostOf(typed: string | undefined) {
  if (typed === undefined) return {};
  const most = Number(typed);
  if (!Number.isInteger(most) || most < 4)
    throw new InputError(`--most ${typed}: expected a whole number of heights, at least 4.`);
  return { most };
}

function unitOf({ units }: Incoming, given?: FileUnit): FileUnit | null {
  return given ?? (units.known ? units.unit : null);
}

function asJson(incoming: Incoming, given?: FileUnit, heightUnit?: FileUnit): string {
  // Where nothing says the unit of the heights nothing is turned: figures stay as the file has them.
  const isOpen = incoming.heightsAsked && heightUnit === undefined;
  const unit = isOpen ? null : unitOf(incoming, given);
  const shown = unit ? inMetres(incoming, unit, [0, 0], heightUnit ?? unit) : incoming;
  const heights = (z: Float64Array) => Array.from(z, (height) => (Number.isNaN(height) ? null : height));
  const { points, marks, faces } = shown;
  return JSON.stringify({
    kind: incoming.kind,
    fileUnit: unitOf(incoming, given),
    heightUnit: heightUnit ?? (isOpen ? null : unitOf(incoming, given)),
    unit: unit ? "m" : null,
    crs: shown.crs,
    bounds: shown.bounds,
    points: { names: points.names, x: [...points.x], y: [...points.y], z: heights(points.z) },
    marks: { names: marks.names, x: [...marks.x], y: [...marks.y], z: heights(marks.z) },
    lines: shown.lines.map(({ name, kind = null, closed, xyz }) => ({
      name,
      kind,
      closed,
      xyz: heights(xyz),
    })),
    faces: { x: [...faces.x], y: [...faces.y], z: heights(faces.z), triangles: [...faces.triangles] },
    warnings: shown.warnings,
  });
}

/** To a tenth of a millimetre or better: what lies below is rounding of the file's own sums. */
function plain(value: number): number {
  return Number(value.toFixed(4)) + 0;
}

function summary(file: string, incoming: Incoming, given?: FileUnit, heightUnit?: FileUnit): string {
  const { points, marks, lines, faces, bounds, crs } = incoming;
  const unit = unitOf(incoming, given);
  const contours = lines.filter(({ kind }) => kind === "contour").length;
  const counts = [
    counted(points.x.length, "point"),
    ...(marks.x.length > 0 ? [`${counted(marks.x.length, "mark")} (not ground)`] : []),
    counted(lines.length, "line") + (contours > 0 ? ` (${counted(contours, "contour")})` : ""),
    counted(faces.triangles.length / 3, "triangle"),
  ].join(", ");
  const told = [`${file}: ${incoming.kind}, ${counts}.`];
  const what = incoming.onLocalPlane ? "Unit of its heights" : "Unit";
  told.push(unit ? `${what}: ${unitWords(unit)}.` : `${what}: the file doesn't say; give it with --unit.`);
  if (heightUnit) told.push(`Unit of its heights: ${unitWords(heightUnit)}.`);
  else if (incoming.heightsAsked)
    told.push("Unit of its heights: the file doesn't say; give it with --height-unit.");
  if (crs) told.push(`Coordinates: ${crs}.`);
  if (bounds) {
    const heights = Number.isNaN(bounds.minZ)
      ? "no heights"
      : `height ${plain(bounds.minZ)} to ${plain(bounds.maxZ)}`;
    told.push(
      `East ${plain(bounds.minX)} to ${plain(bounds.maxX)}, north ${plain(bounds.minY)} to ${plain(bounds.maxY)}, ${heights}.`,
    );
  }
  return told.join("\n");
}
