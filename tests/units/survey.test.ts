import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  asksAgain,
  formatDeedBearing,
  formatPlusMinus,
  type LengthNotation,
  parseBeamAccuracy,
  parseDeedBearing,
  parseLength,
} from "../../src/units";

describe("lengths as they are typed in a level book", () => {
  const FOOT = 0.3048;
  const INCH = 0.0254;
  it.each<[string, number]>([
    ["5' 3 3/8", 63.375 * INCH],
    ["5-3-3/8", 63.375 * INCH],
    ["5 3 3/8", 63.375 * INCH],
    ["5'-3-3/8\"", 63.375 * INCH],
    ['63.375"', 63.375 * INCH],
    ["63 3/8 in", 63.375 * INCH],
    ["63-3/8''", 63.375 * INCH],
    ["63⅜″", 63.375 * INCH],
    ["5.28'", 5.28 * FOOT],
    ["5.28 ft", 5.28 * FOOT],
    ["5,28 feet", 5.28 * FOOT],
    ["1.609 m", 1.609],
    ["160,9 cm", 1.609],
    ["1609mm", 1.609],
    ['-3/4"', -0.75 * INCH],
    ["−¾″", -0.75 * INCH],
  ])("%s means the same in every column that can take it", (text, m) => {
    for (const notation of ["ft-in", "in", "ft", "m", "cm", "mm"] satisfies LengthNotation[]) {
      const parsed = parseLength(text, notation);
      if (parsed.ok) expect(parsed.m).toBeCloseTo(m, 12);
      // Only what needs the column's help may be asked about.
      else expect(text).toBe("5 3 3/8");
    }
    expect(parseLength(text, "ft-in").ok).toBe(true);
  });
});

describe("a value far from its neighbours", () => {
  it("is asked about when a hundred times off, either way", () => {
    const metres = [1.52, 1.61, 1.4, 1.75];
    expect(asksAgain(160.9, metres)).toMatchObject({ larger: true, slip: { factor: 0.01 } });
    expect(asksAgain(160.9, metres)?.question).toContain("centimetres read as metres");
    expect(asksAgain(0.0161, metres)).toMatchObject({ larger: false, slip: { factor: 100 } });
    expect(asksAgain(0.0161, metres)?.question).toMatch(/times smaller/);
  });

  it("is left alone within what ground does, with too few neighbours, or at nothing", () => {
    expect(asksAgain(4.8, [1.5, 1.6, 1.4])).toBeNull();
    expect(asksAgain(0.2, [1.5, 1.6, 1.4])).toBeNull();
    expect(asksAgain(160, [1.5, 1.6])).toBeNull();
    expect(asksAgain(0, [1.5, 1.6, 1.4])).toBeNull();
    expect(asksAgain(160, [0, 0, 0, 0])).toBeNull();
  });

  it("doesn't depend on order, sign or unit", () => {
    const size = fc.integer({ min: 500, max: 4000 });
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 3, maxLength: 9 }),
        fc.integer({ min: 1, max: 900_000 }),
        (near, value) => {
          const found = asksAgain(value, near);
          expect(asksAgain(-value, [...near].reverse())).toEqual(found);
          expect(
            asksAgain(
              value * 1024,
              near.map((n) => -n * 1024),
            ),
          ).toEqual(found);
        },
      ),
    );
  });
});

