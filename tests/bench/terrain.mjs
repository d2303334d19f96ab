/** Rows of the benchmark about surfaces, in a process of their own; contours against Matplotlib and heights against SciPy where they are at hand. */
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

/** Median of another program's times over what was written to the file, ms; null where it isn't at hand. */
function theirTime(script, file) {
  try {
    const options = { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] };
    return Number(execFileSync("python3", [`tests/support/python/${script}`, file], options));
  } catch {
    return null;
  }
}

/** Rows { name, unit, median, p95, limit, judged }. `say` gets a word where something can't be compared. */
export async function timeTerrain(mostPoints, say) {
  const folder = mkdtempSync(join(tmpdir(), "drysill-bench-"));
  try {
    const [file, places] = [join(folder, "surface.bin"), join(folder, "places.bin")];
    const command = [await bundled(folder), String(mostPoints), file, places];
    const rows = JSON.parse(execFileSync(process.execPath, command, { encoding: "utf8" }));
    const [heights, contours] = rows.splice(-2);
    const against = (row, program, theirs) => {
      if (theirs === null) {
        say(`no Python with ${program} is at hand: ${row.name.split(",")[0]} aren't compared with it`);
        return [];
      }
      const name = `${row.name}; ${program} in the same run is the figure`;
      return [{ ...row, name, limit: Math.round(theirs * 10) / 10 }];
    };
    return [
      ...rows,
      ...against(heights, "SciPy", theirTime("height_time.py", places)),
      ...against(contours, "Matplotlib", theirTime("contour_time.py", file)),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
