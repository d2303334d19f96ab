import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { complaints, importedNames, readRooms, type Sources } from "./rooms";

const repository = resolve(import.meta.dirname, "../..");
const rooms = readRooms(readFileSync(join(repository, "src/README.md"), "utf8"));

function sourcesIn(folder: string): [string, string][] {
  const names = readdirSync(join(repository, folder), { recursive: true, encoding: "utf8" });
  const files = names.map((name) => `${folder}/${name.replaceAll("\\", "/")}`);
  return files
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path))
    .map((path) => [path, readFileSync(join(repository, path), "utf8")]);
}

describe("the rooms of the program", () => {
  const sources: Sources = new Map([...sourcesIn("src"), ...sourcesIn("electron")]);

  it("are all in the table of src/README.md, and import only what it allows", () => {
    expect(sources.size).toBeGreaterThan(100);
    expect(complaints(sources, rooms)).toEqual([]);
  });

  it("each have a row, and each row a room", () => {
    const folders = readdirSync(join(repository, "src"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect([...rooms.keys()].filter((room) => room !== "results").sort()).toEqual(folders.sort());
  });
});

describe("the check itself", () => {
  const sound: [string, string][] = [
    ["src/geometry/index.ts", "export const a = 1;"],
    ["src/terrain/index.ts", 'import { a } from "../geometry";\nexport const b = a;'],
    ["src/solve/results.ts", 'import type { b } from "../terrain/index";'],
    ["src/survey/index.ts", 'import type { R } from "../solve/results";'],
    ["src/solve/pipeline.ts", 'import "../survey";\nimport type { R } from "./results";'],
    ["src/canvas/plan.tsx", 'import { R } from "../solve/results";\nimport "./plan.css";'],
    ["src/app/main.tsx", 'const page = await import("../canvas/plan");'],
    ["src/host/host.ts", "export type Host = 1;"],
    ["electron/main.ts", 'import type { Host } from "../src/host/host";'],
  ];
  const with_ = (...more: [string, string][]) => complaints(new Map([...sound, ...more]), rooms);

  it("has no complaint about sound imports", () => expect(with_()).toEqual([]));

  it.each([
    ["an engine room that imports a view", "src/terrain/x.ts", 'import { p } from "../canvas/plan";'],
    ["a type-only import of a view", "src/drawing/x.ts", 'import type { p } from "../canvas/plan";'],
    ["a re-export", "src/units/x.ts", 'export * from "../geometry";'],
    ["a dynamic import", "src/solve/x.ts", 'const p = import("../canvas/plan");'],
    ["an import over several lines", "src/geometry/x.ts", 'import {\n  b,\n} from "../terrain";'],
    ["a stage that imports the chain", "src/survey/x.ts", 'import "../solve/pipeline";'],
    ["main importing a view", "electron/x.ts", 'import { p } from "../src/canvas/plan";'],
    ["a page part importing main", "src/panels/x.tsx", 'import "../../electron/main";'],
    ["a worker of another room", "src/units/x.ts", 'new URL("../geometry/index.ts", import.meta.url)'],
  ])("sees %s", (_what, path, line) => {
    const said = with_([path, line]).filter((words) => words.includes("may not import"));
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(path);
  });

  it("sees an import that leads nowhere", () =>
    expect(with_(["src/terrain/x.ts", 'import "../geometry/gone";'])).toEqual([
      "src/terrain/x.ts imports src/geometry/gone, which is not there",
    ]));

  it("sees an import from outside src/", () =>
    expect(with_(["src/terrain/x.ts", 'import "../../tests/support/near";'])).toEqual([
      "src/terrain/x.ts imports tests/support/near, outside src/",
    ]));

  it("sees a room that isn't in the table", () =>
    expect(with_(["src/annex/x.ts", "export {};"])).toEqual(["src/annex is not in the table"]));

  it("sees rooms that import each other", () =>
    expect(with_(["src/canvas/x.ts", 'import "../app/main";'])).toContain("canvas is in a cycle of rooms"));

  it("sees a table that names a room it does not list", () =>
    expect(complaints(new Map(), readRooms("| `a` | x | b |"))).toEqual([
      "the table lets a use b, which it does not list",
    ]));

  it("reads no import out of a comment", () =>
    expect(importedNames('// import "a";\n/* import b from "b"; */\nimport c from "c"; // from "d"')).toEqual(
      ["c"],
    ));
});
