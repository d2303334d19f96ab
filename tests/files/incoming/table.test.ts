import { describe, expect, it } from "vitest";
import {
  guessTable,
  type Incoming,
  inMetres,
  readIncoming,
  readTableFile,
} from "../../../src/files/incoming";

async function read(text: string): Promise<Incoming> {
  const result = await readTableFile("p.csv", text, guessTable(text));
  if (!result.ok) throw new Error(result.message);
  return result.incoming;
}
const rows = ({ points: { names, x, y, z } }: Incoming) => names.map((name, i) => [name, x[i], y[i], z[i]]);

describe("a table's form is guessed", () => {
  it.each([
    [
      "commas and a header",
      "name,x,y,z\na,1,2,3.5\nb,4,5,6.25\n",
      [
        ["a", 1, 2, 3.5],
        ["b", 4, 5, 6.25],
      ],
    ],
    [
      "semicolons and decimal commas",
      "Point;Easting;Northing;Height\n1;10,5;20,25;3\n2;11;21;4,125",
      [
        ["1", 10.5, 20.25, 3],
        ["2", 11, 21, 4.125],
      ],
    ],
    [
      "tabs, as pasted",
      "x\ty\tz\n1\t2\t3\n4\t5\t6",
      [
        ["", 1, 2, 3],
        ["", 4, 5, 6],
      ],
    ],
    [
      "tabs with decimal commas",
      "1,5\t2,5\t3,5\n4,5\t5,5\t6,5",
      [
        ["", 1.5, 2.5, 3.5],
        ["", 4.5, 5.5, 6.5],
      ],
    ],
    [
      "spaces",
      "1  100.5 200.5  5.25\n2  101.5 201.5  6.25\n",
      [
        ["1", 100.5, 200.5, 5.25],
        ["2", 101.5, 201.5, 6.25],
      ],
    ],
    [
      "no header, no names",
      "1,2,3\n4,5,6",
      [
        ["", 1, 2, 3],
        ["", 4, 5, 6],
      ],
    ],
    [
      "northing first, with a remark",
      "1,200,100,5,oak\n2,201,101,6,fence",
      [
        ["1", 100, 200, 5],
        ["2", 101, 201, 6],
      ],
    ],
    ["northing first by name", "pt,northing,easting,elev\n1,200,100,5\n", [["1", 100, 200, 5]]],
    [
      "quotes, CRLF, a byte-order mark, a remark and a minus of print",
      '\ufeffname,x,y,z\r\n# done by hand\r\n"a, ""b""",1,\u22122,3\r\n',
      [['a, "b"', 1, -2, 3]],
    ],
    [
      "carriage returns alone",
      "x,y,z\r1,2,3\r4,5,6\r",
      [
        ["", 1, 2, 3],
        ["", 4, 5, 6],
      ],
    ],
  ])("%s", async (_what, text, expected) => {
    expect(rows(await read(text))).toEqual(expected);
  });

  it("shows the first rows and the names of the columns", () => {
    const { form, columns, uses, rows: shown } = guessTable("no;E;N;H;by\n1;1,5;2;3;ann\n2;2,5;3;4;bob");
    expect(form).toEqual({ separator: ";", decimal: ",", header: true });
    expect(columns).toEqual(["no", "E", "N", "H", "by"]);
    expect(uses).toEqual(["name", "x", "y", "z", "skip"]);
    expect(shown).toEqual([
      ["1", "1,5", "2", "3", "ann"],
      ["2", "2,5", "3", "4", "bob"],
    ]);
  });
});

