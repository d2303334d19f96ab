import { describe, expect, it } from "vitest";
import { readArgs } from "../../src/cli/args";
import { type Command, InputError } from "../../src/cli/command";
import { level } from "../../src/cli/level";
import { run } from "./fakeIo";

const echo: Command = {
  name: "echo",
  usage: "echo FILE",
  about: "Prints a file.\nMore about it.",
  async run(args, io) {
    if (args[0] === "bug") throw new TypeError("x is not a function\n    at somewhere");
    io.out(io.readText(args[0] ?? ""));
    return 0;
  },
};
const commands = [echo, level];

describe("the program", () => {
  it.each([["--help"], ["-h"], ["help"]])("%s lists every command and exits 0", async (word) => {
    const { code, out, said } = await run([word], commands);
    expect([code, said]).toEqual([0, ""]);
    for (const { usage } of commands) expect(out).toContain(usage);
  });

  it.each([
    ["echo", "--help"],
    ["echo", "a", "-h"],
    ["help", "echo"],
  ])("%s %s tells about one command", async (...args) => {
    const { code, out } = await run(args, commands);
    expect(code).toBe(0);
    expect(out).toBe("Usage: npm run -s drysill -- echo FILE\n\nPrints a file.\nMore about it.");
  });

  it("says which commands there are when one is missing or not known", async () => {
    for (const args of [[], ["ecko"]]) {
      const { code, out, said } = await run(args, commands);
      expect([code, out]).toEqual([2, ""]);
      expect(said).toContain("The commands are echo, level");
    }
  });

  it("passes results on, and bad input as exit 2 with its message alone", async () => {
    expect(await run(["echo", "a"], commands, { a: "hello" })).toMatchObject({
      code: 0,
      out: "hello",
      said: "",
    });
    expect(await run(["echo", "b"], commands)).toMatchObject({
      code: 2,
      out: "",
      said: "Can't read b: there is no such file.",
    });
  });

  it("owns up to its own mistakes in one line, exit 1", async () => {
    const { code, out, said } = await run(["echo", "bug"], commands);
    expect([code, out]).toEqual([1, ""]);
    expect(said).toBe('Drysill made a mistake in "echo": x is not a function. Your files are as they were.');
  });
});

describe("readArgs", () => {
  const shape = { files: ["POINTS.csv"], values: { plane: "a height", at: "a file" }, flags: ["json"] };
  const read = (...words: string[]) => {
    const args = readArgs(words, shape);
    return [args.files[0], args.value("plane"), args.value("at"), args.has("json")];
  };

  it.each<[string[], unknown[]]>([
    [["p.csv"], ["p.csv", undefined, undefined, false]],
    [
      ["p.csv", "--plane", "-1.5", "--json"],
      ["p.csv", "-1.5", undefined, true],
    ],
    [
      ["--plane=-1.5", "p.csv", "--at", "q.csv"],
      ["p.csv", "-1.5", "q.csv", false],
    ],
    [
      ["-json", "./-odd.csv"],
      ["./-odd.csv", undefined, undefined, true],
    ],
  ])("%j", (words, expected) => {
    expect(read(...words)).toEqual(expected);
  });

  it.each<[string[], string]>([
    [[], "Expected POINTS.csv, found nothing."],
    [["a.csv", "b.csv"], 'Expected POINTS.csv, found "b.csv" besides.'],
    [["a.csv", "--colour", "red"], "The option --colour isn't known here. It takes --plane, --at, --json."],
    [["a.csv", "--toString", "red"], "The option --toString isn't known here."],
    [["a.csv", "--json=yes"], "The option --json=yes isn't known here."],
    [["a.csv", "--plane"], "The option --plane stands alone. Expected a height after it."],
    [["a.csv", "--plane", "--json"], "The option --plane stands alone."],
    [["a.csv", "--plane="], "The option --plane stands alone."],
    [["a.csv", "--plane", "1", "--plane", "2"], "The option --plane is there twice."],
  ])("refuses %j", (words, message) => {
    expect(() => read(...words)).toThrow(InputError);
    expect(() => read(...words)).toThrow(message);
  });

  it("says when a command takes no options", () => {
    expect(() => readArgs(["--x"], { files: [] })).toThrow(
      "The option --x isn't known here. It takes no options.",
    );
    expect(() => readArgs(["x"], { files: [] })).toThrow('Expected no file, found "x" besides.');
  });
});

describe("level", () => {
  const book = "point,bs,is,fs,elevation,remark\nBM,1.5,,,100,\na,,2.5,,,\nend,,,1.1,100.41,\n";

  it("prints the reduced book as JSON", async () => {
    const { code, out, said } = await run(["level", "b.csv"], commands, { "b.csv": book });
    expect([code, said]).toEqual([0, ""]);
    expect(JSON.parse(out)).toEqual({
      setups: [{ hi: 101.5, on: "BM" }],
      points: [
        { name: "BM", elevation: 100, adjusted: 100 },
        { name: "a", elevation: 99, adjusted: 99.01 },
        { name: "end", elevation: 100.4, adjusted: 100.41 },
      ],
      sumBs: 1.5,
      sumFs: 1.1,
      misclosure: -0.01,
      closings: [{ name: "end", known: 100.41, found: 100.4, misclosure: -0.01 }],
      pageCheck: true,
    });
  });

  it("prints null, not 0, where the run isn't closed", async () => {
    const { out } = await run(["level", "b.csv"], commands, { "b.csv": book.replace("100.41", "") });
    expect(JSON.parse(out)).toMatchObject({ misclosure: null, closings: [] });
  });

  it("refuses a bad row with file, line and column", async () => {
    const { code, out, said } = await run(["level", "b.csv"], commands, {
      "b.csv": book.replace("2.5", "Infinity"),
    });
    expect([code, out]).toEqual([2, ""]);
    expect(said).toBe(
      'b.csv, line 3, column is: found "Infinity", expected a number such as 12.345 or 1.2e3, or nothing.',
    );
  });

  it("mentions a column that it passed over", async () => {
    const { code, said } = await run(["level", "b.csv"], commands, {
      "b.csv": book.replace("remark", "weather"),
    });
    expect(code).toBe(0);
    expect(said).toContain('the column "weather" is not known here');
  });
});
