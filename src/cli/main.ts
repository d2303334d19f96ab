/** The command line: finds the command, runs it, and turns every failure into one clear message. */
import { answers } from "./answers";
import { bill } from "./bill";
import { check } from "./check";
import { closure } from "./closure";
import { type Command, InputError, type Io } from "./command";
import { compare } from "./compare";
import { exportCommand } from "./export";
import { importCommand } from "./import";
import { nodeIo } from "./io";
import { level } from "./level";
import { sheets } from "./sheets";
import { solve } from "./solve";
import { square } from "./square";
import { surface } from "./surface";
import { swale } from "./swale";
import { volume } from "./volume";

const COMMANDS: readonly Command[] = [
  check,
  solve,
  answers,
  bill,
  compare,
  sheets,
  swale,
  level,
  surface,
  volume,
  closure,
  square,
  importCommand,
  exportCommand,
];
const RUN = "npm run -s drysill --";

/** `folder`: where the user stood. Resolves to the exit code: 0 done, 1 our mistake, 2 bad input. */
export function main(args: readonly string[], folder: string): Promise<number> {
  return runCommand(args, nodeIo(folder), COMMANDS);
}

export async function runCommand(
  args: readonly string[],
  io: Io,
  commands: readonly Command[],
): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined) {
    io.say(`Expected a command. ${commandList(commands)}`);
    return 2;
  }
  if (isHelp(name) || name === "help") {
    const about = commands.find((command) => command.name === rest[0]);
    io.out(about === undefined ? programHelp(commands) : commandHelp(about));
    return 0;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    io.say(`There is no command "${name}". ${commandList(commands)}`);
    return 2;
  }
  if (rest.some(isHelp)) {
    io.out(commandHelp(command));
    return 0;
  }
  try {
    return await command.run(rest, io);
  } catch (error) {
    return failure(error, command, io);
  }
}

function failure(error: unknown, command: Command, io: Io): number {
  if (error instanceof InputError) {
    io.say(error.message);
    return 2;
  }
  const [first] = String(error instanceof Error ? error.message : error).split("\n");
  io.say(
    `Drysill made a mistake in "${command.name}": ${first || "no reason given"}. Your files are as they were.`,
  );
  return 1;
}

function isHelp(word: string): boolean {
  return word === "--help" || word === "-h";
}

function commandList(commands: readonly Command[]): string {
  const names = commands.map((command) => command.name).join(", ");
  return `The commands are ${names}; "${RUN} --help" tells what they do.`;
}

function programHelp(commands: readonly Command[]): string {
  const usages = commands.map(({ usage, about }) => `  ${usage}\n      ${about.split("\n")[0]}`);
  return [
    `Usage: ${RUN} COMMAND`,
    "",
    ...usages,
    "",
    `"${RUN} COMMAND --help" tells more of one. Results go to standard output, messages to standard error.`,
    "Exit codes: 0 done, 1 a mistake of the program, 2 bad input.",
  ].join("\n");
}

function commandHelp({ usage, about }: Command): string {
  return `Usage: ${RUN} ${usage}\n\n${about}`;
}
