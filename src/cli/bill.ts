import { billCsv } from "../solve/bill-csv";
import { createSolver } from "../solve/pipeline";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { openFile, problemLine } from "./project";

export const bill: Command = {
  name: "bill",
  usage: "bill FILE",
  about: [
    "Prints the bill of a project as comma-separated values.",
    "",
    "In the order of work and in the project's own units. Columns: stage, item, quantity, unit (yd3 or m3, ft2 or m2, ft or m, pieces,",
    "loads, hours), least, most, waste (a share), loose volume, weight and loads on the truck, price for one unit as typed, cost, how",
    "it came about.",
  ].join("\n"),
  async run(args, io) {
    const [file = ""] = readArgs(args, { files: ["FILE"] }).files;
    const { project, warnings } = openFile(file, io);
    for (const warning of warnings) io.say(`${file}: ${problemLine(warning).trim()}`);
    const results = createSolver().solve(project);
    if (results.bill.length === 0)
      throw new InputError(`${file}: no bill yet: it needs ground, a building and its floor.`);
    io.out(billCsv(results, project.display).trimEnd());
    return 0;
  },
};
