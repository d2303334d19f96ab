// @ts-check
/** node tests/bench/join-points.mjs [points]: so many points join a demo plan and everything is solved anew; seconds and memory. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { repository } from "../../src/start/repository.mjs";

const folder = join(repository, ".cache", "bench");
const entry = join(folder, "join-points-entry.ts");
if (process.argv[2] !== "run") {
  mkdirSync(folder, { recursive: true });
  const from = (/** @type {string} */ path) => JSON.stringify(join(repository, "src", path));
  writeFileSync(
    entry,
    `export { openProject, surveyEdits } from ${from("document")};
export { createSolver } from ${from("solve/pipeline")};
export { joiningPoints } from ${from("app/import/join")};`,
  );
  await build({
    configFile: false,
    root: repository,
    logLevel: "error",
    build: {
      ssr: entry,
      outDir: folder,
      emptyOutDir: false,
      rollupOptions: { output: { entryFileNames: "join-points.mjs" } },
    },
  });
  const count = process.argv[2] ?? "1000000";
  const run = spawnSync(process.execPath, [import.meta.filename, "run", count], { stdio: "inherit" });
  process.exit(run.status ?? 1);
}

const { createSolver, joiningPoints, openProject, surveyEdits } = await import(
  join(folder, "join-points.mjs")
);
const count = Number(process.argv[3]);
let seed = 1;
function random() {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
}
const column = () => new Float64Array(count);
const [x, y, z] = [column(), column(), column()];
for (let i = 0; i < count; i++) {
  const [east, north] = [Math.round(random() * 2e6) / 1e3, Math.round(random() * 2e6) / 1e3];
  const height = 50 + 0.01 * east - 0.02 * north + Math.sin(east / 30) + random() * 0.1;
  [x[i], y[i], z[i]] = [east, north, Math.round(height * 1e3) / 1e3];
}
const none = new Float64Array(0);
const faces = { x: none, y: none, z: none, triangles: new Uint32Array(0) };
const opened = openProject(
  readFileSync(join(repository, "demo-projects/pottery-studio.drysill.json"), "utf8"),
);
if (!opened.ok) throw new Error("The demo plan wasn't opened.");
const solver = createSolver();
solver.solve(opened.project);
const start = performance.now();
const points = joiningPoints({ points: { names: new Array(count).fill(""), x, y, z }, faces });
const edit = surveyEdits.joinPoints.run(opened.project, { points, from: "a file" });
if (!edit.ok) throw new Error(edit.why);
const joined = performance.now();
let longest = 0;
let last = performance.now();
const steps = solver.solveInSteps(edit.project);
let step = steps.next();
for (; ; step = steps.next()) {
  longest = Math.max(longest, performance.now() - last);
  last = performance.now();
  if (step.done) break;
}
const { ground } = step.value;
const solved = performance.now();
if (!ground || ground.tin.x.length < count) throw new Error("Not all of them make ground.");
const seconds = (/** @type {number} */ ms) => (ms / 1000).toFixed(1);
const most = process.resourceUsage().maxRSS / 1024;
console.log(
  `${count} points: joined in ${seconds(joined - start)} s, solved in ${seconds(solved - joined)} s, the longest step ${seconds(longest)} s; most memory ${most.toFixed(0)} MB (the process)`,
);
