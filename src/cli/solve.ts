import type { Project } from "../document/schema";
import { resultsToJson } from "../solve/json";
import { createSolver } from "../solve/pipeline";
import { farFloor, farFloorWords } from "../solve/plausible";
import type { Results } from "../solve/results";
import { wordsFor } from "../solve/words";
import { parseLength } from "../units";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { jsonText } from "./json";
import { openFile, problemLine } from "./project";
import { summary } from "./summary";

export const solve: Command = {
  name: "solve",
  usage: "solve FILE [--floor H] [--json]",
  about: [
    "Prints what follows from a project: floor, corners, earth, water, trench, set-out.",
    "",
    "  --floor H    another height of the finished floor, in the project's datum: metres, or as typed (99' 5 1/2\")",
    "  --json       all results as JSON: metres, square metres, cubic metres, slopes as rise over run",
    "",
    "The JSON's `about` tells of every figure its unit, the rule it comes by, and where it leans on the ground the share",
    "that is a guess (guessedShare, 0 to 1; a list has one for each item). Its keys are the figures' paths, [] for the items",
    'of a list:  about["earthwork.inside.cut"].unit,  about["drives[].stations[].grade"].rule.',
    "",
    "  sections      cut and fill, m2, through the building both ways, along and across each drive, along drawn lines",
    "  sensitivity   what one inch and 10 mm of floor add in fill, cut, loads in and loads out",
    "  curveInside   volume inside the walls against the floor, exact: from `from` to `to`, with t = floor - zero,",
    "                c0 + c1 t + c2 t^2 + c3 t^3 for fill and for cut",
    "  balance       the floor at which the cut makes the fill;  costs.least, costs.leastAllowed: that of least cost",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, { files: ["FILE"], values: { floor: "a height" }, flags: ["json"] });
    const [file = ""] = given.files;
    const { project, warnings } = openFile(file, io);
    for (const warning of warnings) io.say(`${file}: ${problemLine(warning).trim()}`);
    const floor = floorHeight(given.value("floor"), project, file);
    const results = createSolver().solve(project, floor === undefined ? {} : { floor });
    for (const warning of farFloorSaid(floor, project, results)) io.say(warning);
    io.out(given.has("json") ? jsonText(resultsToJson(results, project)) : summary(project, results));
    return 0;
  },
};

function farFloorSaid(floor: number | undefined, project: Project, { ground }: Results): string[] {
  const far = floor === undefined || !ground ? null : farFloor(floor, ground);
  if (floor === undefined || !far) return [];
  const words = wordsFor(project.display);
  return [
    `--floor ${words.length(floor)} lies ${farFloorWords(far, words)}. Heights are told in the project's datum: check the figure and its unit.`,
  ];
}

function floorHeight(typed: string | undefined, project: Project, file: string): number | undefined {
  if (typed === undefined) return undefined;
  const parsed = parseLength(typed, "m");
  if (!parsed.ok) throw new InputError(`--floor: ${parsed.message}`);
  if (project.building === null)
    throw new InputError(`--floor: there is no building in ${file} yet, so no floor to move.`);
  return parsed.m;
}
