import { describe, expect, it } from "vitest";
import { closure } from "../../src/cli/closure";
import { square } from "../../src/cli/square";
import { run } from "./fakeIo";

describe("closure", () => {
  const of = (text: string) => run(["closure", "c.csv"], [closure], { "c.csv": text });

  it("prints misclosure, precision, area and the adjusted courses", async () => {
    const { code, out, said } = await of(
      "bearing,distance\nN 0-00-00 E,100\nN 90-00-00 E,100\n180,100\nS 90 W,99\n",
    );
    expect([code, said]).toEqual([0, ""]);
    const json = JSON.parse(out);
    expect(json.misclosure).toBeCloseTo(1, 9);
    expect(json.precision).toBeCloseTo(399, 6);
    expect(json.adjusted).toHaveLength(4);
    expect(json.adjusted[3]).toMatchObject({ x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) });
    expect(json.area).toBeCloseTo(9950, -2);
  });

  it("takes distances with units, in any notation, and answers in metres", async () => {
    const { code, out } = await of('bearing,distance\n0,100 ft\n90,30.48 m\n180,100\' 0"\n270,1199 7/8"\n');
    expect(code).toBe(0);
    const json = JSON.parse(out);
    expect(json.unit).toBe("m");
    expect(json.misclosure).toBeCloseTo(0.003175, 9);
    expect(json.perimeter).toBeCloseTo(121.916825, 9);
  });

  it("refuses units in some rows only", async () => {
    const { code, said } = await of("bearing,distance\n0,100 ft\n90,100\n180,100 ft\n270,100 ft\n");
    expect([code, said]).toEqual([
      2,
      "c.csv, line 3: 100 has no unit, but other rows have. Write a unit to each length, or to none.",
    ]);
  });

  it("takes signs of degrees, minutes and seconds, and curves", async () => {
    const arc = (20 * Math.PI) / 2;
    const { code, out } = await of(
      `bearing,distance,radius,turns\nN 0°00'00" E,80,,\n,${arc},20,R\n90,80,,\n180,100,,\n270,100,,\n`,
    );
    expect(code).toBe(0);
    expect(JSON.parse(out).misclosure).toBeLessThan(1e-9);
    expect(JSON.parse(out).area).toBeCloseTo(9600 + 100 * Math.PI, 6);
  });

  it.each([
    ["bearing,distance\nnorthish,3\n", "c.csv, line 2, column bearing"],
    ["bearing,distance\n10,3\n", "c.csv, line 3: Only 1 course is given"],
    ["bearing,distance\n10,3\n20,3\n30,-3\n", "c.csv, line 4: Its distance is no length"],
    ["bearing,distance,radius,turns\n10,3,5,up\n20,3,,\n30,3,,\n", "a curve turns left or right"],
    ["bearing\n10\n", "the column distance can't be found"],
  ])("%j is refused with the place", async (text, words) => {
    const { code, said, out } = await of(text);
    expect([code, out]).toEqual([2, ""]);
    expect(said).toContain(words);
  });
});

describe("square", () => {
  const of = (text: string) => run(["square", "s.csv"], [square], { "s.csv": text });

  it("takes tapes in feet, inches and fractions, and --json", async () => {
    const rows = "A,B,24'\nB,C,32'\nC,D,24'\nD,A,32'\nA,C,40' 0 1/8\"\nB,D,39' 11 7/8\"\n";
    const { code, out } = await run(["square", "s.csv", "--json"], [square], {
      "s.csv": `from,to,distance\n${rows}`,
    });
    expect(code).toBe(0);
    const json = JSON.parse(out);
    expect(json.unit).toBe("m");
    expect(json.residuals[0].distance).toBeCloseTo(7.3152, 12);
    expect(json.outOfSquare).toBeGreaterThan(0.002);
    expect(json.outOfSquare).toBeLessThan(0.01);
  });

  it("prints corners, residuals and what to move", async () => {
    const { code, out, said } = await of(
      "from,to,distance\nA,B,24\nB,C,32\nC,D,24\nD,A,32\nA,C,40\nB,D,40\n",
    );
    expect([code, said]).toEqual([0, ""]);
    const json = JSON.parse(out);
    expect(json.corners.map(({ name }: { name: string }) => name)).toEqual(["A", "B", "C", "D"]);
    expect(json.residuals).toHaveLength(6);
    expect(json.outOfSquare).toBe(0);
    expect(json.angles[2]).toEqual({ corner: "C", degrees: expect.closeTo(90, 9), off: 0 });
    expect(json.diagonals.map(({ length }: { length: number }) => length)).toEqual(
      [40, 40].map((v) => expect.closeTo(v, 9)),
    );
  });

  it("names a misread tape, ends with 1 and answers by the others", async () => {
    const rows = (ac: string) =>
      `from,to,distance\nA,B,40'\nB,C,30' 0 1/2"\nC,D,40' 0 1/4"\nD,A,30'\nA,C,${ac}\nB,D,49' 11 1/4"\n`;
    const foot = await of(rows(`51' 1 3/8"`));
    expect(foot.code).toBe(1);
    expect(foot.said).toBe(
      "s.csv, line 6: A–C doesn't fit the others: about 0.308 m too long, as with a foot misread. " +
        "Pull A–C again. No corner is to be moved for it; what the other tapes say without it is told apart.",
    );
    const json = JSON.parse(foot.out);
    expect(json.misread).toMatchObject({ from: "A", to: "C", by: expect.closeTo(0.308, 3) });
    expect(json.outOfSquare).toBeLessThan(0.06);
    const wild = await of(rows("80'"));
    expect(wild.said).toContain("A–C can't be 24.384 m: ");
    expect(JSON.parse(wild.out).corners.every(({ y }: { y: number }) => y > -0.1)).toBe(true);
  });

  it.each([
    ["from,to,distance\nA,B,24\nB,C,32\nC,D,24\nD,A,32\n", "Measure a diagonal too"],
    ["from,to,distance\n", "found no rows"],
    ["from,to,distance\nA,,24\n", "line 2, column to"],
    ["from,to,distance\nA,B,long\n", "line 2, column distance"],
    ["from,to,distance\nA,B,24\n\nB,B,32\n", "s.csv, line 4, column to: A measure goes from B to itself"],
    ["from,to,distance\nA,B,24\nB,C,-3\n", "s.csv, line 3, column distance: The measure B–C is no length"],
  ])("%j is refused with the place", async (text, words) => {
    const { code, said } = await of(text);
    expect(code).toBe(2);
    expect(said).toContain(words);
  });
});
