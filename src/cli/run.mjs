/**
 * Starts the command line: builds its bundle when missing or older than its sources, then runs it.
 *
 * Each build stands in a folder named after the state of the sources, and is put there by one rename, so that two
 * processes may build at once. Builds of earlier states go once they are an hour old: a process may still be
 * loading from a younger one.
 */
import { existsSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { stripVTControlCharacters } from "node:util";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const builds = join(root, "dist-cli");
const HOUR = 3_600_000;

// Standard error carries only our own messages.
process.removeAllListeners("warning");
process.on("warning", () => {});

/** A name for the state of the sources: newest change and number of files. */
function sourceState() {
  let newest = 0;
  let count = 0;
  const look = (path) => {
    newest = Math.max(newest, statSync(path).mtimeMs);
    count++;
  };
  for (const name of ["package.json", "package-lock.json"]) look(join(root, name));
  for (const entry of readdirSync(join(root, "src"), { recursive: true, withFileTypes: true })) {
    if (entry.isFile()) look(join(entry.parentPath ?? entry.path, entry.name));
  }
  return `${Math.round(newest)}-${count}`;
}

async function build(target) {
  const half = `${target}.${process.pid}.part`;
  try {
    const { build: bundle } = await import("vite");
    await bundle({
      root,
      configFile: false,
      logLevel: "silent",
      publicDir: false,
      ssr: { noExternal: true, external: ["pdfkit"] },
      build: {
        ssr: "src/cli/main.ts",
        outDir: half,
        emptyOutDir: true,
        target: "node20",
        minify: false,
        rolldownOptions: { output: { entryFileNames: "main.mjs", chunkFileNames: "[name]-[hash].mjs" } },
      },
    });
    renameSync(half, target);
  } catch (error) {
    rmSync(half, { recursive: true, force: true });
    // Another process was quicker: its build is as good.
    if (!existsSync(join(target, "main.mjs"))) throw error;
  }
}

function removeOldBuilds(current) {
  for (const name of readdirSync(builds)) {
    const path = join(builds, name);
    if (path === current) continue;
    try {
      if (Date.now() - statSync(path).mtimeMs > HOUR) rmSync(path, { recursive: true, force: true });
    } catch {
      // Another process removed it first.
    }
  }
}

async function start() {
  if (Number(process.versions.node.split(".")[0]) < 20) {
    throw new Error(`Drysill's command line needs Node 20 or newer; this is ${process.versions.node}.`);
  }
  const target = join(builds, sourceState());
  if (!existsSync(join(target, "main.mjs"))) {
    await build(target);
    removeOldBuilds(target);
  }
  const { main } = await import(pathToFileURL(join(target, "main.mjs")).href);
  // npm runs scripts in the project's folder and tells where the user stood.
  const folder = process.env.npm_lifecycle_event === "drysill" ? process.env.INIT_CWD : undefined;
  process.exitCode = await main(process.argv.slice(2), folder ?? process.cwd());
}

start().catch((error) => {
  const lines = stripVTControlCharacters(String(error?.message ?? error)).split("\n");
  const what = lines
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .slice(0, 3);
  process.stderr.write(`The command line can't be started: ${what.join(" ")}\n`);
  process.exitCode = 1;
});
