/** However small the plan, however it is turned and however large its words: no text lies on another or on a sign. */
import { describe, expect, it } from "vitest";
import { type DrawingMark, drawPlan, type SymbolMark, type TextMark } from "../../src/drawing";
import { textBox } from "../../src/drawing/context";
import { type Box, boxesOverlap } from "../../src/drawing/labels";
import { createSolver } from "../../src/solve/pipeline";
import type { Results } from "../../src/solve/results";
import { demoProject } from "../support/demo";

const demos = ["pottery-studio", "potting-barn", "joinery-shed", "open-hillside"];
const turns = [0, 45, 90, 135, 180, -60, 20].map((degrees) => (degrees * Math.PI) / 180);
/** Metres that a millimetre of words shows: a large window, a small one, a small one with words at 150 %. */
const sizes = [0.2, 0.5, 1.2];

const drawings = new Map<string, readonly DrawingMark[]>();

/** What is drawn, once for all questions. */
function drawn(name: string, metresPerMm: number, turn: number): readonly DrawingMark[] {
  const key = `${name} ${metresPerMm} ${turn}`;
  const known = drawings.get(key);
  if (known) return known;
  const project = demoProject(name);
  const layers = drawPlan(project, resultsOf(name), { metresPerMm, turn });
  const marks = layers.flatMap((layer) => layer.marks as readonly DrawingMark[]);
  drawings.set(key, marks);
  return marks;
}

const solved = new Map<string, Results>();

function resultsOf(name: string): Results {
  const results = solved.get(name) ?? createSolver().solve(demoProject(name));
  solved.set(name, results);
  return results;
}

const isText = (mark: DrawingMark): mark is TextMark => mark.kind === "text";
const isSign = (mark: DrawingMark): mark is SymbolMark =>
  mark.kind === "symbol" && ["corner-ring", "mark-symbol", "shot"].includes(mark.style);

/** Half of a sign: its rim may be touched. */
function signBox({ at, size }: SymbolMark, metresPerMm: number, turn: number): Box {
  const side = size / 2;
  return { x: at[0] / metresPerMm, y: at[1] / metresPerMm, width: side, height: side, angle: -turn };
}

/** Of whatever lies on one another, what and how. */
function piled(name: string, metresPerMm: number, turn: number): string[] {
  const marks = drawn(name, metresPerMm, turn);
  const texts = marks
    .filter(isText)
    .map((mark) => ({ what: mark.text, box: textBox(mark, metresPerMm, 0, turn) }));
  const signs = marks
    .filter(isSign)
    .map((mark) => ({ what: `a ${mark.style}`, box: signBox(mark, metresPerMm, turn) }));
  return texts.flatMap((one, i) =>
    [...texts.slice(i + 1), ...signs]
      .filter((other) => boxesOverlap(one.box, other.box))
      .map((other) => `${one.what} on ${other.what}`),
  );
}

describe.each(demos)("the plan of %s", (name) => {
  it.each(sizes)(
    "has nothing written on anything else, at %d m to the millimetre, whichever way it is turned",
    (size) => {
      for (const turn of turns) expect(piled(name, size, turn), `turned ${turn}`).toEqual([]);
    },
  );

  it("tells less where it is smaller", () => {
    for (const turn of turns) {
      const counts = sizes.map((size) => drawn(name, size, turn).filter(isText).length);
      expect(counts, `turned ${turn}`).toEqual([...counts].sort((a, b) => b - a));
    }
  });

  it("names every corner, and tells the building's size, before other things, down to a small window", () => {
    const names = demoProject(name).building?.outline.length;
    for (const turn of turns) {
      for (const size of [0.2, 0.5]) {
        const texts = drawn(name, size, turn).filter(isText);
        const told = (...styles: TextMark["style"][]) =>
          texts.filter(({ style }) => styles.includes(style)).length;
        expect(told("corner-label"), `letters at ${size}, turned ${turn}`).toBe(names);
        expect(
          told("building-label", "building-sublabel"),
          `size at ${size}, turned ${turn}`,
        ).toBeGreaterThan(0);
      }
    }
  });
});
