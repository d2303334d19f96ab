// @ts-check

import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { npmElectron } from "./electronBinary.mjs";
import { repository } from "./repository.mjs";

/** How long to wait for the first bytes, and then for any more, ms. */
const patience = 30_000;

const executables = { darwin: "Electron.app/Contents/MacOS/Electron", win32: "electron.exe" };

/**
 * Fetches the binary of npm's Electron, as its own installer does but with words on how far it is.
 * @param {(words: string) => void} say
 * @returns {Promise<string>} the executable; rejects where it can't be had
 */
export async function fetchElectron(say) {
  const folder = join(repository, "node_modules/electron");
  const inElectron = createRequire(join(folder, "package.json"));
  /** @type {{ version: string }} */
  const { version } = inElectron("./package.json");
  const [{ downloadArtifact }, { extract }] = await Promise.all([
    importFrom(inElectron, "@electron/get"),
    importFrom(inElectron, "@electron-internal/extract-zip"),
  ]);
  say(`Fetching Electron ${version} (once) …`);
  const zip = await withPatience((signal, heard) =>
    downloadArtifact({
      version,
      artifactName: "electron",
      platform: process.platform,
      arch: process.arch,
      checksums: inElectron("./checksums.json"),
      downloadOptions: { signal, quiet: true, getProgressCallback: progressIn(say, heard) },
    }),
  );
  say("Unpacking it …");
  const dist = join(folder, "dist");
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(dist, { recursive: true });
  await extract(zip, { dir: dist });
  const platform = /** @type {keyof typeof executables} */ (process.platform);
  writeFileSync(join(folder, "path.txt"), executables[platform] ?? "electron");
  const executable = npmElectron();
  if (!executable) throw new Error("the archive holds no executable");
  return executable;
}

/**
 * @param {NodeJS.Require} from
 * @param {string} name
 */
const importFrom = (from, name) => import(pathToFileURL(from.resolve(name)).href);

/**
 * Runs a download that is given up when nothing is heard for the patience.
 * @template T
 * @param {(signal: AbortSignal, heard: () => void) => Promise<T>} download
 */
async function withPatience(download) {
  const giveUp = new AbortController();
  const timer = setTimeout(
    () => giveUp.abort(new Error(`nothing came for ${patience / 1000} seconds`)),
    patience,
  );
  try {
    return await download(giveUp.signal, () => timer.refresh());
  } finally {
    clearTimeout(timer);
  }
}

/**
 * Says every tenth part fetched.
 * @param {(words: string) => void} say
 * @param {() => void} heard
 */
function progressIn(say, heard) {
  let told = 0;
  return async (/** @type {{ transferred: number, total: number | null }} */ { transferred, total }) => {
    heard();
    const tenth = total ? Math.floor((10 * transferred) / total) : 0;
    if (tenth <= told || !total) return;
    told = tenth;
    say(`  ${Math.round(transferred / 1e6)} of ${Math.round(total / 1e6)} MB`);
  };
}
