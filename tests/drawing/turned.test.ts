/** The plan turned: texts stay upright, none stands on its head, and none crosses another. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DrawingMark, drawPlan, type TextMark } from "../../src/drawing";
import { asRead, textBox } from "../../src/drawing/context";
import { boxesOverlap } from "../../src/drawing/labels";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const turns = [Math.PI / 6, Math.PI / 2, -2.4];

const solver = createSolver();

function textsOf(name: string, turn: number, medium: "screen" | "paper"): TextMark[] {
  const project = demoProject(name);
  const turned = { ...project, drawing: { ...project.drawing, turn } };
  const layers = drawPlan(turned, solver.solve(turned), { metresPerMm: 0.08, medium, turn });
  return layers.flatMap((layer) =>
    (layer.marks as readonly DrawingMark[]).flatMap((mark) => (mark.kind === "text" ? [mark] : [])),
  );
}

describe("a plan that is turned", () => {
  it.each(["pottery-studio", "potting-barn"])("of %s has no text across another", (name) => {
    for (const turn of turns) {
      for (const medium of ["screen", "paper"] as const) {
        const boxes = textsOf(name, turn, medium).map((mark) => ({
          mark,
          box: textBox(mark, 0.08, -0.2, turn),
        }));
        const met = boxes.flatMap((one, i) =>
          boxes
            .slice(i + 1)
            .filter((other) => boxesOverlap(one.box, other.box))
            .map((other) => `${one.mark.text} on ${other.mark.text}`),
        );
        expect(met, `turned ${turn}, ${medium}`).toEqual([]);
      }
    }
  });

  it.each(["pottery-studio", "joinery-shed"])(
    "of %s tells as many heights and names as one that isn't",
    (name) => {
      for (const medium of ["screen", "paper"] as const) {
        const told = (turn: number) => {
          const texts = textsOf(name, turn, medium);
          const count = (style: TextMark["style"]) => texts.filter((mark) => mark.style === style).length;
          return { heights: count("shot-label"), names: count("feature-label") };
        };
        const level = told(0);
        expect(level.heights).toBeGreaterThan(0);
        for (const degrees of [30, 45]) {
          const turned = told((degrees * Math.PI) / 180);
          expect(turned.heights, `${degrees}°, ${medium}`).toBeGreaterThanOrEqual(0.7 * level.heights);
          expect(turned.names, `${degrees}°, ${medium}`).toBeGreaterThanOrEqual(0.7 * level.names);
        }
      }
    },
  );

  it("is read from below or from the right", () => {
    for (const turn of turns) {
      for (const mark of textsOf("pottery-studio", turn, "screen")) {
        const read = asRead(mark, turn);
        const seen = read.angle === undefined ? 0 : read.angle + turn;
        expect(Math.cos(seen), `${mark.text}, turned ${turn}`).toBeGreaterThan(-0.11);
      }
    }
  });

  it("turns a text round on the paper that it has", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -31, max: 31 }),
        fc.integer({ min: -31, max: 31 }),
        fc.constantFrom("start" as const, "middle" as const, "end" as const),
        (angle, turn, anchor) => {
          const mark: TextMark = {
            kind: "text",
            at: [3, 4],
            text: "32′ 0″",
            style: "dimension-label",
            angle: angle / 10,
            anchor,
            shift: [2, 1.5],
          };
          const was = textBox(mark, 0.1);
          const now = textBox(asRead(mark, turn / 10), 0.1);
          // Capitals and descenders differ: the middle of the capitals stays, the box may move by the descenders.
          expect(Math.hypot(now.x - was.x, now.y - was.y)).toBeLessThan(0.2 * 2.8 + 1e-9);
          expect(now.width).toBeCloseTo(was.width, 9);
        },
      ),
    );
  });
});
