import { buildIfStale } from "../../src/start/build.mjs";
import { servePage } from "../../src/start/serve.mjs";
import { ensureChromium } from "./chromium.mjs";
import { ensureDisplay } from "./display.mjs";
import { ensureElectron } from "./testElectron.mjs";

/** Once before all tests: a fresh build, the page on loopback, Chromium, Electron and a display. */
export default async function globalSetup(): Promise<() => Promise<void>> {
  buildIfStale();
  process.env.CHROMIUM = ensureChromium();
  process.env.ELECTRON = ensureElectron();
  const endDisplay = await ensureDisplay();
  const server = await servePage();
  process.env.DRYSILL_PAGE = server.address;
  return async () => {
    endDisplay();
    await server.close();
  };
}
