import { readFileSync } from "node:fs";
import { displaySchema } from "../document/schema";
import type { PaperName, SheetFonts, SitePlanOptions } from "../sheets";
import { createSolver } from "../solve/pipeline";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { openFile } from "./project";

const papers = displaySchema.shape.paper.unwrap().options;

export const sheets: Command = {
  name: "sheets",
  usage: `sheets FILE --out DIR [--paper ${papers.join("|")}] [--date YYYY-MM-DD] [--no-pictures]`,
  about: [
    "Draws the project's sheets as PDF files and prints their paths.",
    "",
    "  site-plan.pdf    the plan at a true scale with corners, trench, set-out and cautions",
    "  foundation.pdf   walls in elevation and sections through the foundation; where there is a building on a ground",
    "",
    "DIR is made where it is missing. The paper is the project's own unless --paper names another; --date is the",
    "day in the title block, today unless given: the same project and day give the same bytes. --no-pictures leaves the",
    "pictures under the plan away.",
  ].join("\n"),
  async run(args, io) {
    const words = readArgs(args, {
      files: ["FILE"],
      values: { out: "a folder", paper: `one of ${papers.join(", ")}`, date: "a day like 2026-11-25" },
      flags: ["no-pictures"],
    });
    const [file = ""] = words.files;
    const out = words.value("out");
    if (out === undefined) throw new InputError("Expected --out and the folder that the sheets go to.");
    const date = readDate(words.value("date"));
    const paper = readPaper(words.value("paper"));
    const project = openFile(file, io).project;
    const { foundationSheet, sitePlan } = await import("../sheets");
    const pictures = !words.has("no-pictures");
    const options: SitePlanOptions = { fonts: readFonts(), date, pictures, ...(paper ? { paper } : {}) };
    const results = createSolver().solve(project);
    const folder = out.replace(/[/\\]+$/, "") || out;
    const write = (name: string, bytes: Uint8Array) => {
      io.writeBytes(`${folder}/${name}`, bytes);
      io.out(`${folder}/${name}`);
    };
    write("site-plan.pdf", await sitePlan(project, results, options));
    if (results.foundation) write("foundation.pdf", await foundationSheet(project, results, options));
    return 0;
  },
};

function readPaper(text: string | undefined): PaperName | undefined {
  if (text === undefined) return undefined;
  const paper = papers.find((one) => one === text.toLowerCase());
  if (!paper) throw new InputError(`--paper ${text}: expected one of ${papers.join(", ")}.`);
  return paper;
}

/** A day that exists; today where none is given. */
function readDate(text: string | undefined): SitePlanOptions["date"] {
  if (text === undefined) {
    const now = new Date();
    return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
  }
  const [, year = 0, month = 0, day = 0] = (/^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? []).map(Number);
  const day0 = new Date(Date.UTC(year, month - 1, day));
  const exists =
    day0.getUTCFullYear() === year && day0.getUTCMonth() === month - 1 && day0.getUTCDate() === day;
  if (!exists || year < 1) throw new InputError(`--date ${text}: expected a day like 2026-11-25.`);
  return { year, month, day };
}

/** The typeface lies two folders up, from the sources and from the built command line alike. */
function readFonts(): SheetFonts {
  const font = (name: string) =>
    new Uint8Array(readFileSync(new URL(`../../assets/fonts/SourceSans3-${name}.ttf`, import.meta.url)));
  return { regular: font("Regular"), semibold: font("SemiBold") };
}
