import { describe, expect, it } from "vitest";
import { newProject, type Point, type Project, plotEdits, siteEdits } from "../../src/document";

/** A hundred by eighty, from the south-west, counter-clockwise: south, east, north, west. */
const square: Point[] = [
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
];
const metre = (m: number) => ({ text: `${m} m`, m });

function lotWith(...distances: number[]): Project {
  const project = newProject();
  const setbacks = distances.map((m, line) => ({ line, distance: metre(m), name: "" }));
  return { ...project, lot: { ...project.lot, outline: square, setbacks } };
}

const kept = (edit: ReturnType<typeof plotEdits.drawDeed.run>) => {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project.lot.setbacks.map(({ line, distance }) => [line, distance.m]);
};

describe("setbacks of a lot that is drawn anew", () => {
  it("follow their lines where a curve cuts a corner off: north and west keep theirs, the chord between takes one of its neighbours'", () => {
    const outline: Point[] = [
      [0.1, 0],
      [100, 0.1],
      [100, 60],
      [95, 75],
      [80, 80],
      [0, 80.1],
    ];
    const found = new Map(
      kept(plotEdits.drawDeed.run(lotWith(1, 2, 3, 4), { outline })) as [number, number][],
    );
    expect(found.get(0)).toBe(1);
    expect(found.get(1)).toBe(2);
    expect(found.get(4)).toBe(3);
    expect(found.get(5)).toBe(4);
  });

  it("keep their lines when a corner is taken out before them, and their numbers when one is only moved", () => {
    const five: Point[] = [
      [0, 0],
      [50, -1],
      [100, 0],
      [100, 80],
      [0, 80],
    ];
    const project = lotWith(1, 2, 3, 4);
    const before = {
      ...project,
      lot: {
        ...project.lot,
        outline: five,
        setbacks: [0, 1, 2, 3, 4].map((line) => ({ line, distance: metre(line), name: "" })),
      },
    };
    expect(kept(siteEdits.setLotOutline.run(before, { outline: square }))).toEqual([
      [0, expect.any(Number)],
      [1, 2],
      [2, 3],
      [3, 4],
    ]);
    const moved = [...square.slice(0, 3), [-60, 90] as Point];
    expect(kept(siteEdits.setLotOutline.run(project, { outline: moved })).map(([line]) => line)).toEqual([
      0, 1, 2, 3,
    ]);
  });
});
