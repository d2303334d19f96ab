/** Each act of drawing has a name of its own in the history: what was done, to what. */
import { describe, expect, it } from "vitest";
import type { Point, Project } from "../../../src/document";
import type { ToolName } from "../../../src/store/state";
import { demoProject } from "../../support/demo";
import { type Hand, handOn, metricProject } from "../support/hand";

const studio = demoProject("pottery-studio");
const ring: readonly Point[] = [
  [40, 40],
  [50, 40],
  [50, 50],
];

/** Clicks the places with a tool, then Enter. */
function drawn(tool: ToolName, places: readonly Point[], start: Project = studio, kind?: string): Hand {
  const hand = handOn(start, tool);
  if (kind) hand.choose(kind);
  for (const [x, y] of places) hand.click(x, y);
  hand.key("Enter");
  return hand;
}

describe("the history names", () => {
  it.each<[string, ToolName, readonly Point[], Project, string?]>([
    ["draw lot", "lot", ring, studio],
    ["draw lot", "lot", ring, metricProject()],
    ["draw drive", "drive", ring, studio],
    ["draw swale", "swale", ring, studio],
    ["draw parking pad", "earth", ring, studio, "parking"],
    ["draw berm", "earth", ring, studio, "berm"],
    ["draw retaining wall", "earth", ring, studio, "wall"],
    ["draw section line", "section", ring.slice(0, 2), studio],
    ["add a test pit", "pit", ring.slice(0, 1), studio],
    ["draw dimension", "dimension", ring, studio],
  ])("%s", (name, tool, places, start, kind) => {
    expect(drawn(tool, places, start, kind).labels.at(-1)).toBe(name);
  });

  it("a mark that is placed, moved, and moved again: two moves are two steps", () => {
    const hand = handOn(studio, "select");
    const [mark] = studio.survey.marks;
    const [x, y] = mark?.at ?? [0, 0];
    hand.selection = [{ kind: "mark", id: mark?.id ?? "" }];
    hand.drag([
      [x, y],
      [x + 2, y],
    ]);
    hand.drag([
      [x + 2, y],
      [x + 3, y + 3],
    ]);
    expect(hand.labels).toEqual(["move mark capped bolt", "move mark capped bolt"]);
  });
});
