import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, it } from "vitest";
import { importedNames } from "./rooms";

const repository = resolve(import.meta.dirname, "../..");

/** Every package that the product ships, with the reason for it. A new one needs a line here. */
const reasons: Readonly<Record<string, string>> = {
  delaunator: "the triangulation under the ground",
  flatqueue: "the priority queue of the flood that finds ponds",
  geotiff: "terrain from GeoTIFF files",
  konva: "the plan's canvas: layers, hit tests, dragging",
  "pdfjs-dist": "pages of a PDF as pictures under the plan",
  pdfkit: "vector PDF with a subset of the font",
  proj4: "latitudes and longitudes on a local plane",
  react: "panels and dialogs",
  "react-aria-components": "accessible fields, tables, menus and dialogs",
  "react-dom": "React's way to the page",
  "react-konva": "Konva's shapes as React components",
  "robust-predicates": "exact orientation where a sign decides topology",
  saxes: "LandXML as a stream, strictly",
  zod: "the project file's schema, checked on opening",
  zustand: "the store",
};

/** Every package that only building and testing need, with the reason for it. */
const toolReasons: Readonly<Record<string, string>> = {
  "@biomejs/biome": "format and lint in one",
  "@playwright/test": "the window by real mouse and keyboard",
  "@testing-library/react": "panels as a person reads them, without a window",
  "@types/node": "types",
  "@types/pdfkit": "types",
  "@types/react": "types",
  "@types/react-dom": "types",
  "@vitejs/plugin-react": "React in the page's build",
  "axe-core": "the automatic check of accessibility",
  electron: "the window's types, and the window itself where it can be had",
  "fast-check": "properties over drawn examples",
  jsdom: "a document for the panels' tests",
  typescript: "types",
  vite: "the page's and the command line's build",
  vitest: "unit tests",
};

const manifest: { dependencies: Record<string, string>; devDependencies: Record<string, string> } =
  JSON.parse(readFileSync(join(repository, "package.json"), "utf8"));

it("ships only packages that have a reason", () => {
  expect(Object.keys(manifest.dependencies).sort()).toEqual(Object.keys(reasons).sort());
});

it("builds and tests with packages that have a reason", () => {
  expect(Object.keys(manifest.devDependencies).sort()).toEqual(Object.keys(toolReasons).sort());
});

it("names every package exactly, without a range", () => {
  const versions = Object.values({ ...manifest.dependencies, ...manifest.devDependencies });
  expect(versions.filter((version) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});

it("imports in src/ only packages that it ships, and ships only packages that it imports", () => {
  const names = readdirSync(join(repository, "src"), { recursive: true, encoding: "utf8" });
  const texts = names
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(repository, "src", name), "utf8"));
  const bare = texts.flatMap(importedNames).filter((name) => !/^(\.|node:)/.test(name));
  const packages = new Set(bare.map((name) => name.match(/^(@[^/]+\/)?[^/]+/)?.[0] ?? name));
  expect([...packages].filter((name) => !(name in reasons))).toEqual([]);
  const unused = Object.keys(reasons).filter((name) => !packages.has(name));
  expect(unused).toEqual([]);
});
