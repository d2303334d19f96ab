/** npm start, as a person runs it: with a screen, without one, and ended by Ctrl-C. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { copyFile, readFile } from "node:fs/promises";
import { join } from "node:path";
import { repository } from "../src/start/repository.mjs";
import { ended, expect, test } from "./support/fixtures";

const started: ChildProcess[] = [];
test.afterEach(() => {
  for (const { pid, exitCode, signalCode } of started.splice(0)) {
    if (pid && exitCode === null && signalCode === null) process.kill(-pid, "SIGKILL");
  }
});

/** Starts with settings in a folder of its own; says what it printed so far. */
function start(settings: string, environment: NodeJS.ProcessEnv, args: readonly string[] = []) {
  const child = spawn(process.execPath, ["src/start/start.mjs", ...args], {
    cwd: repository,
    detached: true,
    env: { ...process.env, XDG_CONFIG_HOME: settings, ...environment },
  });
  started.push(child);
  let printed = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream.on("data", (chunk) => {
      printed += chunk;
    });
  }
  return { child, printed: () => printed };
}

/** Ctrl-C reaches every process that the terminal started. */
const interrupt = ({ pid }: ChildProcess) => pid && process.kill(-pid, "SIGINT");

test("opens the window, and ends it at Ctrl-C as by its close button", async ({ folder }) => {
  const file = join(folder, "studio.drysill.json");
  await copyFile(join(repository, "demo-projects/pottery-studio.drysill.json"), file);
  const { child, printed } = start(folder, {}, [file]);
  const opened = () => existsSync(join(folder, "Drysill", "recent.json"));
  await expect.poll(opened, { timeout: 30_000 }).toBe(true);
  interrupt(child);
  expect(await ended(child)).toBe(0);
  expect(printed()).toBe("");
  expect(JSON.parse(await readFile(join(folder, "Drysill", "window.json"), "utf8"))).toHaveProperty("width");
});

test("serves the demo to a browser where there is no screen, in one line, until Ctrl-C", async ({
  folder,
}) => {
  const { child, printed } = start(folder, { DISPLAY: "", WAYLAND_DISPLAY: "" });
  await expect.poll(printed, { timeout: 30_000 }).toMatch(/\n$/);
  const line =
    /^There is no display, so Drysill runs in a browser at (http:\/\/127\.0\.0\.1:\d+\/\?demo=pottery-studio) /;
  expect(printed()).toMatch(line);
  expect(printed().trim().split("\n")).toHaveLength(1);
  const answer = await fetch(line.exec(printed())?.[1] ?? "");
  expect(await answer.text()).toContain("<title>Drysill</title>");
  interrupt(child);
  expect(await ended(child)).toBe(0);
});
