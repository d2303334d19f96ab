import { describe, expect, it } from "vitest";
import { readLines, readPlaces, readPoints, readRing } from "../../src/files/points";
import { readSurface } from "../../src/files/surface";

const POINTS = "name,x,y,z\n";

describe("marks among points", () => {
  it("are no ground: passed over, and told", () => {
    const read = readPoints("name,x,y,z,kind\na,0,0,1,ground\nslab,2,2,3,mark\nb,1,0,1,", "p.csv");
    expect(read).toMatchObject({
      ok: true,
      points: { names: ["a", "b"], lines: [2, 4] },
      notes: ["p.csv: one mark is no ground: left out."],
    });
  });
});

describe("points", () => {
  it("are read with their names and lines, in any order of columns", () => {
    const read = readPoints("z,name,y,x\n1.5,a,2,3\n\n-2e-1,,5,6\n", "p.csv");
    if (!read.ok) throw new Error(read.message);
    const { names, x, y, z, lines } = read.points;
    expect([names, [...x], [...y], [...z], lines]).toEqual([
      ["a", ""],
      [3, 6],
      [2, 5],
      [1.5, -0.2],
      [2, 4],
    ]);
    expect(read.notes).toEqual([]);
  });

  it("name the column of a value that is no number", () => {
    const read = readPoints(`${POINTS}a,1,2,3\nb,1,inf,3\n`, "p.csv");
    expect(read).toMatchObject({ ok: false });
    expect(!read.ok && read.message).toContain('p.csv, line 3, column y: found "inf", expected a number');
  });

  it("places need x and y only", () => {
    expect(readPlaces("x,y\n1,2\n", "q.csv")).toMatchObject({ ok: true, places: [[1, 2]] });
    expect(readPlaces("x,z\n1,2\n", "q.csv")).toMatchObject({ ok: false });
  });
});

describe("a polygon", () => {
  it.each([
    ["open", "x,y\n0,0\n4,0\n4,3\n"],
    ["closed", "x,y\n0,0\n4,0\n4,3\n0,0\n"],
    ["with a corner twice", "x,y\n0,0\n4,0\n4,0\n4,3\n"],
  ])("%s", (_how, source) => {
    expect(readRing(source, "r.csv")).toMatchObject({
      ok: true,
      ring: [
        [0, 0],
        [4, 0],
        [4, 3],
      ],
    });
  });

  it.each([
    ["x,y\n0,0\n4,0\n0,0\n", "r.csv: found 2 different corners, expected at least 3."],
    ["x,y\n", "r.csv: found 0 different corners"],
    ["x,y\n0,0\n4,0\n8,0\n", "r.csv: the corners lie in one line"],
    [
      "x,y\n0,0\n4,0\n0,3\n5,3\n",
      "r.csv: the side from line 3 to line 4 and the side from line 5 to line 2 meet",
    ],
  ])("that is none is refused in words (%#)", (source, part) => {
    const read = readRing(source, "r.csv");
    expect(!read.ok && read.message).toContain(part);
  });
});

describe("breaklines", () => {
  it("gather their corners by name, with or without heights", () => {
    const read = readLines("line,x,y,z\na,0,0,1\nb,5,5,\na,1,1,\nb,6,6,2\n", "l.csv");
    expect(read).toMatchObject({
      ok: true,
      lines: [
        { name: "a", x: [0, 1], y: [0, 1], z: [1, null] },
        { name: "b", x: [5, 6], y: [5, 6], z: [null, 2] },
      ],
      rows: [
        [2, 4],
        [3, 5],
      ],
    });
    expect(readLines("line,x,y\na,0,0\na,1,1\n", "l.csv")).toMatchObject({
      ok: true,
      lines: [{ z: [null, null] }],
    });
  });

  it.each([
    ["line,x,y\na,0,0\n", 'l.csv, line 2, column line: the line "a" has only this corner'],
    ["line,x,y\n,0,0\n", "l.csv, line 2, column line: found nothing, expected a name"],
    ["x,y\n0,0\n", "l.csv, line 1: the column line can't be found"],
  ])("that can't be are refused in words (%#)", (source, part) => {
    const read = readLines(source, "l.csv");
    expect(!read.ok && read.message).toContain(part);
  });
});

describe("a surface from files", () => {
  const square = `${POINTS}a,0,0,0\nb,10,0,1\nc,10,10,2\nd,0,10,1\n`;
  const fileOf = (text: string) => ({ file: "p.csv", text });
  const linesOf = (text: string) => ({ file: "l.csv", text });

  it.each([
    [POINTS, "p.csv: found 0 points, expected at least 3 at different places."],
    [`${POINTS}a,0,0,0\nb,1,1,1\n`, "p.csv: found 2 points, expected at least 3"],
    [
      `${POINTS}a,0,0,0\nb,1,1,1\nc,1,1,2\n`,
      "p.csv: found 3 points, expected at least 3 at different places.",
    ],
    [`${POINTS}a,0,0,0\nb,1,1,1\nc,2,2,2\n`, "p.csv: found 3 points that lie in one straight line"],
  ])("needs three places not in line (%#)", (source, part) => {
    const read = readSurface(fileOf(source));
    expect(!read.ok && read.message).toContain(part);
  });

  it("tells of doubled points, by their lines", () => {
    const read = readSurface(fileOf(`${square}e,0,0,7\nf,10,0,1\n`));
    expect(read.ok && read.notes).toEqual([
      "p.csv, line 6: this point stands where that of line 2 does. Its height 7 was left out, 0 holds.",
      "p.csv, line 7: this point stands where that of line 3 does.",
    ]);
  });

  it("tells of breaklines whose heights disagree", () => {
    const lines = "line,x,y,z\na,1,1,4\na,9,9,4\nb,1,9,6\nb,9,1,6\nc,0,0,3\nc,2,1,3\n";
    const read = readSurface(fileOf(square), linesOf(lines));
    expect(read.ok && read.notes).toEqual([
      'The line "c" has a corner at 0, 0 with the height 3, where 0 stands already; 0 holds.',
      'The lines "a" and "b" cross at 5, 5 with the heights 4 and 6; 5 was taken.',
    ]);
  });

  it("refuses corners without a height outside the points, each by its line", () => {
    const read = readSurface(fileOf(square), linesOf("line,x,y\na,1,1\na,20,20\na,30,20\n"));
    expect(read.ok).toBe(false);
    const [one, other] = (read.ok ? "" : read.message).split("\n");
    expect(one).toMatch(/^l\.csv, line 3, column z: found nothing, expected a height/);
    expect(other).toMatch(/^l\.csv, line 4, column z/);
  });

  it("shows a few messages of one kind and counts the rest", () => {
    const few = readSurface(fileOf(square + "x,0,0,0\n".repeat(8)));
    expect(few.ok && few.notes).toHaveLength(8);
    const read = readSurface(fileOf(square + "x,0,0,0\n".repeat(11)));
    expect(read.ok && read.notes).toHaveLength(9);
    expect(read.ok && read.notes[8]).toBe("… and 3 more like these.");
  });
});
