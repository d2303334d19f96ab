// @ts-check
/** node tests/bench/import-table.mjs [points]: reading a table of a million points, five times; seconds and memory. */
import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { repository } from "../../src/start/repository.mjs";

const folder = join(repository, ".cache", "bench");
if (process.argv[2] !== "run") {
  mkdirSync(folder, { recursive: true });
  await build({
    configFile: false,
    logLevel: "error",
    build: {
      ssr: join(repository, "src/files/incoming/index.ts"),
      outDir: folder,
      rollupOptions: { output: { entryFileNames: "incoming.mjs" } },
    },
  });
  const count = process.argv[2] ?? "1000000";
  const run = spawnSync(process.execPath, ["--expose-gc", import.meta.filename, "run", count], {
    stdio: "inherit",
  });
  process.exit(run.status ?? 1);
}

const { readIncoming } = await import(join(folder, "incoming.mjs"));
const count = Number(process.argv[3]);
const rows = ["name,x,y,z"];
let seed = 1;
function random() {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
}

for (let i = 0; i < count; i++)
  rows.push(
    `p${i},${(random() * 2000).toFixed(3)},${(random() * 2000).toFixed(3)},${(random() * 50).toFixed(3)}`,
  );
const bytes = new TextEncoder().encode(rows.join("\n"));
rows.length = 0;
globalThis.gc?.();
const times = [];
for (let i = 0; i < 5; i++) {
  const start = performance.now();
  const read = await readIncoming("p.csv", bytes);
  times.push(performance.now() - start);
  if (!read.ok || read.incoming.points.x.length !== count) throw new Error("It wasn't read whole.");
}
times.sort((a, b) => a - b);
const most = process.resourceUsage().maxRSS / 1024;
console.log(
  `${count} points, ${(bytes.length / 1e6).toFixed(1)} MB: median ${(times[2] ?? 0).toFixed(0)} ms of 5; most memory ${most.toFixed(0)} MB (the process, with the file)`,
);
