import { readLevelBook } from "../files/levelBook";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";

export const level: Command = {
  name: "level",
  usage: "level BOOK.csv",
  about: [
    "Reduces a level book and prints it as JSON.",
    "",
    "BOOK.csv has the columns point,bs,is,fs,elevation,remark: a row per point in book order. The known elevation",
    "stands in a benchmark's row; a second one closes the run. A row with fs and bs is a turning point.",
    "",
    "  setups[{ hi, on }]                       height of instrument, unadjusted, and the point backsighted",
    "  points[{ name, elevation, adjusted }]    one a row; elevation as found, adjusted with its share of the misclosure",
    "  sumBs, sumFs, pageCheck                  sum of bs - sum of fs = last - first height",
    "  misclosure                               found - known; null where the run isn't closed",
    "  closings[{ name, known, found, misclosure }]   every known elevation that closes a run",
    "",
    "One unit of length in and out. --json is taken too; it prints nothing else.",
  ].join("\n"),
  async run(args, io) {
    const [file = ""] = readArgs(args, { files: ["BOOK.csv"], flags: ["json"] }).files;
    const read = readLevelBook(io.readText(file), file);
    if (!read.ok) throw new InputError(read.message);
    for (const note of read.notes) io.say(note);
    io.out(JSON.stringify(read.book, null, 2));
    return 0;
  },
};
