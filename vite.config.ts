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

// The page: one build, served by the loopback server and loaded by Electron (Chromium 108 and up).
export default defineConfig({
  base: "./",
  plugins: [react(), policyInPage],
  build: { target: "chrome108", sourcemap: true, chunkSizeWarningLimit: 2000 },
  worker: { format: "es" },
  test: {
    projects: [
      {
        extends: true,
        test: { name: "engine", environment: "node", include: ["tests/**/*.test.ts"] },
      },
      {
        extends: true,
        test: { name: "views", environment: "jsdom", include: ["tests/**/*.test.tsx"] },
      },
    ],
  },
});
