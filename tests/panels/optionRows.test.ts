import { describe, expect, it } from "vitest";

import { displaySchema } from "../../src/document";
import { optionRows } from "../../src/panels/compare/optionRows";
import { notationOf } from "../../src/panels/notation";
import type { OptionFigures } from "../../src/solve/compare";

const now: OptionFigures = {
  id: null,
  name: "now",
  floor: 3.048,
  cut: 10,
  fill: 20,
  fillLoads: 4,
  cutLoads: 2,
  fillLoadsTold: "4 loads",
  cutLoadsTold: "2 loads",
  cost: null,
  deepestFill: 0.6096,
  mostShowing: { m: 0.3048, at: "B" },
  floorAboveGround: { m: 0.6096, at: "wall A-B" },
  steepestDrive: { grade: 0.08, name: "drive" },
  wetWalls: 0,
  walls: 4,
  ponds: 1,
  swales: 1,
  stuckSwales: [],
  breaks: null,
  warnings: 2,
};
const notation = notationOf(displaySchema.parse({ length: "ft-in" }));

function row(name: string, other: Partial<OptionFigures>) {
  const found = optionRows([now, { ...now, id: "o1", ...other }], notation).find(
    (each) => each.name === name,
  );
  if (!found) throw new Error(`there is no row ${name}`);
  return found.cells.map(({ text, difference, faulty }) => [text, difference, faulty]);
}

describe("the figures of options", () => {
  it("tell how an option differs from the plan as it is now, in the plan's notation", () => {
    expect(row("Floor", { floor: 3.2004 })).toEqual([
      ["10′ 0″", "", false],
      ["10′ 6″", "6″ higher", false],
    ]);
    expect(row("Loads of fill, once stripped", { fillLoads: 1, fillLoadsTold: "1 load" })).toEqual([
      ["4 loads", "", false],
      ["1 load", "3 less", false],
    ]);
    expect(row("Steepest drive", { steepestDrive: { grade: 0.1, name: "drive" } })[1]?.[1]).toBe("steeper");
  });

  it("tell loads in the words of the sentence over the plan, and no difference where as many come", () => {
    const rows = optionRows(
      [
        { ...now, fillLoads: 1, fillLoadsTold: "less than one load" },
        { ...now, id: "o1", fillLoads: 1, fillLoadsTold: "1 load" },
      ],
      notation,
    );
    const fill = rows.find(({ name }) => name === "Loads of fill, once stripped");
    expect(fill?.cells.map(({ text, difference }) => [text, difference])).toEqual([
      ["less than one load", ""],
      ["1 load", ""],
    ]);
  });

  it("tell no difference that can't be read from the figures", () => {
    expect(row("Floor", { floor: 3.0481 })[1]?.[1]).toBe("");
  });

  it("tell how much wall shows, and how high the floor stands over the ground as it is, or how deep in it", () => {
    expect(row("Most wall showing, ground as finished", {})[0]?.[0]).toBe("1′ 0″ at B");
    expect(
      row("Floor over the ground as it is, at most", { floorAboveGround: { m: 0.3048, at: "C" } }),
    ).toEqual([
      ["2′ 0″ at wall A-B", "", false],
      ["1′ 0″ at C", "1′ 0″ less", false],
    ]);
    const sunk = row("Floor over the ground as it is, at most", {
      floorAboveGround: { m: -0.3048, at: "C" },
    });
    expect(sunk[1]?.[0]).toBe("nowhere: 1′ 0″ under it at C");
  });

  it("mark what is wrong with an option, in words", () => {
    expect(row("Water leaves the walls", { wetWalls: 2 })[1]).toEqual(["not on 2 of 4 sides", "", true]);
    expect(row("Limits of the floor", { breaks: "drive no steeper than the limit" })[1]).toEqual([
      "broken: drive no steeper than the limit",
      "",
      true,
    ]);
    expect(row("Swales", { stuckSwales: ["north swale"] })[1]).toEqual(["north swale to mend", "", true]);
    expect(row("Swales", {})[1]).toEqual(["drain", "", false]);
    expect(row("Swales", { swales: 0 })[1]).toEqual(["no swale", "", false]);
  });

  it("leave out what an option hasn't got", () => {
    expect(row("Steepest drive", { steepestDrive: null })[1]?.[0]).toBe("no drive");
    expect(row("Cost of what is priced", {})[1]?.[0]).toBe("nothing priced");
    expect(row("Floor", { floor: null })[1]).toEqual(["–", "", false]);
  });
});