describe("a table's content", () => {
  it("asks for the unit, and tells the two feet apart", async () => {
    const incoming = await read("x,y,z\n1000000,0,10\n0,1,1\n1,1,1");
    expect(incoming.units).toEqual({ known: false });
    const apart =
      (inMetres(incoming, "ft-us").points.x[0] as number) - (inMetres(incoming, "ft").points.x[0] as number);
    // 1200/3937 m against 0.3048 m: two parts in a million.
    expect(apart).toBeCloseTo(0.6096, 4);
    expect(inMetres(incoming, "ft", [999_000, 0]).points.x[0]).toBeCloseTo(304.8, 9);
    expect(inMetres(incoming, "m", [0, 0], "ft").points.z[0]).toBeCloseTo(3.048, 12);
  });

  it("places latitudes and longitudes: a degree of the meridian at 45° is 111 132 m (WGS 84 ellipsoid)", async () => {
    const incoming = await read("name,lat,lon,z\na,44.5,9,1\nb,45.5,9,2\n");
    const { y, x } = incoming.points;
    expect((y[1] as number) - (y[0] as number)).toBeCloseTo(111_131.8, -1);
    expect(Math.abs(x[0] as number)).toBeLessThan(1e-6);
    expect(incoming.crs).toContain("latitude 45°, longitude 9°");
    // The file says nothing of its heights; feet turn them, never the places.
    expect(incoming.units).toEqual({ known: false });
    const feet = inMetres(incoming, "ft");
    expect(feet.points.y).toEqual(y);
    expect(feet.points.z[1]).toBeCloseTo(0.6096, 12);
    expect((await read("name,lat,lon,height (m)\na,44.5,9,1\nb,45.5,9,2\n")).units).toEqual({
      known: true,
      unit: "m",
    });
  });

  it("keeps a point without a height, and says so", async () => {
    const incoming = await read("x,y,z\n1,2,\n3,4,5\n9,4,5\n3,9,5");
    expect(incoming.points.z[0]).toBeNaN();
    expect(incoming.warnings).toEqual(["p.csv: 1 of 4 points has no height; it makes no ground."]);
  });

  it("reads lines by name", async () => {
    const { lines } = await read("line,x,y,z\nd,0,0,1\nd,1,0,2\ne,0,0,1\ne,1,0,1\ne,1,1,1\ne,0,0,1");
    expect(lines.map(({ name, closed, xyz }) => [name, closed, [...xyz]])).toEqual([
      ["d", false, [0, 0, 1, 1, 0, 2]],
      ["e", true, [0, 0, 1, 1, 0, 1, 1, 1, 1]],
    ]);
  });

  it.each(["nan", "NaN", "Infinity", "1e999", "0x10", "--", "1 2"])(
    "passes a row with %s over, and names it",
    async (odd) => {
      const incoming = await read(`x,y,z\n1,2,3\n4,${odd},6\n7,8,9\n7,9,9`);
      expect(rows(incoming).length).toBe(3);
      expect(incoming.warnings).toEqual([
        "p.csv: 1 of 4 rows were passed over.",
        `p.csv, line 3, column 2: found "${odd}", expected a number.`,
      ]);
    },
  );

  it("refuses a table whose rows mostly can't be read, with the first lines", async () => {
    const text = "x,y,z\na,b,c\nd,e,f\n1,2,3";
    const result = await readTableFile("p.csv", text, {
      form: { separator: ",", decimal: ".", header: true },
      uses: ["x", "y", "z"],
    });
    expect(result).toMatchObject({ ok: false, stopped: false });
    expect(!result.ok && result.message).toContain("p.csv: 2 of 3 rows can't be read.");
    expect(!result.ok && result.message).toContain('p.csv, line 2, column 1: found "a", expected a number.');
  });

  it.each([
    ["one point", "x,y,z\n1,2,3", "found one point. A surface needs at least three."],
    ["two points", "x,y,z\n1,2,3\n2,3,4", "found two points. A surface needs at least three."],
    ["all in a line", "x,y,z\n0,0,1\n1,1,1\n2,2,1\n5,5,9", "all 4 points lie in one straight line."],
    [
      "two heights at one place",
      "x,y,z\n0,0,1\n1,0,1\n0,1,1\n0,0,1.75",
      "1 point stands where an earlier one does. At 1 of them the heights differ, by up to 0.75",
    ],
  ])("tells of %s", async (_what, text, words) => {
    expect((await read(text)).warnings.join()).toContain(words);
  });

  it("stops when asked, and tells how far it is", async () => {
    const signal = { aborted: false };
    const shares: number[] = [];
    const text = `x,y,z\n${"1.5,2.5,3.5\n".repeat(100_000)}`;
    const progress = (share: number) => {
      shares.push(share);
      if (shares.length === 2) signal.aborted = true;
    };
    const result = await readIncoming("p.csv", new TextEncoder().encode(text), {}, { progress, signal });
    expect(result).toEqual({
      ok: false,
      stopped: true,
      message: "The import was stopped. Nothing was changed.",
    });
    expect(shares.length).toBe(2);
    expect(shares[1]).toBeGreaterThan(shares[0] as number);
  });
});

describe("the unit that a table's heads name", () => {
  it.each([
    ["name,x (m),y (m),z (m)", { known: true, unit: "m" }],
    ["name,East [mm],North [mm]", { known: true, unit: "mm" }],
    ["name,x (US ft),y (US ft),z (US ft)", { known: true, unit: "ft-us" }],
    // Which foot it is, a person has to say.
    ["name,x (ft),y (ft),z (ft)", { known: false }],
    ["name,x (m),y (m),z (ft)", { known: false }],
    ["name,x (m),y (m),z", { known: false }],
    ["name,x,y,z", { known: false }],
  ])("%s", async (head, units) => {
    const incoming = await read(`${head}\na,1,2,3\nb,4,5,6\n`);
    expect(incoming.units).toEqual(units);
    expect(incoming.points.x[1]).toBe(4);
  });
});
