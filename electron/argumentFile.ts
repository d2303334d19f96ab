import { statSync } from "node:fs";
import { resolve } from "node:path";

/** The project file among a command line's arguments (the last one named), or null. It need not exist. */
export function fileOfArguments(args: readonly string[], folder: string): string | null {
  for (const argument of args.slice(1).reverse()) {
    if (argument === "" || argument.startsWith("-")) continue;
    const path = resolve(folder, argument);
    if (path.endsWith(".json") || isFile(path)) return path;
  }
  return null;
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
