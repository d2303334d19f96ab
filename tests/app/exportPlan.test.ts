import { describe, expect, it } from "vitest";
import { scalesAhead, sheetCount } from "../../src/app/exportPlan";
import { newProject } from "../../src/document";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const shed = demoProject("joinery-shed");
const results = createSolver().solve(shed);

describe("what an export will give", () => {
  it("names the scale of each paper, a larger paper never the smaller drawing", () => {
    const ratio = (words: string) => Number(words.split(":")[1]);
    const ahead = scalesAhead(shed, results);
    expect(ratio(ahead.a3)).toBeLessThanOrEqual(ratio(ahead.a4));
    expect(ratio(ahead.tabloid)).toBeLessThanOrEqual(ratio(ahead.letter));
    const empty = newProject();
    expect(scalesAhead(empty, createSolver().solve(empty)).a4).toBe("nothing drawn yet");
  });

  it("counts the page objects of a file, not the tree that holds them", () => {
    const file = "1 0 obj\n<< /Type /Pages /Count 2 >>\n2 0 obj\n<< /Type /Page\n>>\n3 0 obj\n<</Type/Page>>";
    expect(sheetCount(new TextEncoder().encode(file))).toBe(2);
  });
});
