import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { repository } from "../../src/start/repository.mjs";

/** Bundles the host's page into a folder, ready to be served. */
export async function buildHostPage(folder: string): Promise<void> {
  await build({
    configFile: false,
    logLevel: "warn",
    publicDir: false,
    build: {
      outDir: folder,
      emptyOutDir: true,
      target: "chrome108",
      lib: {
        entry: join(repository, "e2e/support/hostPage.ts"),
        formats: ["es"],
        fileName: () => "host.js",
      },
    },
  });
  writeFileSync(
    join(folder, "index.html"),
    '<!doctype html><title>Host</title><script type="module" src="host.js"></script>',
  );
}
