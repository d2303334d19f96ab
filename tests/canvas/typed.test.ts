import { describe, expect, it } from "vitest";
import { pieceFields } from "../../src/canvas/tools/aim";
import {
  emptyEntry,
  entryFault,
  fieldWords,
  isTyping,
  type TypedEntry,
  typedValues,
  typeKey,
  wantedWords,
} from "../../src/canvas/typed/typedEntry";
import { elsewhere } from "../../src/panels/dialogs/otherKeys";

const fields = [
  { name: "length", kind: "length" },
  { name: "angle", kind: "angle" },
] as const;

/** Types key by key; fails where a key isn't taken. */
function typed(keys: readonly string[]): TypedEntry {
  return keys.reduce<TypedEntry>((entry, key) => {
    const next = typeKey(entry, key);
    if (!next) throw new Error(`${key} was not taken`);
    return next;
  }, emptyEntry(fields));
}

describe("typing while drawing", () => {
  it("reads a length, Tab, an angle: 40'6\" is 12.3444 m", () => {
    const entry = typed([..."40'6\"", "Tab", ..."35"]);
    const values = typedValues(entry, "ft-in");
    expect(values.length).toBeCloseTo(12.3444, 12);
    expect(values.angle).toBeCloseTo((35 * Math.PI) / 180, 12);
    expect(entryFault(entry, "ft-in")).toBeNull();
  });

  it("takes the project's unit for a bare number", () => {
    expect(typedValues(typed([..."12.35"]), "m").length).toBe(12.35);
    expect(typedValues(typed([..."1235"]), "mm").length).toBe(1.235);
  });

  it("has no value for what can't be read yet, and says why when asked", () => {
    const entry = typed([..."32' 5/"]);
    expect(typedValues(entry, "ft-in").length).toBeUndefined();
    expect(entryFault(entry, "ft-in")).toMatch(/32/);
  });

  it("lets letters start nothing, so that they pick tools, but end a length", () => {
    expect(typeKey(emptyEntry(fields), "d")).toBeNull();
    expect(typedValues(typed([..."3 m"]), "ft-in").length).toBe(3);
  });

  it("takes characters back, then the field, and then nothing more", () => {
    const entry = typed(["4", "Tab", "3", "Backspace", "Backspace", "Backspace"]);
    expect(isTyping(entry)).toBe(false);
    expect(typeKey(entry, "Backspace")).toBeNull();
  });

  it("leaves Tab alone until something is typed, and all keys where nothing can be", () => {
    expect(typeKey(emptyEntry(fields), "Tab")).toBeNull();
    expect(typeKey(emptyEntry([]), "4")).toBeNull();
  });
});

describe("a bearing", () => {
  const piece = emptyEntry([
    { name: "length", kind: "length" },
    { name: "bearing", kind: "bearing" },
  ]);
  const keys = (...all: string[]) =>
    all.reduce<TypedEntry>((entry, key) => typeKey(entry, key, true) ?? entry, piece);

  it("is read in degrees clockwise from north, or as a deed writes it", () => {
    expect(typedValues(keys("Tab", ..."268.5"), "m").bearing).toBeCloseTo((268.5 / 180) * Math.PI, 12);
    expect(typedValues(keys("Tab", ..."s 88.5 w"), "m").bearing).toBeCloseTo((268.5 / 180) * Math.PI, 12);
  });

  it("takes its letters in its own field, and before any figure of a piece that is begun", () => {
    expect(typeKey(piece, "s", false)).toBeNull();
    expect(keys("Tab", "s").texts).toEqual(["", "s"]);
    expect(keys("4", "s").texts).toEqual(["4s", ""]);
    const deed = keys(..."N 10 E");
    expect(typedValues(deed, "ft-in")).toEqual({ bearing: (10 / 180) * Math.PI });
    expect(entryFault(deed, "ft-in")).toBeNull();
  });

  it("is known by its sign when it is typed first; the length follows by Tab", () => {
    const angle = keys(..."35°");
    expect(angle).toMatchObject({ texts: ["", "35°"], active: 1 });
    const both = keys(..."35°30'", "Tab", ..."12");
    expect(typedValues(both, "m").length).toBe(12);
    expect(typedValues(both, "m").bearing).toBeCloseTo((35.5 / 180) * Math.PI, 12);
    // Where a length was given already the sign still belongs to the bearing alone.
    expect(keys("1", "2", "Tab", ..."35°").texts).toEqual(["12", "35°"]);
  });

  it("says what it takes", () => {
    expect(wantedWords(piece)).toMatch(/length in figures/);
    expect(wantedWords(keys("Tab"))).toMatch(/clockwise from north/);
    expect(wantedWords(emptyEntry([]))).toBeNull();
  });
});

describe("Tab", () => {
  const size = emptyEntry([
    { name: "width", kind: "length" },
    { name: "depth", kind: "length" },
  ]);

  it("leaves the plan while nothing is begun and nothing typed", () => {
    expect(typeKey(size, "Tab")).toBeNull();
  });

  it("belongs to the drawing once a corner is down, even before the first digit", () => {
    expect(typeKey(size, "Tab", true)?.active).toBe(1);
  });
});

describe("places that the list of keys promises", () => {
  const rows = new Map(elsewhere.flatMap(([, each]) => each));
  const [field] = pieceFields;
  const read = (text: string) => {
    const start = emptyEntry(pieceFields);
    const entry = [...text].reduce<TypedEntry>((now, key) => typeKey(now, key, true) ?? start, start);
    return { values: typedValues(entry, "m"), box: field && fieldWords(field, entry.texts[0] ?? "", "m") };
  };

  it("count from the origin as they say, and the box says so", () => {
    const [a = "", b = ""] =
      rows.get("A place so far east and north of the plan's origin")?.split(" or ") ?? [];
    expect(read(a)).toEqual({ values: { east: 12, north: 5 }, box: "place from the origin" });
    expect(read(b)).toEqual({ values: { east: -12, north: -5 }, box: "place from the origin" });
  });

  it("count from the last place as they say, and the box says so", () => {
    const [a = "", b = ""] = rows.get("A place so far east and north of the last one")?.split(" or ") ?? [];
    expect(read(a)).toEqual({ values: { right: 12, up: 5 }, box: "from the last place" });
    expect(read(b)).toEqual({ values: { right: -12, up: -5 }, box: "from the last place" });
  });
});
