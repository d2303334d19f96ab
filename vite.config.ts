import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";
import { contentSecurityPolicy } from "./src/start/policy.mjs";

const policyInPage: Plugin = {
  name: "content-security-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: contentSecurityPolicy },
      injectTo: "head-prepend",
    },
  ],
};

/** The PDF reader asks for its JPEG 2000 decoder by this name, and only for a page that needs it. */
const pdfDecoder: Plugin = {
  name: "pdf-decoder",
  apply: "build",
  generateBundle() {
    const name = "openjpeg_nowasm_fallback.js";
    const source = readFileSync(new URL(`node_modules/pdfjs-dist/wasm/${name}`, import.meta.url));
    this.emitFile({ type: "asset", fileName: `pdf/${name}`, source });
  },
};

const plain = ["tests/**/*.test.ts"];
const alone = ["app", "electron", "store"].map((room) => `tests/${room}/**/*.test.ts`);

// The page: one build, served by the loopback server and loaded by Electron (Chromium 108 and up).
export default defineConfig({
  base: "./",
  plugins: [react(), policyInPage, pdfDecoder],
  build: { target: "chrome108", sourcemap: true, chunkSizeWarningLimit: 2000 },
  worker: { format: "es" },
  test: {
    // By itself it leaves a core free, which on two cores is half of them.
    maxWorkers: availableParallelism(),
    // None is a timed test; this only ends one that hangs, on a machine busy with other work too.
    testTimeout: 30_000,
    projects: [
      {
        extends: true,
        // Loading the program takes longer than most tests: files share what is loaded.
        test: { name: "engine", environment: "node", include: plain, exclude: alone, isolate: false },
      },
      {
        extends: true,
        // These put something in a module's place, or watch the window's one state: each file has modules of its own.
        test: { name: "alone", environment: "node", include: alone },
      },
      {
        extends: true,
        test: { name: "views", environment: "jsdom", include: ["tests/**/*.test.tsx"] },
      },
    ],
  },
});
