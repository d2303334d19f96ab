/** The ground of a plan goes out and comes back into an empty plan: the same triangles, marks as marks, contours left out. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { joiningEdits } from "../../../src/app/import/join";
import { newProject, openProject, type Project } from "../../../src/document";
import { type Incoming, inMetres, readIncoming } from "../../../src/files/incoming";
import {
  dxfFile,
  geoJsonFile,
  landXmlFile,
  type Outgoing,
  outgoing,
  pointsCsv,
} from "../../../src/files/outgoing";
import { createSolver } from "../../../src/solve/pipeline";
import { trianglesOf } from "./drawn";

const writers: readonly (readonly [string, (out: Outgoing) => string])[] = [
  ["g.dxf", dxfFile],
  ["g.xml", (out) => landXmlFile(out, "2026-05-04")],
  ["g.geojson", (out) => geoJsonFile(out)],
];

function demo(name: string): Project {
  const opened = openProject(readFileSync(`demo-projects/${name}.drysill.json`, "utf8"));
  if (!opened.ok) throw new Error(name);
  return opened.project;
}

const outOf = (project: Project): Outgoing => outgoing(project, createSolver().solve(project));

async function received(file: string, text: string): Promise<Incoming> {
  const read = await readIncoming(file, new TextEncoder().encode(text));
  if (!read.ok) throw new Error(read.message);
  return inMetres(read.incoming, "m");
}

function joined(incoming: Incoming): Project {
  return joiningEdits("g", incoming, {}).reduce((project, run) => {
    const edit = run(project);
    if (!edit.ok) throw new Error(edit.why);
    return edit.project;
  }, newProject("back"));
}

const shapes = ({ survey }: Project) =>
  survey.breaklines.map(({ kind, name, points }) => ({ kind, name, points }));
const known = ({ survey }: Project) =>
  survey.marks.filter(({ at }) => at).map(({ name, at, height }) => [name, at, height.m]);

describe.each(["potting-barn", "joinery-shed", "pottery-studio", "open-hillside"])("%s", (name) => {
  const project = demo(name);
  const out = outOf(project);

  it.each(writers)("comes back from %s as the same ground", async (file, write) => {
    const back = joined(await received(file, write(out)));
    expect(known(back)).toEqual(known(project));
    expect(shapes(back)).toEqual(shapes(project));
    expect(trianglesOf(outOf(back).surface)).toEqual(trianglesOf(out.surface));
  });

  it("comes back from CSV with its marks told from its ground", async () => {
    const back = joined(await received("p.csv", pointsCsv(out)));
    expect(known(back)).toEqual(known(project));
    expect(back.survey.shots.map(({ name: called }) => called)).toEqual(
      out.points.map((point) => point.name),
    );
    if (project.survey.breaklines.length === 0)
      expect(trianglesOf(outOf(back).surface)).toEqual(trianglesOf(out.surface));
  });
});

describe("lines of other people's files", () => {
  const drawing = (layer: string, at: number) =>
    `0\nLINE\n8\n${layer}\n10\n0\n20\n${at}\n30\n1\n11\n5\n21\n${at}\n31\n2\n`;
  const file = (...entities: string[]) => `0\nSECTION\n2\nENTITIES\n${entities.join("")}0\nENDSEC\n0\nEOF\n`;

  it("on one layer are told apart by a number; what lies on a layer of contours stays out", async () => {
    const text = file(drawing("0", 1), drawing("0", 2), drawing("V-CONTOUR-MINOR", 3), drawing("toe", 4));
    const incoming = await received("g.dxf", text);
    const back = joiningEdits("g", incoming, { "layer toe": "bank-toe" })[0]?.(newProject("p"));
    expect(back?.ok && shapes(back.project).map(({ name, kind }) => [name, kind])).toEqual([
      ["0, line 1", "ridge"],
      ["0, line 2", "ridge"],
      ["toe", "bank-toe"],
    ]);
  });
});
