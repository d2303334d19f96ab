/** What the sheet says of a drive's curves and of the shapes of the ground. */
import { describe, expect, it } from "vitest";
import { routeTable } from "../../src/sheets/tables";
import { createSolver } from "../../src/solve/pipeline";
import { shed, site } from "../solve/sites";

const project = site({
  building: { ...shed, doors: [{ id: "d1", name: "door", wall: 0, offset: 4, width: 3, sillBelowFloor: 0 }] },
  rest: {
    grading: {
      drives: [
        {
          id: "v1",
          door: "d1",
          line: [
            [5.5, -30],
            [5.5, 0],
          ],
          across: { kind: "crown", fall: 0.02 },
          shoulder: { width: 0.5 },
          breaks: [{ at: 13, height: 101.5, curve: 6 }],
        },
      ],
      points: [{ id: "z1", name: "grade point", at: [-20, 0], height: 100.3 }],
      walls: [
        {
          id: "r1",
          name: "retaining wall",
          line: [
            [0, 10],
            [12, 10],
          ],
          lowSide: "left",
        },
      ],
    },
  },
});

describe("the table along the drive", () => {
  const plain = (text: string) => text;
  const metres = (m: number) => `${m.toFixed(2)} m`;
  const table = routeTable(project, createSolver().solve(project), {
    length: metres,
    over: (z, other) => z - other,
    height: metres,
    reading: metres,
    addToMark: metres,
    fromMark: false,
    cell: plain,
    unit: "",
    readingUnit: "",
  });
  const headings = (table?.rows ?? []).filter((row) => row.length === 1).map(([text]) => text);

  it("tells crown, shoulders, vertical curves, grade points and walls", () => {
    expect(headings[0]).toMatch(/crown 2\.0 %, shoulders 0\.500 m/);
    expect(headings).toEqual(
      expect.arrayContaining([
        expect.stringMatching(
          /^crest from 10\.00 m to 16\.00 m: a curve of 6\.00 m, .* under the break at 13\.00 m$/,
        ),
        "grade point: 100.30 m",
        expect.stringMatching(/^retaining wall: .*over 4 ft \(1\.22 m\) or loaded: permit and engineer$/),
      ]),
    );
  });

  it("has a station at each end of the curve", () => {
    const distances = (table?.rows ?? []).map((row) => row[1]);
    expect(distances).toEqual(expect.arrayContaining(["10.00 m", "16.00 m"]));
  });
});
