import type { Project } from "../document/schema";
import { createSolver } from "../solve/pipeline";
import { type LaidProposal, proposeSwale, type Route } from "../solve/swale-proposal";
import { wordsFor } from "../solve/words";
import { parseLength } from "../units";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { jsonText } from "./json";
import { openFile, problemLine } from "./project";

type Place = [number, number];

export const swale: Command = {
  name: "swale",
  usage: "swale FILE --from X,Y --to X,Y [--off D] [--depth D] [--json]",
  about: [
    "Lays a line for a swale from a start to an outlet, uphill of the building, with the heights of its bed.",
    "",
    "  --from X,Y   where it starts, in the plan's metres east and north",
    "  --to X,Y     where its water may come out",
    "  --off D      least distance off the walls: metres, or as typed (10'); the plan's own without it",
    "  --depth D    of the bed below the ground at its start",
    "  --json       the line, its stations and what would make it work, in metres",
    "",
    "The project's file stays as it is. Where no bed can come out at the outlet it says how far one reaches.",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, {
      files: ["FILE"],
      values: { from: "a place", to: "a place", off: "a distance", depth: "a depth" },
      flags: ["json"],
    });
    const [file = ""] = given.files;
    const { project, warnings } = openFile(file, io);
    for (const warning of warnings) io.say(`${file}: ${problemLine(warning).trim()}`);
    const start = place("--from", given.value("from"));
    const outlet = place("--to", given.value("to"));
    const off = length("--off", given.value("off"));
    const depth = length("--depth", given.value("depth"));
    const proposal = proposeSwale(project, createSolver().solve(project), {
      start,
      outlet,
      ...(off === null ? {} : { off }),
      ...(depth === null ? {} : { depth }),
    });
    if (proposal.kind === "refused") throw new InputError(proposal.why);
    io.out(given.has("json") ? jsonText(proposal) : page(project, proposal));
    return 0;
  },
};

function place(option: string, typed: string | undefined): Place {
  const parts = (typed ?? "").split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  const [x, y] = parts;
  if (parts.length !== 2 || x === undefined || y === undefined || !Number.isFinite(x) || !Number.isFinite(y))
    throw new InputError(`${option}: expected two numbers with a comma between, metres east and north.`);
  return [x, y];
}

function length(option: string, typed: string | undefined): number | null {
  if (typed === undefined) return null;
  const parsed = parseLength(typed, "m");
  if (!parsed.ok) throw new InputError(`${option}: ${parsed.message}`);
  if (parsed.m <= 0) throw new InputError(`${option}: it must be more than nothing.`);
  return parsed.m;
}

function page(project: Project, { route, ways, reaches, short, floor }: LaidProposal): string {
  const words = wordsFor(project.display);
  const lines = [
    `${route.result.drains ? "It drains." : "It doesn't drain."} ${route.result.why}`,
    ...stations(route, project),
  ];
  if (floor !== null) lines.push(`The floor that goes with its bed lies at least at ${words.length(floor)}.`);
  if (!ways) return lines.join("\n");
  lines.push(
    `At the outlet its bed lies ${words.length(short)} under the ground; it can come out ${reaches === null ? "nowhere along this line" : `as far along as ${words.length(reaches)}`}.`,
  );
  if (ways.shallower) lines.push(`It works if it starts ${words.length(ways.shallower.depth)} deep.`);
  if (ways.gentler) lines.push(`It works with a fall of ${words.slope(ways.gentler.leastFall)}.`);
  const at = ways.outlet?.line.at(-1);
  if (at) lines.push(`The nearest outlet that works lies at ${at[0].toFixed(2)},${at[1].toFixed(2)}.`);
  if (!ways.shallower && !ways.gentler && !ways.outlet)
    lines.push("Nothing nearby works: raise the floor, or take a pipe.");
  return lines.join("\n");
}

function stations({ result }: Route, project: Project): string[] {
  const words = wordsFor(project.display);
  return result.stations.map(
    ({ distance, at, bed, existing }) =>
      `  ${words.length(distance)} on, at ${at[0].toFixed(2)},${at[1].toFixed(2)}: bed ${words.length(bed)}, ${words.length(Math.max(0, existing - bed))} deep`,
  );
}
