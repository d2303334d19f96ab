import { answers as answersOf } from "../solve/answers";
import { createSolver } from "../solve/pipeline";
import { wordsFor } from "../solve/words";
import { readArgs } from "./args";
import type { Command } from "./command";
import { openFile, problemLine } from "./project";

export const answers: Command = {
  name: "answers",
  usage: "answers FILE [--json]",
  about: [
    "What people ask about floor, foundation, drive and quantities, answered for a project:",
    "the figure, the place that decides, the margin, and what would change it.",
  ].join("\n"),
  async run(args, io) {
    const read = readArgs(args, { files: ["FILE"], flags: ["json"] });
    const [file = ""] = read.files;
    const { project, warnings } = openFile(file, io);
    for (const warning of warnings) io.say(`${file}: ${problemLine(warning).trim()}`);
    const all = answersOf(project, createSolver().solve(project), wordsFor(project.display));
    if (read.has("json")) io.out(JSON.stringify(all, null, 2));
    else if (all.length === 0) io.out("Nothing can be answered yet: it needs ground and a building.");
    else
      io.out(
        all
          .map(({ question, answer, where, margin, change }) =>
            [question, ...[answer, where, margin, change].filter(Boolean).map((line) => `  ${line}`)].join(
              "\n",
            ),
          )
          .join("\n\n"),
      );
    return 0;
  },
};
