import { execFile } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

const here = resolve(__dirname, "../..");
const SLOW = 60_000;
let root = "";

/** A small project with the real launcher and a main of its own. */
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "drysill-cli-"));
  mkdirSync(join(root, "src/cli"), { recursive: true });
  cpSync(join(here, "src/cli/run.mjs"), join(root, "src/cli/run.mjs"));
  symlinkSync(join(here, "node_modules"), join(root, "node_modules"));
  writeFileSync(
    join(root, "package.json"),
    JSON.stringify({ type: "module", scripts: { drysill: "node src/cli/run.mjs" } }),
  );
  writeFileSync(join(root, "package-lock.json"), "{}");
  writeMain("first");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function writeMain(word: string, minutesAhead = 0): void {
  const path = join(root, "src/cli/main.ts");
  writeFileSync(
    path,
    `export async function main(args: string[], folder: string): Promise<number> {
       process.emitWarning("old thing", "DeprecationWarning");
       console.log(JSON.stringify({ word: "${word}", args, folder }));
       return args.length;
     }`,
  );
  const when = new Date(Date.now() + minutesAhead * 60_000);
  utimesSync(path, when, when);
}

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function launch(args: readonly string[] = [], command = "node"): Promise<Ended> {
  const words =
    command === "node" ? [join(root, "src/cli/run.mjs"), ...args] : ["run", "-s", "drysill", "--", ...args];
  const env = { ...process.env, npm_lifecycle_event: undefined, INIT_CWD: undefined };
  return new Promise((done) => {
    const child = execFile(command, words, { cwd: root, env }, (error, out, err) => {
      done({ code: error === null ? 0 : (child.exitCode ?? -1), out, err });
    });
  });
}

function builds(): string[] {
  const folder = join(root, "dist-cli");
  return existsSync(folder) ? readdirSync(folder) : [];
}

describe("the launcher", () => {
  it("builds when nothing is built, then runs what is built; no warnings on standard error", {
    timeout: SLOW,
  }, async () => {
    const first = await launch(["a", "b"]);
    expect(first).toMatchObject({ code: 2, err: "" });
    expect(JSON.parse(first.out)).toEqual({ word: "first", args: ["a", "b"], folder: root });
    const [built] = builds();
    expect(await launch()).toMatchObject({ code: 0, err: "" });
    expect(builds()).toEqual([built]);
  });

  it("builds anew when a source changed", { timeout: SLOW }, async () => {
    await launch();
    writeMain("second", 1);
    expect(JSON.parse((await launch()).out).word).toBe("second");
    expect(builds()).toHaveLength(2);
  });

  it("removes builds that are older than an hour", { timeout: SLOW }, async () => {
    const old = join(root, "dist-cli/old");
    mkdirSync(old, { recursive: true });
    const twoHoursAgo = new Date(Date.now() - 7_200_000);
    utimesSync(old, twoHoursAgo, twoHoursAgo);
    await launch();
    expect(builds()).toHaveLength(1);
    expect(builds()).not.toContain("old");
  });

  it("lets several start at once", { timeout: SLOW }, async () => {
    const all = await Promise.all([launch(), launch(), launch()]);
    for (const { code, out, err } of all) {
      expect([code, err]).toEqual([0, ""]);
      expect(JSON.parse(out).word).toBe("first");
    }
    expect(builds()).toHaveLength(1);
  });

  it("says in one line that it can't be built", { timeout: SLOW }, async () => {
    writeFileSync(join(root, "src/cli/main.ts"), "export const main = (;");
    const { code, out, err } = await launch();
    expect([code, out]).toEqual([1, ""]);
    expect(err).toMatch(/^The command line can't be started: .+\n$/);
    expect(builds()).toEqual([]);
  });

  it("runs through npm, from the folder where the user stands", { timeout: SLOW }, async () => {
    const { out, err } = await launch(["x", "--plane", "-1"], "npm");
    expect(err).toBe("");
    expect(JSON.parse(out)).toEqual({ word: "first", args: ["x", "--plane", "-1"], folder: root });
  });
});
