import { describe, expect, it } from "vitest";
import { volume } from "../../src/cli/volume";
import { run } from "./fakeIo";

const SLOPE = "name,x,y,z\na,0,0,0\nb,4,0,4\nc,4,4,4\nd,0,4,0\n";
const volumeOf = (args: string[], files: Record<string, string>) => run(["volume", ...args], [volume], files);

describe("volume", () => {
  it("to a plane: a wedge of 2 x 4 x 2 / 2 on either side of the middle", async () => {
    const { code, out, said } = await volumeOf(["p.csv", "--plane", "2"], { "p.csv": SLOPE });
    expect([code, said]).toEqual([0, ""]);
    const eight = expect.closeTo(8, 12);
    expect(JSON.parse(out)).toEqual({
      cut: eight,
      fill: eight,
      net: expect.closeTo(0, 12),
      cutArea: eight,
      fillArea: eight,
      planArea: 16,
    });
  });

  it("below a datum and with an exponent", async () => {
    const { out } = await volumeOf(["p.csv", "--plane", "-1e0"], { "p.csv": SLOPE });
    expect(JSON.parse(out)).toMatchObject({ cut: 48, fill: 0, net: -48, planArea: 16 });
  });

  it("within a polygon: a wedge 1 deep at most over 1 x 2", async () => {
    const files = { "p.csv": SLOPE, "r.csv": "x,y\n2,1\n3,1\n3,3\n2,3\n2,1\n" };
    const { out, said } = await volumeOf(["p.csv", "--plane", "3", "--within", "r.csv"], files);
    const { fill, cut, net, planArea } = JSON.parse(out);
    expect([fill, cut, net, planArea]).toEqual([1, 0, 1, 2].map((v) => expect.closeTo(v, 12)));
    expect(said).toBe("");
  });

  it("tells how much of a polygon lies beyond the points, and reckons on the rest", async () => {
    const files = { "p.csv": SLOPE, "r.csv": "x,y\n3,0\n7,0\n7,4\n3,4\n" };
    const { code, out, said } = await volumeOf(["p.csv", "--plane", "0", "--within", "r.csv"], files);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ planArea: expect.closeTo(4, 12), cut: expect.closeTo(14, 12) });
    expect(said).toBe("The polygon reaches beyond the points: an area of 12 of its 16 was left out.");
  });

  it("to a second surface, with a word on what they don't share", async () => {
    const files = { "p.csv": SLOPE, "t.csv": "name,x,y,z\na,2,0,5\nb,8,0,5\nc,8,4,5\nd,2,4,5\n" };
    const { out, said } = await volumeOf(["p.csv", "--to", "t.csv"], files);
    expect(JSON.parse(out)).toEqual({
      cut: 0,
      fill: expect.closeTo(16, 12),
      net: expect.closeTo(16, 12),
      cutArea: 0,
      fillArea: expect.closeTo(8, 12),
      planArea: expect.closeTo(8, 12),
    });
    expect(said).toBe(
      "The surfaces don't cover each other: an area of 8 of the first and 16 of the second was left out.",
    );
  });

  it.each([
    [["p.csv"], {}, "either --plane and a height or --to and a file"],
    [["p.csv", "--plane", "1", "--to", "p.csv"], {}, "either --plane"],
    [["p.csv", "--plane", "high"], {}, '--plane: found "high", expected a number'],
    [["p.csv", "--plane", "Infinity"], {}, '--plane: found "Infinity"'],
    [["p.csv", "--plane", " "], {}, '--plane: found " "'],
    [["p.csv", "--plane", "0x10"], {}, '--plane: found "0x10"'],
    [["p.csv", "--plane", "1", "--within", "r.csv"], { "r.csv": "x,y\n0,0\n1,1\n" }, "expected at least 3"],
    [["p.csv", "--plane", "1", "--within", "r.csv"], { "r.csv": "x,y\n90,0\n91,1\n90,9" }, "don't overlap"],
    [["p.csv", "--to", "t.csv"], { "t.csv": "name,x,y,z\na,80,0,0\nb,81,0,0\nc,80,1,0\n" }, "don't overlap"],
    [
      ["p.csv", "--to", "t.csv"],
      { "t.csv": "name,x,y,z\na,80,0,0\n" },
      "t.csv: found 1 point, expected at least 3",
    ],
  ])("refuses bad input with exit code 2 and words (%#)", async (args, files, part) => {
    const { code, out, said } = await volumeOf(args, {
      "p.csv": SLOPE,
      ...(files as Record<string, string>),
    });
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(said).toContain(part);
  });
});
