import { builtinModules } from "node:module";
import { defineConfig } from "vite";

// Main and preload, one mode each: bundled as CommonJS for Node 16 (Electron 22) and up. A sandboxed preload
// can't load modules of its own, so nothing but Electron and Node stays outside.
export default defineConfig(({ mode }) => ({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    outDir: "dist-electron",
    emptyOutDir: false,
    target: "node16",
    minify: false,
    sourcemap: true,
    ssr: `electron/${mode}.ts`,
    rolldownOptions: {
      external: ["electron", ...builtinModules, /^node:/],
      output: { format: "cjs", entryFileNames: `${mode}.cjs` },
    },
  },
}));
