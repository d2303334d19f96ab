import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LengthNotation, parseLength } from "../../src/units";

const ALL: LengthNotation[] = ["ft-in", "in", "ft", "m", "cm", "mm"];

function metres(text: string, notation: LengthNotation): number {
  const parsed = parseLength(text, notation);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.m;
}

function refusal(text: string, notation: LengthNotation): string {
  const parsed = parseLength(text, notation);
  if (parsed.ok) throw new Error(`was read as ${parsed.m} m`);
  return parsed.message;
}

/** Metres as one division of whole numbers, by hand: inches as eighths and so on. */
const inch = (num: number, den = 1) => (num * 254) / (den * 10_000);

describe("lengths with their unit, the same in every column", () => {
  it.each<[string, number]>([
    [`40'6"`, inch(486)],
    [`40' 6 1/2"`, inch(973, 2)],
    [`40' 6-1/2"`, inch(973, 2)],
    ["40′ 6½″", inch(973, 2)],
    ["40’ 6 ½ ”", inch(973, 2)],
    ["40 ft 6 1/2 in", inch(973, 2)],
    ["40 FEET 6.5 Inches", inch(973, 2)],
    ["40ft. 6.5in.", inch(973, 2)],
    [`40' 6 1/2`, inch(973, 2)],
    [`40'-6 1/2"`, inch(973, 2)],
    ["5-3-3/8", inch(507, 8)],
    [`5-3-3/8"`, inch(507, 8)],
    [`5' 3-3/8"`, inch(507, 8)],
    ["5'-3-3/8''", inch(507, 8)],
    ["5 3 3/8", inch(507, 8)],
    ["5–3–3⁄8", inch(507, 8)],
    [`62-5/8"`, inch(501, 8)],
    [`62 5/8"`, inch(501, 8)],
    ["62⅝″", inch(501, 8)],
    ["62 ⅝ in", inch(501, 8)],
    ["62¹¹⁄₁₆″", inch(1003, 16)],
    ['63.375"', inch(507, 8)],
    ["63.375 in.", inch(507, 8)],
    ['62,5"', inch(125, 2)],
    [`-3/4"`, -inch(3, 4)],
    [`− 3/4 "`, -inch(3, 4)],
    [`+3/4"`, inch(3, 4)],
    ["-1' 2\"", -inch(14)],
    ["5' 0\"", inch(60)],
    ["0' 7\"", inch(7)],
    ["5'", 1.524],
    ["5.28'", 1.609344],
    ["5.28 ft", 1.609344],
    ["5 1/2'", 1.6764],
    ["1.609 m", 1.609],
    ["1,609 m", 1.609],
    ["160,9 cm", 1.609],
    ["160.9cm", 1.609],
    ["1591 mm", 1.591],
    ["1591MM", 1.591],
    ["1.5 metres", 1.5],
    ["  1.591\u00a0m ", 1.591],
    [".5 m", 0.5],
    ["-0 m", 0],
  ])("%s", (text, m) => {
    for (const notation of ALL) expect(metres(text, notation)).toBe(m);
  });
});

describe("a bare number takes the unit of its column", () => {
  it.each<[string, LengthNotation, number]>([
    ["5", "ft-in", 1.524],
    ["5.22", "ft-in", 1.591056],
    ["5.22", "ft", 1.591056],
    ["62", "in", 1.5748],
    ["62 5/8", "in", 1.590675],
    ["62-5/8", "in", 1.590675],
    ["62⅝", "in", 1.590675],
    ["3/4", "in", 0.01905],
    ["62.625", "in", 1.590675],
    ["1.591", "m", 1.591],
    ["1,591", "m", 1.591],
    ["159,1", "cm", 1.591],
    ["1591", "mm", 1.591],
    ["-12", "mm", -0.012],
    ["0", "in", 0],
    ["5-2", "ft-in", 1.5748],
    ["5 2", "ft-in", 1.5748],
    ["-5-2.5", "ft-in", -1.5875],
  ])("%s in a column of %s", (text, notation, m) => {
    const got = metres(text, notation);
    expect(got).toBe(m);
    expect(Object.is(got, -0)).toBe(false);
  });
});

