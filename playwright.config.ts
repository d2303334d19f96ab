import { availableParallelism } from "node:os";
import { defineConfig } from "@playwright/test";
import { chromiumArguments, findChromium } from "./e2e/support/chromium.mjs";

export default defineConfig({
  testDir: "e2e",
  globalSetup: "./e2e/support/globalSetup.ts",
  outputDir: "test-results",
  snapshotPathTemplate: "{testDir}/looks/{arg}{ext}",
  forbidOnly: true,
  // A page mostly waits for its frames: two side by side take four fifths of the time, more than two only wait for each other.
  workers: Math.min(2, availableParallelism()),
  // A real window on a busy machine sometimes dies on its way out; a second try tells that from a fault.
  retries: process.env.CI ? 1 : 0,
  // Only ends a test that hangs: on a busy machine they take several times as long.
  timeout: 180_000,
  // A record of each step takes its time: where there is a second try, only that one is recorded.
  // What doesn't come within half a minute (a file's dialog, once in some hundred times) won't: the second try may begin.
  use: { trace: process.env.CI ? "on-first-retry" : "retain-on-failure", actionTimeout: 30_000 },
  projects: [
    {
      name: "browser",
      testIgnore: /electron.*\.spec\.ts/,
      use: {
        viewport: { width: 1280, height: 800 },
        launchOptions: { executablePath: findChromium() ?? undefined, args: chromiumArguments },
      },
    },
    {
      name: "electron",
      testMatch: /electron.*\.spec\.ts/,
      // They take some ten seconds; one whose window hangs is tried again sooner.
      timeout: 90_000,
      // Process groups and the settings' folder of its own are Linux's.
      testIgnore: process.platform === "linux" ? [] : /electron-start/,
    },
  ],
});
