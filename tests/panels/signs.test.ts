/** The key of colours and signs tells everything that the plan draws. */
import { describe, expect, it } from "vitest";
import { type StyleName, styles } from "../../src/drawing";
import { signGroups } from "../../src/panels/help/signs";

const told = new Set(
  signGroups.flatMap(({ signs }) => signs.flatMap(([sign]) => ("style" in sign ? [sign.style] : []))),
);
const inks = new Set(
  signGroups.flatMap(({ signs }) => signs.flatMap(([s]) => (s.as === "colours" ? s.inks : []))),
);

/** Told by another sign of the same thing, or by its own words on the drawing. */
const withOthers: readonly StyleName[] = [
  "contour-existing",
  "contour-finished",
  "breakline-dot",
  "note-leader",
  "note-dot",
  "dimension-tick",
  "section-end",
  "section-arrow",
  "window-glass",
  "window-jamb",
  "wall-inner",
  "floor",
  "diagonal",
  "drive",
  "swale",
  "ground-shape-mark",
  "run-least",
  "run-more",
  "hovered",
  "handle-hot",
  "handle-stem",
  "preview",
  "preview-area",
];

/** The foundation's section and elevations write what each part is beside it. */
const named =
  /^(foundation|elevation|ground-(finished|existing|guessed)$|floor-line|frost-line|firm-line|rock-line|groundwater-line)/;

describe("the key of colours and signs", () => {
  it("tells every kind of line, area and symbol that the plan draws", () => {
    const drawn = (Object.keys(styles) as StyleName[]).filter(
      (name) => styles[name].size === undefined && !named.test(name),
    );
    const missing = drawn.filter((name) => !told.has(name) && !inks.has(name) && !withOthers.includes(name));
    expect(missing).toEqual([]);
  });

  it("tells each in a few plain words, once", () => {
    const words = signGroups.flatMap(({ signs }) => signs.map(([, said]) => said));
    expect(new Set(words).size).toBe(words.length);
    for (const said of words) expect(said.length, said).toBeLessThan(110);
  });
});
