import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { label, number, numberOrBlank, optional, readTable, text } from "../../src/files/csv";

const points = { name: label, x: number, y: number, z: numberOrBlank };

function read(source: string) {
  const table = readTable(source, "points.csv", points);
  if (!table.ok) throw new Error(table.message);
  return table;
}

function refusal(source: string): string {
  const table = readTable(source, "points.csv", points);
  if (table.ok) throw new Error("was accepted");
  return table.message;
}

describe("what a table may look like", () => {
  const expected = [
    { line: 2, name: "A", x: 1, y: 2.5, z: -3 },
    { line: 3, name: "B", x: 0.001, y: 2000, z: null },
  ];
  it.each([
    ["plain", "name,x,y,z\nA,1,2.5,-3\nB,1e-3,+2E3,\n"],
    ["heads that tell metres", "name,x (m),Y [m],z (m)\nA,1,2.5,-3\nB,1e-3,+2E3,\n"],
    ["a byte-order mark and CRLF", "\ufeffname,x,y,z\r\nA,1,2.5,-3\r\nB,1e-3,2000,\r\n"],
    ["CR alone, no end of line at the end", "name,x,y,z\rA,1,2.5,-3\rB,.001,2000.,"],
    ["spaces about the cells, names in capitals", "NAME , X, Y ,Z\n A , 1 ,2.5, -3\nB,1e-3,2e3,  "],
    ["columns in another order", "z,y,x,name\n-3,2.5,1,A\n,2000,0.001,B"],
    ["quoted numbers", '"name","x","y","z"\n"A","1","2.5","-3"\n"B", "0.001" ,"2000",""'],
    ["semicolons with decimal commas", "name;x;y;z\nA;1;2,5;-3\nB;0,001;2000;"],
    ["semicolons with decimal points", "name;x;y;z\nA;1;2.5;-3\nB;0.001;2000;"],
    ["tabs", "name\tx\ty\tz\nA\t1\t2.5\t-3\nB\t0.001\t2000\t"],
    ["a real minus sign", "name,x,y,z\nA,1,2.5,\u22123\nB,0.001,2000,"],
    ["a row that leaves off its last, empty cell", "name,x,y,z\nA,1,2.5,-3\nB,0.001,2000"],
    ["more separators than columns", "name,x,y,z,,\nA,1,2.5,-3,,\nB,0.001,2000,,,"],
  ])("%s", (_what, source) => {
    const table = read(source);
    expect(table.rows).toEqual(expected);
    expect(table.notes).toEqual([]);
  });

  it("counts lines through blank rows and line breaks inside quotes", () => {
    const table = read('name,x,y,z\n\n"A, the ""big""\nstone",1,2,3\n,,,\n  \nB,4,5,6');
    expect(table.rows).toEqual([
      { line: 3, name: 'A, the "big"\nstone', x: 1, y: 2, z: 3 },
      { line: 7, name: "B", x: 4, y: 5, z: 6 },
    ]);
  });

  it("keeps a quote that stands inside a plain text", () => {
    const table = readTable("name,remark\nA,door 6' 8\" high", "a.csv", { name: label, remark: text });
    expect(table.ok && table.rows[0]?.remark).toBe("door 6' 8\" high");
  });

  it("says which unknown column it passed over", () => {
    const table = read("name,x,y,z,colour\nA,1,2,3,red");
    expect(table.rows).toEqual([{ line: 2, name: "A", x: 1, y: 2, z: 3 }]);
    expect(table.notes).toEqual([
      'points.csv, line 1: the column "colour" is not known here and was passed over.',
    ]);
  });

  it("looks only at numbers for the decimal sign", () => {
    const columns = { name: label, z: numberOrBlank };
    const table = readTable("name;z\nroad 1.2, edge;\nst. 5;2,5\n;", "a.csv", columns);
    expect(table.ok && table.rows.map((row) => row.z)).toEqual([null, 2.5]);
    const points = readTable("name;z\na, b;1.5", "a.csv", columns);
    expect(points.ok && points.rows[0]?.z).toBe(1.5);
  });

  it("does without an optional column", () => {
    const columns = { x: number, z: optional(numberOrBlank) };
    const without = readTable("x\n1", "a.csv", columns);
    expect(without.ok && without.rows).toEqual([{ line: 2, x: 1, z: null }]);
    const withIt = readTable("x,z\n1,2", "a.csv", columns);
    expect(withIt.ok && withIt.rows).toEqual([{ line: 2, x: 1, z: 2 }]);
  });

  it("reads a header without rows as no rows", () => {
    expect(read("name,x,y,z\n").rows).toEqual([]);
  });
});

