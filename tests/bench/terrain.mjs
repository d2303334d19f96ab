/** Rows of the benchmark about surfaces, in a process of their own; contours against Matplotlib where it is at hand. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";

async function bundled(folder) {
  await build({
    configFile: false,
    logLevel: "silent",
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: "tests/bench/terrain-work.ts",
      outDir: folder,
      target: "node20",
      minify: false,
      rolldownOptions: { output: { entryFileNames: "work.mjs" } },
    },
  });
  return join(folder, "work.mjs");
}

/** Median of Matplotlib's times over the same surface and levels, ms; null where it isn't at hand. */
function matplotlibTime(file) {
  try {
    const options = { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] };
    return Number(execFileSync("python3", ["tests/support/python/contour_time.py", file], options));
  } catch {
    return null;
  }
}

/** Rows { name, unit, median, p95, limit, judged }. `say` gets a word where something can't be compared. */
export async function timeTerrain(mostPoints, say) {
  const folder = mkdtempSync(join(tmpdir(), "drysill-bench-"));
  try {
    const file = join(folder, "surface.bin");
    const command = [await bundled(folder), String(mostPoints), file];
    const rows = JSON.parse(execFileSync(process.execPath, command, { encoding: "utf8" }));
    const contours = rows.pop();
    const theirs = matplotlibTime(file);
    if (theirs === null) {
      say("no Python with Matplotlib is at hand: contours aren't compared with it");
      return rows;
    }
    const name = `${contours.name}; Matplotlib in the same run is the figure`;
    return [...rows, { ...contours, name, limit: Math.round(theirs * 10) / 10 }];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
