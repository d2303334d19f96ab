import { describe, expect, it } from "vitest";
import { readLevelBook } from "../../src/files/levelBook";

const HEAD = "point,bs,is,fs,elevation,remark\n";

function message(source: string): string {
  const read = readLevelBook(source, "book.csv");
  if (read.ok) throw new Error("was accepted");
  return read.message;
}

describe("readLevelBook", () => {
  it("reads a book in its file", () => {
    const read = readLevelBook(
      `${HEAD}BM,1.5,,,100,"nail, oak"\na,,2.5,,,\nTP,0.7,,1.9,,stone\nend,,,1.1,99.21,\n`,
      "book.csv",
    );
    if (!read.ok) throw new Error(read.message);
    expect(read.book.points.map((point) => point.elevation)).toEqual([100, 99, 99.6, 99.2]);
    expect(read.book.misclosure).toBe(-0.01);
    expect(read.notes).toEqual([]);
  });

  it("does without the remarks", () => {
    expect(readLevelBook("point,bs,is,fs,elevation\nBM,1,,,50\nx,,,2,", "book.csv").ok).toBe(true);
  });

  it.each([
    [`${HEAD}BM,1.5,,,100,\na,,NaN,,,`, 'book.csv, line 3, column is: found "NaN", expected a number'],
    [`${HEAD}a,,1.5,,,`, "book.csv, line 2, column is: found a reading before any set-up has a bs, expected"],
    [`${HEAD}BM,1.5,,,,\nx,,,1,,`, "book.csv, line 2, column elevation: found no known elevation"],
    [HEAD, "book.csv, line 2: found no rows, expected a benchmark"],
    ["point,bs,fs,elevation\nBM,1,,50", "book.csv, line 1: the column is can't be found"],
  ])("names what is wrong (%#)", (source, part) => {
    expect(message(source)).toContain(part);
  });

  it("names every row that is wrong", () => {
    expect(message(`${HEAD}BM,1.5,,,100,\na,,,,,\nb,,1,2,,`).split("\n")).toHaveLength(2);
  });
});
