import { describe, expect, it } from "vitest";
import { buildingEdits } from "../../src/document";
import { demoProject } from "../support/demo";

const demo = demoProject("pottery-studio");

describe("sizes that no such job has are refused, and what was there stays", () => {
  const box = (long: number): [number, number][] => [
    [0, 0],
    [long, 0],
    [long, 8],
    [0, 8],
  ];

  it("a building longer than a kilometre, as a missed inch mark makes it", () => {
    expect(buildingEdits.drawBuilding.run(demo, { outline: box(999), floor: 30 })).toMatchObject({
      ok: true,
    });
    const refused = buildingEdits.drawBuilding.run(demo, { outline: box(30_479_999), floor: 30 });
    expect(refused).toMatchObject({ ok: false, why: expect.stringContaining("1,000 m (3,280 ft)") });
  });

  it("a floor farther off the mark than any hill stands off its foot", () => {
    const mark = demo.survey.marks[0]?.height.m ?? Number.NaN;
    expect(buildingEdits.setFloor.run(demo, { floor: mark + 299 })).toMatchObject({ ok: true });
    for (const floor of [mark + 301, mark - 301, 3_047_999])
      expect(buildingEdits.setFloor.run(demo, { floor })).toMatchObject({
        ok: false,
        why: expect.stringContaining("off the mark"),
      });
  });

  it("a plan that came so from a file can still be edited otherwise", () => {
    if (!demo.building) throw new Error("it has a building");
    const odd = { ...demo, building: { ...demo.building, floor: 5000 } };
    expect(buildingEdits.drawBuilding.run(odd, { outline: box(12), floor: 5000 })).toMatchObject({
      ok: true,
    });
    expect(buildingEdits.setFloor.run(odd, { floor: 30 })).toMatchObject({ ok: true });
  });
});
