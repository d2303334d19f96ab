import { buildIfStale } from "../../src/start/build.mjs";
import { servePage } from "../../src/start/serve.mjs";
import { ensureChromium } from "./chromium.mjs";
import { ensureDisplay } from "./display.mjs";
import { MissingTool } from "./systemPackages.mjs";
import { ensureElectron } from "./testElectron.mjs";

/** Once before all tests: a fresh build, the page on loopback, Chromium, Electron and a display. */
export default async function globalSetup(): Promise<() => Promise<void>> {
  buildIfStale();
  provide("CHROMIUM", ensureChromium);
  provide("ELECTRON", ensureElectron);
  const endDisplay = await ensureDisplay();
  const server = await servePage();
  process.env.DRYSILL_PAGE = server.address;
  return async () => {
    endDisplay();
    await server.close();
  };
}

/** A missing tool fails only the tests that need it; what to install is said here, once. */
function provide(variable: string, ensure: () => string): void {
  try {
    process.env[variable] = ensure();
  } catch (error) {
    if (!(error instanceof MissingTool)) throw error;
    console.error(error.message);
  }
}
