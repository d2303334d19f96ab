/** The lint step's import rules, tried on seeded mistakes: each must be refused, and the last files must pass. */
import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterAll, expect, it } from "vitest";

const repository = resolve(import.meta.dirname, "../..");
const imports = "lint/style/noRestrictedImports";

const mistakes: [file: string, line: string, rule: string][] = [
  ["src/terrain/a.ts", 'export { useState } from "react";', imports],
  ["src/drawing/b.ts", 'export { Stage } from "react-konva";', imports],
  ["src/document/c.ts", 'export { createStore } from "zustand/vanilla";', imports],
  ["src/solve/d.ts", 'export type { A } from "../store/actions";', imports],
  ["src/terrain/deep/e.ts", 'export { a } from "../../panels";', imports],
  ["src/geometry/f.ts", 'export { a } from "../host/host";', imports],
  ["src/sheets/g.ts", 'export { a } from "../canvas/view";', imports],
  ["src/survey/h.ts", 'export { a } from "../app/main";', imports],
  ["src/files/i.ts", 'export { readFile } from "node:fs";', "lint/correctness/noNodejsModules"],
  ["src/units/j.ts", "export const a = window.name;", "lint/style/noRestrictedGlobals"],
  ["src/panels/k.tsx", 'export { app } from "electron";', imports],
  ["src/canvas/l.ts", 'export { a } from "../start/serve.mjs";', imports],
  ["src/host/m.ts", 'export { readFile } from "node:fs";', "lint/correctness/noNodejsModules"],
  ["electron/n.ts", 'export { a } from "../src/canvas/view";', imports],
  ["electron/o.ts", 'export { a } from "../src/store";', imports],
  ["electron/p.ts", 'export { useState } from "react";', imports],
];

const sound: [file: string, line: string][] = [
  ["src/canvas/q.ts", 'export { a } from "../store/actions";'],
  ["src/terrain/r.ts", 'export { a } from "../geometry";'],
  ["electron/s.ts", 'export { a } from "../src/host/bridge";'],
  ["electron/t.ts", 'export { a } from "../src/look/tokens";'],
  ["src/cli/u.ts", 'export { readFile } from "node:fs";'],
];

const folder = mkdtempSync(join(tmpdir(), "drysill-lint-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it("refuses each seeded mistake, and nothing else", () => {
  copyFileSync(join(repository, "biome.json"), join(folder, "biome.json"));
  for (const [file, line] of [...mistakes, ...sound]) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), `${line}\n`);
  }
  const expected = mistakes.map(([file, , rule]) => `${file} ${rule}`);
  expect(findings()).toEqual(expected.sort());
});

function findings(): string[] {
  const biome = join(repository, "node_modules/@biomejs/biome/bin/biome");
  const args = [biome, "lint", "--reporter=json", "--max-diagnostics=none", "."];
  const { stdout } = spawnSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
  const report: { diagnostics: { category: string; location: { path: unknown } }[] } = JSON.parse(stdout);
  return report.diagnostics.map(({ category, location }) => `${pathIn(location.path)} ${category}`).sort();
}

/** Biome gives the path as text or in a record, by version. */
const pathIn = (path: unknown): string =>
  typeof path === "string" ? path : String((path as { file: string }).file);
