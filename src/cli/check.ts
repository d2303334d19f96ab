import { createSolver } from "../solve/pipeline";
import type { Problem } from "../solve/results";
import { allFound } from "../solve/to-look-at";
import { readArgs } from "./args";
import type { Command } from "./command";
import { counted } from "./count";
import { openFile } from "./project";

const SEVERITIES = ["error", "caution", "note"] as const;

export const check: Command = {
  name: "check",
  usage: "check FILE",
  about: [
    "Says whether a project is sound, and lists every problem with its place and how to mend it.",
    "",
    "Exit code 0 when it is sound (it may have cautions), 2 when it has errors or can't be opened.",
  ].join("\n"),
  async run(args, io) {
    const [file = ""] = readArgs(args, { files: ["FILE"] }).files;
    const { project, warnings } = openFile(file, io);
    const unknown = warnings.map(
      ({ path, message }): Problem => ({
        code: "unknown-field",
        severity: "note",
        where: path,
        what: message,
        how: "Is its name spelt as Drysill spells it?",
      }),
    );
    const problems = [...unknown, ...allFound(project, createSolver().solve(project))];
    io.out(report(file, problems));
    const errors = problems.filter(({ severity }) => severity === "error").length;
    if (errors === 0) return 0;
    io.say(`${file} is not sound: ${counted(errors, "error")} to mend.`);
    return 2;
  },
};

function report(file: string, problems: readonly Problem[]): string {
  const counts = SEVERITIES.map((severity) => ({
    severity,
    count: problems.filter((problem) => problem.severity === severity).length,
  })).filter(({ count }) => count > 0);
  const found = counts.map(({ severity, count }) => counted(count, severity)).join(", ");
  const sound = problems.every(({ severity }) => severity !== "error");
  const verdict = `${file}: ${sound ? "sound" : "not sound"}${found === "" ? "." : `; ${found}.`}`;
  return [verdict, ...problemLines(problems)].join("\n");
}

/** Gravest first: severity and place, then what is wrong, then how to mend it. */
export function problemLines(problems: readonly Problem[]): string[] {
  return SEVERITIES.flatMap((severity) =>
    problems
      .filter((problem) => problem.severity === severity)
      .flatMap(({ where, what, how }) => ["", `${severity}: ${where}`, `    ${what}`, `    ${how}`]),
  );
}
