// @ts-check
/** Renders assets/icon.svg to assets/icons/icon-N.png with Chromium: node e2e/support/icons.mjs */
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { repository } from "../../src/start/repository.mjs";
import { chromiumArguments, ensureChromium } from "./chromium.mjs";

const sizes = [16, 24, 32, 48, 64, 128, 256, 512];

const drawing = readFileSync(join(repository, "assets/icon.svg"), "utf8");
const folder = join(repository, "assets/icons");
mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: ensureChromium(), args: chromiumArguments });
try {
  const page = await browser.newPage();
  for (const size of sizes) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(
      `<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${drawing}`,
    );
    await page.screenshot({ path: join(folder, `icon-${size}.png`), omitBackground: true });
  }
} finally {
  await browser.close();
}
