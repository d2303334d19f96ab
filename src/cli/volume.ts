import { tinPlaneVolume, tinToTinVolume, type Volume } from "../earthwork";
import { number } from "../files/csv";
import { readRing } from "../files/points";
import { type Point, signedArea } from "../geometry";
import { planArea, type Tin } from "../terrain";
import { type Args, readArgs } from "./args";
import { type Command, InputError, type Io } from "./command";
import { jsonText } from "./json";
import { surfaceFromFiles } from "./surface";

export const volume: Command = {
  name: "volume",
  usage: "volume POINTS.csv (--plane Z | --to POINTS2.csv) [--within POLY.csv]",
  about: [
    "Reckons cut and fill from the ground of POINTS.csv to a level plane or to a second surface, and prints JSON.",
    "",
    "Points have the columns name,x,y,z. POLY.csv has x,y: the corners of a polygon in order, closed or not.",
    "Reckoned is where the surfaces (and the polygon) overlap; if that leaves something out, a message says how much.",
    "",
    "  cut, fill, net                volumes in place; fill is where the target is above the ground; net = fill - cut",
    "  cutArea, fillArea, planArea   areas seen from above: cut, filled, and all that was reckoned on",
    "",
    "One unit of length in and out. --json is taken too; it prints nothing else.",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, {
      files: ["POINTS.csv"],
      values: { plane: "a height", to: "a file of points", within: "a file with a polygon" },
      flags: ["json"],
    });
    const target = targetOf(given);
    const ground = surfaceFromFiles(io, given.files[0] ?? "");
    const ring = ringFrom(io, given.value("within"));
    const found =
      "plane" in target
        ? tinPlaneVolume(ground, ring, target.plane)
        : againstSurface(ground, surfaceFromFiles(io, target.file), ring, io);
    checkOverlap(found, ring, ground, io);
    const { cut, fill, cutArea, fillArea } = found;
    const result = { cut, fill, net: fill - cut, cutArea, fillArea, planArea: found.planArea };
    io.out(jsonText(result));
    return 0;
  },
};

type Target = { readonly plane: number } | { readonly file: string };

function targetOf(given: Args): Target {
  const plane = given.value("plane");
  const to = given.value("to");
  if ((plane === undefined) === (to === undefined)) {
    throw new InputError("Expected either --plane and a height or --to and a file of points.");
  }
  if (to !== undefined) return { file: to };
  const height = number.read((plane ?? "").trim(), ".");
  if (height === undefined) {
    throw new InputError(`The option --plane: found "${plane}", expected ${number.expected}.`);
  }
  return { plane: height };
}

function ringFrom(io: Io, file: string | undefined): readonly Point[] | null {
  if (file === undefined) return null;
  const read = readRing(io.readText(file), file);
  if (!read.ok) throw new InputError(read.message);
  for (const note of read.notes) io.say(note);
  return read.ring;
}

/** Volume between two surfaces; what of either lies beside the other is told, unless a polygon chooses the place. */
function againstSurface(ground: Tin, target: Tin, ring: readonly Point[] | null, io: Io): Volume {
  const found = tinToTinVolume(ground, target, ring);
  if (ring || found.planArea <= 0) return found;
  const beside = [planArea(ground), planArea(target)].map((area) => area - found.planArea);
  if (beside.some((area) => area > 1e-9 * found.planArea)) {
    const [ofGround, ofTarget] = beside.map(areaInWords);
    io.say(
      `The surfaces don't cover each other: an area of ${ofGround} of the first and ${ofTarget} of the second was left out.`,
    );
  }
  return found;
}

function checkOverlap(
  { planArea: reckoned }: Volume,
  ring: readonly Point[] | null,
  ground: Tin,
  io: Io,
): void {
  if (!(reckoned > 1e-12 * planArea(ground))) {
    throw new InputError(
      `${ring ? "The polygon and the points" : "The two sets of points"} don't overlap: there is nothing to reckon on. ` +
        "Expected places in the same coordinates.",
    );
  }
  if (!ring) return;
  const area = Math.abs(signedArea(ring));
  if (area - reckoned > 1e-9 * area) {
    io.say(
      `The polygon reaches beyond the points: an area of ${areaInWords(area - reckoned)} of its ${areaInWords(area)} was left out.`,
    );
  }
}

function areaInWords(area: number): string {
  return String(Number(Math.max(0, area).toPrecision(6)));
}