describe("what is refused, and how it is named", () => {
  it.each([
    "NaN",
    "nan",
    "Infinity",
    "-Infinity",
    "inf",
    "1e999",
    "abc",
    "1 2",
    "0x10",
    "1e",
    "--1",
    "1.2.3",
    "-",
    ".",
    "1,5",
  ])("%s is not a number", (cell) => {
    expect(refusal(`name,x,y,z\nA,1,2,3\nB,4,"${cell}",6`)).toBe(
      `points.csv, line 3, column y: found "${cell}", expected a number such as 12.345 or 1.2e3.`,
    );
  });

  it("an empty cell where a number must be", () => {
    expect(refusal("name,x,y,z\nA,1,,3")).toBe(
      "points.csv, line 2, column y: found nothing, expected a number such as 12.345 or 1.2e3.",
    );
    expect(refusal("name,x,y,z\nA,1")).toContain("line 2, column y: found nothing");
    expect(refusal("name,x,y,z\n,1,2,3")).toContain("line 2, column name: found nothing, expected a name");
  });

  it("a decimal comma that could be a separator", () => {
    expect(refusal("name,x,y,z\nA,1,5,2,5,3")).toContain("line 2: found 6 cells, expected 4 as in line 1");
  });

  it("two decimal signs in one file", () => {
    expect(refusal("name;x;y;z\nA;1,5;2.5;3")).toContain('line 2, column x: found "1,5"');
    expect(refusal("name;x;y;z\nA;1.234,5;2;3")).toContain('column x: found "1.234,5"');
  });

  it("columns that are missing or there twice", () => {
    expect(refusal("name,x,z\nA,1,2")).toBe(
      'points.csv, line 1: the column y can\'t be found among "name", "x", "z". Expected line 1 to name the columns name, x, y, z.',
    );
    expect(refusal("1,2,3,4\n5,6,7,8")).toContain("the columns name, x, y, z can't be found");
    expect(refusal("name,x,y,X,z\nA,1,2,3,4")).toContain("line 1: the column x is there twice");
  });

  it.each(["", "\n\n", "\ufeff", " \r\n"])("an empty file (%j)", (source) => {
    expect(refusal(source)).toBe("points.csv is empty. Expected line 1 to name the columns name, x, y, z.");
  });

  it("a quote that doesn't end, or goes on", () => {
    expect(refusal('name,x,y,z\nA,1,2,3\n"B,1,2,3\nC,1,2,3')).toContain("points.csv, line 3: a quoted text");
    expect(refusal('name,x,y,z\n"A"b,1,2,3')).toContain("points.csv, line 2: a quoted text");
  });

  it("every bad row, but no more than can be read", () => {
    const rows = Array.from({ length: 20 }, (_, i) => `P${i},x,2,3`).join("\n");
    const lines = refusal(`name,x,y,z\n${rows}`).split("\n");
    expect(lines).toHaveLength(9);
    expect(lines[0]).toContain("line 2, column x");
    expect(lines[8]).toBe("… and 12 more like these.");
  });
});

describe("for any table", () => {
  const cell = fc.string({ maxLength: 12 }).map((s) => s.trim());
  const millimetres = fc.integer({ min: -1_000_000, max: 1_000_000 });

  it("gives back every text and number that was written", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, millimetres), { minLength: 1, maxLength: 20 }), (rows) => {
        const source = rows.map(([t, mm]) => `"${t.replaceAll('"', '""')}",${mm / 1000}`).join("\r\n");
        const table = readTable(`text,number\r\n${source}`, "a.csv", { text, number });
        expect(table.ok && table.rows.map((row) => [row.text, row.number])).toEqual(
          rows.map(([t, mm]) => [t, mm / 1000]),
        );
      }),
    );
  });

  it("reads the same with and without quotes", () => {
    const plain = fc.string({ unit: fc.constantFrom(..."ab 1.,\n\r"), maxLength: 60 });
    fc.assert(
      fc.property(plain, (body) => {
        const columns = { a: optional(text), b: optional(text) };
        const without = readTable(`a,b\n${body}`, "a.csv", columns);
        const withQuotes = readTable(`"a",b\n${body}`, "a.csv", columns);
        expect(withQuotes).toEqual(without);
      }),
      { numRuns: 500 },
    );
  });

  it("never fails without naming the file", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'namexyz,;"\n\r 01.-e\t') }), (source) => {
        const table = readTable(source, "points.csv", points);
        if (!table.ok) expect(table.message).toContain("points.csv");
      }),
      { numRuns: 500 },
    );
  });
});
