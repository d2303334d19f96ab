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

export const importCommand: Command = {
  name: "import",
  usage: "import FILE [--unit U] [--json]",
  about: [
    "Tells what a file of ground holds: a table of points, DXF, LandXML, GeoJSON, an ASCII grid or GeoTIFF. It changes nothing.",
    "",
    `  --unit U   one of ${fileUnits.join(", ")} (ft: international foot, ft-us: US survey foot), over what the file says`,
    "  --json     all of it: points, lines and faces, in metres where the unit is known or given, else as in the file",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, { files: ["FILE"], values: { unit: "a unit of length" }, flags: ["json"] });
    const file = given.files[0] ?? "";
    const typed = given.value("unit");
    const unit = fileUnits.find((candidate) => candidate === typed);
    if (typed !== undefined && unit === undefined)
      throw new InputError(`--unit ${typed}: expected one of ${fileUnits.join(", ")}.`);
    const read = await readIncoming(file, io.readBytes(file));
    if (!read.ok) throw new InputError(read.message);
    for (const warning of read.incoming.warnings) io.say(warning);
    io.out(given.has("json") ? asJson(read.incoming, unit) : summary(file, read.incoming, unit));
    return 0;
  },
};

function unitOf({ units }: Incoming, given?: FileUnit): FileUnit | null {
  return given ?? (units.known ? units.unit : null);
}

function asJson(incoming: Incoming, given?: FileUnit): string {
  const unit = unitOf(incoming, given);
  const shown = unit ? inMetres(incoming, unit) : incoming;
  const heights = (z: Float64Array) => Array.from(z, (height) => (Number.isNaN(height) ? null : height));
  const { points, faces } = shown;
  return JSON.stringify({
    kind: incoming.kind,
    fileUnit: unit,
    unit: unit ? "m" : null,
    crs: shown.crs,
    bounds: shown.bounds,
    points: { names: points.names, x: [...points.x], y: [...points.y], z: heights(points.z) },
    lines: shown.lines.map(({ name, closed, xyz }) => ({ name, closed, xyz: heights(xyz) })),
    faces: { x: [...faces.x], y: [...faces.y], z: heights(faces.z), triangles: [...faces.triangles] },
    warnings: shown.warnings,
  });
}

function summary(file: string, incoming: Incoming, given?: FileUnit): string {
  const { points, lines, faces, bounds, crs } = incoming;
  const unit = unitOf(incoming, given);
  const counts = `${points.x.length} points, ${lines.length} lines, ${faces.triangles.length / 3} triangles`;
  const told = [`${file}: ${incoming.kind}, ${counts}.`];
  told.push(unit ? `Unit: ${unitWords(unit)}.` : "Unit: the file doesn't say; give it with --unit.");
  if (crs) told.push(`Coordinates: ${crs}.`);
  if (bounds) {
    const heights = Number.isNaN(bounds.minZ) ? "no heights" : `height ${bounds.minZ} to ${bounds.maxZ}`;
    told.push(`East ${bounds.minX} to ${bounds.maxX}, north ${bounds.minY} to ${bounds.maxY}, ${heights}.`);
  }
  return told.join("\n");
}
