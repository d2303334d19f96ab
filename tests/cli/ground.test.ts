import { describe, expect, it } from "vitest";
import { exportCommand } from "../../src/cli/export";
import { importCommand } from "../../src/cli/import";
import { newProject, projectText, surveyEdits } from "../../src/document";
import { run } from "./fakeIo";

const commands = [importCommand, exportCommand];

function project(): string {
  const points = [
    { name: "a", x: 0, y: 0, z: 10 },
    { name: "b", x: 10, y: 0, z: 11 },
    { name: "c", x: 0, y: 10, z: 12 },
  ];
  const edit = surveyEdits.joinPoints.run(newProject("p"), { points, from: "lot" });
  if (!edit.ok) throw new Error(edit.why);
  return projectText(edit.project);
}

describe("export and import", () => {
  it.each(["dxf", "xml", "geojson"])("writes .%s, which import reads back in metres", async (ending) => {
    const wrote = await run(["export", "p.json", "--to", `o.${ending}`], commands, { "p.json": project() });
    expect([wrote.code, wrote.said]).toEqual([0, ""]);
    expect(wrote.out).toMatch(/: 3 points, 0 breaklines, contours at \d+ heights, 1 triangle, in metres\.$/);
    const text = new TextDecoder().decode(wrote.written.get(`o.${ending}`));
    const read = await run(["import", "f", "--json"], commands, { f: text });
    const { unit, points, faces } = JSON.parse(read.out);
    expect(unit).toBe("m");
    expect(points).toEqual({ names: ["a", "b", "c"], x: [0, 10, 0], y: [0, 0, 10], z: [10, 11, 12] });
    expect(faces.triangles.length).toBe(3);
  });

  it("writes points as CSV", async () => {
    const { out, written } = await run(["export", "p.json", "--to=o.csv"], commands, { "p.json": project() });
    expect(out).toBe("o.csv: 3 points, in metres.");
    expect(new TextDecoder().decode(written.get("o.csv"))).toBe(
      "name,x (m),y (m),z (m),kind\na,0,0,10,ground\nb,10,0,11,ground\nc,0,10,12,ground\n",
    );
  });

  it("asks for the unit of a table, and takes it", async () => {
    const files = { "t.csv": "x,y,z\n10,0,1\n0,10,2\n10,10,3" };
    expect((await run(["import", "t.csv"], commands, files)).out).toContain(
      "the file doesn't say; give it with --unit",
    );
    const { out } = await run(["import", "t.csv", "--unit", "ft", "--json"], commands, files);
    expect(JSON.parse(out).points.x[0]).toBeCloseTo(3.048, 12);
  });

  it("takes a window of a grid, and thins it with what that costs", async () => {
    const heights = Array.from({ length: 21 * 21 }, (_, i) => ((i % 21) - 10) ** 2).join(" ");
    const grid = `ncols 21\nnrows 21\nxllcenter 0\nyllcenter 0\ncellsize 1\n${heights}`;
    const cut = await run(["import", "g.asc", "--window", "2,3,4,3.5"], commands, { "g.asc": grid });
    expect(cut.out).toContain("East 2 to 4, north 3 to 3, height 36 to 64.");
    const thin = await run(["import", "g.asc", "--most=121"], commands, { "g.asc": grid });
    expect(thin.out).toContain("121 points");
    expect(thin.said).toContain("What was left out differs by at most 1 ");
  });

  it("says that nothing has a height", async () => {
    const { out } = await run(["import", "t.csv"], commands, { "t.csv": "x,y\n10,0\n0,10" });
    expect(out).toContain("East 0 to 10, north 0 to 10, no heights.");
  });

  it.each([
    [["export", "p.json"], "Expected --to"],
    [["export", "p.json", "--to", "o.png"], "expected a name that ends in .csv, .dxf, .geojson or .xml"],
    [["export", "e.json", "--to", "o.dxf"], "has no placed points and no breaklines"],
    [["import", "none.csv"], "there is no such file"],
    [["import", "p.json", "--unit", "rod"], "expected one of m, cm"],
    [["import", "p.json"], "not GeoJSON"],
    [["import", "p.json", "--window", "1,2,3"], "expected four numbers west,south,east,north"],
    [["import", "p.json", "--most", "many"], "expected a whole number of heights"],
  ])("refuses %j", async (args, words) => {
    const files = { "p.json": project(), "e.json": projectText(newProject("e")) };
    const { code, said, written } = await run(args, commands, files);
    expect([code, written.size]).toEqual([2, 0]);
    expect(said).toContain(words);
  });
});
