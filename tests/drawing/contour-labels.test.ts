/** Heights in contour lines are read with their top uphill where the line allows it, however the plan is turned. */
import { describe, expect, it } from "vitest";
import { createDrawContext } from "../../src/drawing/context";
import { labelContour } from "../../src/drawing/contour-labels";

/** A contour round a hill, 18 mm across on paper: room for one height. */
const ring = Float64Array.from({ length: 194 }, (_, k) => {
  const angle = ((k >> 1) / 96) * 2 * Math.PI;
  return 18 * (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
});
const label = { text: "101.5", style: "contour-label", group: "existing" } as const;

describe("a height round a hill", () => {
  it.each([0, 0.7, Math.PI / 2, 2.4, Math.PI, -1.2])("on a plan turned by %d is read uphill", (turn) => {
    const context = createDrawContext({ metresPerMm: 1, turn });
    const { labels } = labelContour(ring, label, context, (x, y) => [-x, -y]);
    expect(labels).toHaveLength(1);
    const { at, angle = 0 } = labels[0] as (typeof labels)[0];
    // It stands upright as it is seen: its letters' own up isn't down on the sheet, but for lines read from the right.
    expect(Math.cos(angle + turn)).toBeGreaterThan(-0.11);
    // Its top lies towards the middle of the hill.
    const [upX, upY] = [-Math.sin(angle), Math.cos(angle)];
    expect(upX * -at[0] + upY * -at[1]).toBeGreaterThan(0);
  });
});
