/** Rows of the benchmark about water on a grid, in a process of their own; hollows against scikit-image where it is at hand. */
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";

/** A Python with scikit-image, if one was put there: see tests/support/python/filled_reference.py. */
const own = ".cache/skimage/bin/python";

async function bundled(folder) {
  await build({
    configFile: false,
    logLevel: "silent",
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: "tests/bench/flow-work.ts",
      outDir: folder,
      target: "node20",
      minify: false,
      rolldownOptions: { output: { entryFileNames: "work.mjs" } },
    },
  });
  return join(folder, "work.mjs");
}

/** Median of scikit-image's times over the same heights, ms; null where it isn't at hand. */
function scikitTime(file) {
  try {
    const options = { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] };
    const python = existsSync(own) ? own : "python3";
    return Number(execFileSync(python, ["tests/support/python/fill_time.py", file], options));
  } catch {
    return null;
  }
}

/** Rows { name, unit, median, p95, limit, judged }. `say` gets a word where something can't be compared. */
export async function timeFlow(say) {
  const folder = mkdtempSync(join(tmpdir(), "drysill-bench-"));
  try {
    const file = join(folder, "heights.bin");
    const command = [await bundled(folder), file];
    const rows = JSON.parse(execFileSync(process.execPath, command, { encoding: "utf8" }));
    const filled = rows.pop();
    const theirs = scikitTime(file);
    if (theirs === null) {
      say("no Python with scikit-image is at hand: filled hollows aren't compared with it");
      return rows;
    }
    const name = `${filled.name}; scikit-image in the same run is the figure`;
    return [...rows, { ...filled, name, limit: Math.round(theirs * 10) / 10 }];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
