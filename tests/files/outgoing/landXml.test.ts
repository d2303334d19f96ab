/**
 * The LandXML that goes out against the structure of the format's schema.
 *
 * Source  The element pages of LandXML-1.2.xsd on landxml.org (LandXML-1.2Doc_Breakline, _CgPoints, _P): children, kinds of
 *         numbers, required attributes, unique names. LandXML, Units, Surfaces, Surface, SourceData, Breaklines,
 *         Definition, Pnts, Faces, F, CgPoint, PntList2D and PntList3D after the pages of LandXML-1.1.xsd as it stands in the
 *         NIEM 2.0 release (datypic.com/sc/niem20/e-land_*), which 1.2 left alone by its list of changes. From memory: Metric's
 *         words, Project, Application, Contours and Contour, and the required attributes of LandXML. The whole schema
 *         file itself could not be had.
 */
import fc from "fast-check";
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { landXmlFile } from "../../../src/files/outgoing";
import { grounds } from "./drawn";

interface Rule {
  /** Children in the order that they must stand in. */
  readonly children: readonly string[];
  readonly wants?: Readonly<Record<string, RegExp>>;
  readonly text?: RegExp;
  /** At least so many children in all; exactly one where `one` is set. */
  readonly least?: number;
  readonly one?: true;
  /** Its attribute whose values may not come twice under one parent. */
  readonly unique?: string;
}

const N = "-?\\d+(\\.\\d+)?(e-?\\d+)?";
const list = (size: number) => new RegExp(`^${N}( ${N}){${size - 1}}( ${N}( ${N}){${size - 1}})+$`);

const schema: Readonly<Record<string, Rule>> = {
  LandXML: {
    children: ["Units", "Project", "Application", "CgPoints", "Surfaces"],
    wants: { version: /^1\.2$/, date: /^\d{4}-\d\d-\d\d$/, time: /^\d\d:\d\d:\d\d$/ },
  },
  Units: { children: ["Metric"], one: true },
  Metric: {
    children: [],
    wants: {
      areaUnit: /^squareMeter$/,
      linearUnit: /^meter$/,
      volumeUnit: /^cubicMeter$/,
      temperatureUnit: /^(celsius|kelvin)$/,
      pressureUnit: /^(HPA|milliBars|mmHG|millimeterHG)$/,
    },
  },
  Project: { children: [], wants: { name: /./ } },
  Application: { children: [], wants: { name: /./ } },
  CgPoints: { children: ["CgPoint"] },
  CgPoint: { children: [], unique: "name", text: new RegExp(`^${N} ${N}( ${N})?$`) },
  Surfaces: { children: ["Surface"], least: 1 },
  Surface: { children: ["SourceData", "Definition"], wants: { name: /./ }, least: 1, unique: "name" },
  SourceData: { children: ["Breaklines", "Contours"], least: 1 },
  Breaklines: { children: ["Breakline"] },
  Breakline: {
    children: ["PntList2D", "PntList3D"],
    wants: { brkType: /^(standard|wall|proximity|nondestructive)$/ },
    one: true,
  },
  Contours: { children: ["Contour"] },
  Contour: { children: ["PntList2D"], one: true, wants: { elev: new RegExp(`^${N}$`) } },
  PntList2D: { children: [], text: list(2) },
  PntList3D: { children: [], text: list(3) },
  Definition: { children: ["Pnts", "Faces"], wants: { surfType: /^TIN$/ }, least: 2 },
  Pnts: { children: ["P"], least: 3 },
  P: { children: [], unique: "id", wants: { id: /^[1-9]\d*$/ }, text: new RegExp(`^${N} ${N} ${N}$`) },
  Faces: { children: ["F"], least: 1 },
  F: { children: [], text: /^\d+ \d+ \d+$/ },
};

/** Everything that isn't as the structure has it. */
function faults(text: string): string[] {
  const found: string[] = [];
  const path: { name: string; last: number; text: string; count: number; keys: Set<string> }[] = [];
  let ids = new Set<string>();
  const parser = new SaxesParser();
  parser.on("error", (error) => found.push(error.message));
  parser.on("opentag", ({ name, attributes }) => {
    const parent = path.at(-1);
    const place = parent ? (schema[parent.name]?.children.indexOf(name) ?? -1) : name === "LandXML" ? 0 : -1;
    if (place < (parent?.last ?? 0)) found.push(`${name} in ${parent?.name}`);
    if (parent) {
      parent.last = place;
      parent.count++;
    }
    path.push({ name, last: 0, text: "", count: 0, keys: new Set() });
    if (name === "Pnts") ids = new Set();
    if (name === "P") ids.add(String(attributes.id));
    for (const [key, form] of Object.entries(schema[name]?.wants ?? {}))
      if (!form.test(attributes[key] ?? "")) found.push(`${name} ${key}="${attributes[key]}"`);
    const { unique } = schema[name] ?? {};
    if (unique === undefined) return;
    const key = `${name} ${attributes[unique]}`;
    if (parent?.keys.has(key)) found.push(`${key} twice`);
    parent?.keys.add(key);
  });
  parser.on("text", (piece) => {
    const here = path.at(-1);
    if (here) here.text += piece;
  });
  parser.on("closetag", ({ name }) => {
    const { text: words = "", count = 0 } = path.pop() ?? {};
    const { text: form, least = 0, one } = schema[name] ?? {};
    if (count < least || (one && count !== 1)) found.push(`${name} with ${count} children`);
    if (name === "F")
      for (const id of words.split(" ")) if (!ids.has(id)) found.push(`F of ${id}, which isn't there`);
    if (form ? !form.test(words) : words.trim() !== "") found.push(`${name}: ${words}`);
  });
  parser.write(text).close();
  return found;
}

describe("LandXML", () => {
  it("has the structure of schema 1.2 for any ground", () =>
    fc.assert(
      fc.property(grounds, (out) => {
        expect(faults(landXmlFile(out, "2026-05-04", "10:11:12"))).toEqual([]);
      }),
    ));

  it("the check finds what is out of place", () => {
    const [out] = fc.sample(grounds, { numRuns: 1, seed: 3 });
    const text = landXmlFile(out as never, "2026-05-04");
    expect(faults(text.replace('date="2026-05-04"', ""))).toEqual(['LandXML date="undefined"']);
    expect(
      faults(text.replace(/<Project[^>]*>/, "").replace("</LandXML>", '<Project name="p"/></LandXML>')),
    ).toEqual(["Project in LandXML"]);
    expect(faults(text.replace('<P id="2">', '<P id="1">'))).toContain("P 1 twice");
    expect(faults(text.replace('<P id="2">', '<P id="902">'))).toContain("F of 2, which isn't there");
    expect(faults(text.replace(/<F>.*<\/F>/s, ""))).toEqual(["Faces with 0 children"]);
  });

  it("keeps lines where there is no surface yet, without heights where one is missing", () => {
    const line = {
      name: "ditch",
      kind: "ditch",
      closed: false,
      points: [
        [1, 2, null],
        [3, 4, 5],
      ],
    } as const;
    const text = landXmlFile(
      { name: "p", points: [], marks: [], lines: [line], contours: [], surface: null },
      "2026-05-04",
    );
    expect(faults(text)).toEqual([]);
    expect(text).toContain("<PntList2D>2 1 4 3</PntList2D>");
  });
});
