import type { Project } from "../document/schema";
import { createSolver } from "../solve";
import { type OptionFigures, optionFigures, solveOption, unitsOfOptions } from "../solve/compare";
import { formatLength, formatSlope, formatVolume } from "../units";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { jsonText } from "./json";
import { openFile, problemLine } from "./project";

export const compare: Command = {
  name: "compare",
  usage: "compare FILE [--json]",
  about: [
    "Puts the options kept in a project beside the plan as it is now: floor, earth, loads, drive, wall that shows, water, limits.",
    "Wall showing is above the finished ground, the floor above the ground as it is, each at its most along the walls.",
    "",
    "  --json    the figures as JSON; `about` has the unit and rule of each",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, { files: ["FILE"], values: {}, flags: ["json"] });
    const [file = ""] = given.files;
    const { project, warnings } = openFile(file, io);
    for (const warning of warnings) io.say(`${file}: ${problemLine(warning).trim()}`);
    if (project.options.length === 0)
      throw new InputError(
        `${file} keeps no options. Keep one in the window: Edit, Options side by side, or with Ctrl+Shift+B.`,
      );
    const solver = createSolver();
    const now = optionFigures(null, "as it is now", project, solver.solve(project));
    const options = project.options.map((option) => solveOption(solver, project, option).figures);
    const figures = { now, options };
    io.out(
      given.has("json")
        ? jsonText({ ...figures, about: unitsOfOptions(figures) })
        : table(project, [now, ...options]),
    );
    return 0;
  },
};

/** One line an option, columns lined up. */
function table(project: Project, all: readonly OptionFigures[]): string {
  const heads = [
    "option",
    "floor",
    "fill",
    "cut",
    "loads in",
    "loads out",
    "cost",
    "drive",
    "wall showing",
    "floor over ground",
    "water",
    "limits",
  ];
  const lines = [heads, ...all.map((figures) => cells(project, figures))];
  const widths = heads.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

/** Below a heading that says loads: "12", "less than one". */
function shortly(loads: string): string {
  return loads.replace(/ loads?$/, "");
}

function cells({ display }: Project, figures: OptionFigures): string[] {
  const { floor, fill, cut, fillLoadsTold, cutLoadsTold, cost, steepestDrive, wetWalls, walls, breaks } =
    figures;
  const told = <T>(value: T | null, words: (value: T) => string) => (value === null ? "-" : words(value));
  const length = (m: number) => formatLength(m, display.length, display.rounding);
  const volume = (m3: number) => formatVolume(m3, display.volume);
  return [
    figures.name,
    told(floor, length),
    told(fill, volume),
    told(cut, volume),
    told(fillLoadsTold, shortly),
    told(cutLoadsTold, shortly),
    told(cost, (amount) => amount.toFixed(0)),
    told(steepestDrive, ({ grade }) => formatSlope(grade, display.slope)),
    told(figures.mostShowing, ({ m, at }) => `${length(m)} at ${at.replace("wall ", "")}`),
    told(figures.floorAboveGround, ({ m, at }) => `${length(m)} at ${at.replace("wall ", "")}`),
    walls === 0 ? "-" : wetWalls === 0 ? "leaves every side" : `stays on ${wetWalls} of ${walls}`,
    breaks === null ? "kept" : `broken: ${breaks}`,
  ];
}