describe("a beam's accuracy", () => {
  // By definition of the inch and the second of arc: 1/16 in at 100 ft = 5.208 mm at 100 m = 10.743 seconds.
  it.each<[string, number]>([
    [`1/16" at 100'`, 0.0625 / 1200],
    ["1/16 in at 100 ft", 0.0625 / 1200],
    ["±3 mm at 30 m", 1e-4],
    ["+/-1.5mm @ 30m", 5e-5],
    ["3 mm in 10 m", 3e-4],
    ["0,3 mm/m", 3e-4],
    ["1/8 in per 33 ft", 0.125 / 396],
    ["10.743 arc seconds", 0.0625 / 1200],
    ['10"', Math.tan((10 / 3600 / 180) * Math.PI)],
  ])("%s", (text, ratio) => {
    const parsed = parseBeamAccuracy(text);
    expect(parsed.ok && parsed.ratio / ratio).toBeCloseTo(1, 5);
  });

  it.each(["", "good", "3 at 30", "3 mm", "1 m at 2 m", "0 mm at 30 m", "3 mm at 0 m"])(
    "refuses %j with the forms it takes",
    (text) => {
      const parsed = parseBeamAccuracy(text);
      expect(parsed).toMatchObject({ ok: false, message: expect.stringContaining("3 mm at 30 m") });
    },
  );

  it("is shown as ±, never as nothing", () => {
    expect(formatPlusMinus(0.0064, "in", 8)).toBe("±¼″");
    expect(formatPlusMinus(0.0031, "m", 3)).toBe("±0.003 m");
    expect(formatPlusMinus(0.0004, "mm", 0)).toBe("± under 1 mm");
  });
});

describe("bearings", () => {
  const degrees = (text: string) => {
    const parsed = parseDeedBearing(text);
    return parsed.ok ? (parsed.radians * 180) / Math.PI : parsed.message;
  };

  it.each<[string, number]>([
    ["N 26-10-05 E", 26 + 10 / 60 + 5 / 3600],
    ["N26-10E", 26 + 10 / 60],
    [`N 26°10'05" E`, 26 + 10 / 60 + 5 / 3600],
    ["n 26º 10′ 5″ e", 26 + 10 / 60 + 5 / 3600],
    ["N. 26 10 05 E.", 26 + 10 / 60 + 5 / 3600],
    ["North 26 degrees 10 minutes 05 seconds East", 26 + 10 / 60 + 5 / 3600],
    ["S 68-05-35 W", 180 + 68 + 5 / 60 + 35 / 3600],
    ["N 26.10.05 E", 26 + 10 / 60 + 5 / 3600],
    ["N 26d10m5s E", 26 + 10 / 60 + 5 / 3600],
    ["S75:25:30E", 180 - 75 - 25 / 60 - 30 / 3600],
    ["N 53.1 W", 306.9],
    ["N 0 E", 0],
    ["N 0 W", 0],
    ["N 90 E", 90],
    ["due South", 180],
    ["west", 270],
    ["206-10-05", 206 + 10 / 60 + 5 / 3600],
    ["206.168", 206.168],
    ["206,168", 206.168],
    ["Az 15° 30.5'", 15 + 30.5 / 60],
    ["360", 0],
    ["0", 0],
  ])("%s", (text, expected) => expect(degrees(text)).toBeCloseTo(expected, 9));

  it.each([
    ["", "Nothing is typed"],
    ["N 95 E", "0 to 90 degrees"],
    ["N 26-75-00 E", "below 60"],
    ["N 26.5-10 E", "only the last"],
    ["400", "full turn"],
    ["northeasterly", "isn't understood"],
    ["N E", "isn't understood"],
    ["-15", "isn't understood"],
  ])("refuses %j", (text, why) => {
    expect(degrees(text)).toContain(why);
    expect(degrees(text)).toContain("N 26-10-05 E");
  });

  it("come back as they were printed, to the second", () => {
    expect(formatDeedBearing((26 + 10 / 60 + 5 / 3600) * (Math.PI / 180))).toBe("N 26°10′05″ E");
    expect(formatDeedBearing(((360 - 1e-7) * Math.PI) / 180)).toBe("N 0°00′00″ E");
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 360 * 3600 - 1 }),
        fc.constantFrom("quadrant", "azimuth"),
        (seconds, form) => {
          const parsed = parseDeedBearing(formatDeedBearing((seconds / 3600 / 180) * Math.PI, form));
          const found = parsed.ok ? Math.round((parsed.radians / Math.PI) * 180 * 3600) : parsed.message;
          expect(found).toBe(seconds);
        },
      ),
    );
  });
});