describe("what could mean two things is asked about", () => {
  it.each<[string, LengthNotation, string]>([
    ["5-2", "in", `"5-2": is it 5 feet 2 inches, or 5 and a fraction? Write 5' 2" or 5 2/8".`],
    ["5-2", "m", `Write 5' 2" or`],
    ["5 2", "ft", `Write 5' 2" or`],
    [
      "62 5/8",
      "ft-in",
      `a fraction without a mark could be inches or feet. Write 62 5/8" for inches, 62 5/8' for feet.`,
    ],
    ["6 1/2", "ft", "could be inches or feet"],
    ["62 5/8", "mm", `could be inches or millimetres. Write 62 5/8" for inches.`],
    [`25/8"`, "in", "25/8 is not less than one. Is it 2 5/8? Then put a space or a dash between."],
    [`5' 25/8"`, "ft-in", "Is it 2 5/8?"],
    [`62 8/8"`, "in", "8/8 is not less than one."],
    ["1,250 ft", "ft", "is it 1250 or 1.250 feet?"],
    ["1,591", "mm", "is it 1591 or 1.591 millimetres?"],
    ["62,625", "in", "is it 62625 or 62.625 inches?"],
    [`5' 14"`, "ft-in", `14 inches beside feet: expected less than 12. Write 14" alone if it is all inches.`],
    [`5.5' 3"`, "ft-in", "must be a whole number, found 5.5"],
  ])("%s in a column of %s", (text, notation, question) => {
    expect(refusal(text, notation)).toContain(question);
  });
});

describe("nonsense is refused with what was understood and what is taken", () => {
  it.each<[string, string]>([
    ["", "Nothing is typed here yet."],
    ["   ", "Nothing is typed here yet."],
    ["NaN", `Can't read "NaN" as a length.`],
    ["Infinity", `Can't read "Infinity" as a length.`],
    ["about 5", `Can't read "about 5" as a length.`],
    ["'", `Can't read "'" as a length.`],
    ["-", `Can't read "-" as a length.`],
    ["--5", `Can't read "--5" as a length.`],
    ["1e3", `Understood 1, but not "e 3" after it.`],
    [`5' 3" x`, `Understood 5' 3", but not "x" after it.`],
    ["62 5/8 inch to spare", `Understood 62 5/8 inch, but not "to spare" after it.`],
    ["5-", `Understood 5, but not "-" after it.`],
    ["5.", `Understood 5, but not "." after it.`],
    ["5 yd", `Understood 5, but not "yd" after it.`],
    ["1.2.3", "must be a whole number, found 1.2"],
    ["1 m 60 cm", "only feet and inches go together"],
    [`3" 5'`, "only feet and inches go together"],
    ["1-2-3-4", "too many numbers for one length"],
    [`62.5 1/8"`, "a decimal and a fraction together, 62.5 and 1/8. Use one."],
    [`62 5/7"`, "no tape is divided into 7 parts"],
    [`62 5/0"`, "5/0 divides by nothing"],
    ["999999999999 m", "is longer than any site"],
    [`1${"0".repeat(400)} m`, "is longer than any site"],
  ])("%j", (text, message) => {
    expect(refusal(text, "in")).toContain(message);
  });

  it("names the unit of a bare number", () => {
    expect(refusal("?", "ft-in")).toMatch(/taken as feet\.$/);
    expect(refusal("?", "in")).toMatch(/taken as inches\.$/);
    expect(refusal("?", "mm")).toMatch(/taken as millimetres\.$/);
  });

  it("never throws and never answers with less than a number", () => {
    const signs = fc.string({ unit: fc.constantFrom(..."0123456789 .,/-'\"′″½⅝ftinmc⁄₈¹−x"), maxLength: 14 });
    fc.assert(
      fc.property(signs, fc.constantFrom(...ALL), (text, notation) => {
        const parsed = parseLength(text, notation);
        if (parsed.ok) expect(Number.isFinite(parsed.m)).toBe(true);
        else expect(parsed.message.length).toBeGreaterThan(20);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("for any tape reading", () => {
  const feet = fc.integer({ min: 0, max: 200 });
  const inches = fc.integer({ min: 0, max: 11 });
  const den = fc.constantFrom(2, 4, 8, 16, 32, 64);

  it("all spellings give the same length, to the last bit", () => {
    fc.assert(
      fc.property(feet, inches, den, fc.nat(), (f, i, d, n) => {
        const num = 1 + (n % (d - 1));
        const exact = inch((12 * f + i) * d + num, d);
        for (const text of [
          `${f}' ${i} ${num}/${d}"`,
          `${f}-${i}-${num}/${d}`,
          `${f} ft ${i}-${num}/${d} in`,
        ]) {
          expect(metres(text, "mm")).toBe(exact);
        }
        expect(metres(`${12 * f + i} ${num}/${d}`, "in")).toBe(exact);
        expect(metres(`-${12 * f + i} ${num}/${d}"`, "m")).toBe(-exact);
      }),
    );
  });

  it("a whole number of millimetres is the nearest double to it in every metric spelling", () => {
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), (mm) => {
        expect(metres(`${mm}`, "mm")).toBe(mm / 1000);
        expect(metres((mm / 1000).toFixed(3), "m")).toBe(mm / 1000);
        expect(metres((mm / 10).toFixed(1).replace(".", ","), "cm")).toBe(mm / 1000);
      }),
    );
  });
});
