import { type Command, InputError, type Io } from "../../src/cli/command";
import { runCommand } from "../../src/cli/main";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly said: string;
  readonly written: ReadonlyMap<string, Uint8Array>;
}

/** Runs one command over files held in memory. */
export async function run(
  args: readonly string[],
  commands: readonly Command[],
  files: Record<string, string> = {},
): Promise<Ran> {
  const out: string[] = [];
  const said: string[] = [];
  const written = new Map<string, Uint8Array>();
  const readText = (path: string) => {
    const text = files[path];
    if (text === undefined) throw new InputError(`Can't read ${path}: there is no such file.`);
    return text;
  };
  const io: Io = {
    readText,
    readBytes: (path) => new TextEncoder().encode(readText(path)),
    writeBytes: (path, bytes) => void written.set(path, bytes),
    out: (text) => void out.push(text),
    say: (text) => void said.push(text),
  };
  const code = await runCommand(args, io, commands);
  return { code, out: out.join("\n"), said: said.join("\n"), written };
}
