import { describe, expect, it } from "vitest";
import { surface } from "../../src/cli/surface";
import { run } from "./fakeIo";

const SLOPE = "name,x,y,z\na,0,0,0\nb,4,0,3\nc,4,4,3\nd,0,4,0\n";
const surfaceOf = (args: string[], files: Record<string, string>) =>
  run(["surface", ...args], [surface], files);

async function json(args: string[], files: Record<string, string>) {
  const { code, out } = await surfaceOf(args, files);
  expect(code).toBe(0);
  return JSON.parse(out);
}

describe("surface", () => {
  it("counts and measures: a slope of 3 in 4 over 4 x 4, 5/4 as large along it", async () => {
    expect(await json(["p.csv"], { "p.csv": SLOPE })).toEqual({
      points: 4,
      triangles: 2,
      planArea: 16,
      surfaceArea: 20,
      at: [],
    });
  });

  it("answers each place in order: inside, on a corner, on a side, outside", async () => {
    const { at } = await json(["p.csv", "--at", "q.csv"], {
      "p.csv": SLOPE,
      "q.csv": "x,y\n1,2\n4,4\n0,1\n-1,2\n2,2",
    });
    expect(at).toEqual([
      { x: 1, y: 2, z: 0.75, inside: true, slope: 0.75, downhill: 270 },
      { x: 4, y: 4, z: 3, inside: true, slope: 0.75, downhill: 270 },
      { x: 0, y: 1, z: 0, inside: true, slope: 0.75, downhill: 270 },
      { x: -1, y: 2, z: null, inside: false, slope: null, downhill: null },
      { x: 2, y: 2, z: 1.5, inside: true, slope: 0.75, downhill: 270 },
    ]);
  });

  it.each([
    ["north", "a,0,0,2\nb,1,0,2\nc,0,1,1\n", 0],
    ["east", "a,0,0,2\nb,1,0,1\nc,0,1,2\n", 90],
    ["south", "a,0,0,2\nb,1,0,2\nc,0,1,3\n", 180],
    ["west", "a,0,0,2\nb,1,0,3\nc,0,1,2\n", 270],
    ["north-west", "a,0,0,2\nb,1,0,3\nc,0,1,1\n", 315],
    ["nowhere: it is level", "a,0,0,2\nb,1,0,2\nc,0,1,2\n", null],
  ])("gives the way downhill: %s", async (_way, rows, downhill) => {
    const { at } = await json(["p.csv", "--at=q.csv"], {
      "p.csv": `name,x,y,z\n${rows}`,
      "q.csv": "x,y\n.2,.2",
    });
    expect(at[0].downhill).toBe(downhill);
  });

  it("takes breaklines in, and says what there is to say on standard error only", async () => {
    const files = {
      "p.csv": `${SLOPE}e,0,0,9\n`,
      "l.csv": "line,x,y,z\nditch,0,2,-1\nditch,4,2,-1\n",
      "q.csv": "x,y\n2,2\n",
    };
    const { code, out, said } = await surfaceOf(["p.csv", "--lines", "l.csv", "--at", "q.csv"], files);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ points: 6, triangles: 4, planArea: 16, at: [{ z: -1 }] });
    expect(said).toBe(
      "p.csv, line 6: this point stands where that of line 2 does. Its height 9 was left out, 0 holds.",
    );
  });

  it.each([
    [
      ["p.csv"],
      { "p.csv": "name,x,y,z\na,1,2,NaN\n" },
      'p.csv, line 2, column z: found "NaN", expected a number',
    ],
    [["p.csv"], { "p.csv": "name,x,y,z\na,1,2,3\n" }, "expected at least 3"],
    [
      ["p.csv", "--at", "q.csv"],
      { "p.csv": SLOPE, "q.csv": "x,y\n1,\n" },
      "q.csv, line 2, column y: found nothing",
    ],
    [
      ["p.csv", "--lines", "l.csv"],
      { "p.csv": SLOPE, "l.csv": "line,x,y\na,1,1\n" },
      "expected at least two",
    ],
    [["p.csv", "--at", "none.csv"], { "p.csv": SLOPE }, "none.csv"],
    [["p.csv", "--on", "q.csv"], { "p.csv": SLOPE }, "--on"],
    [[], {}, "POINTS.csv"],
  ])("refuses bad input with exit code 2 and words (%#)", async (args, files, part) => {
    const { code, out, said } = await surfaceOf(args, files as Record<string, string>);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(said).toContain(part);
  });
});
