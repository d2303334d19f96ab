import { describe, expect, it } from "vitest";
import type { DriveResult, DriveStation, SwaleResult } from "../../src/solve/results";
import { routeStations } from "../../src/solve/route-stations";

const drive = (id: string, stations: readonly (readonly [number, number | null])[]): DriveResult => ({
  id,
  name: id,
  length: stations[stations.length - 1]?.[0] ?? 0,
  steepest: 0.1,
  steepestAt: [0, 0],
  climbs: true,
  nodes: [],
  pieces: [],
  curves: [],
  underside: null,
  stations: stations.map(
    ([distance, grade]): DriveStation => ({ distance, at: [distance, 0], existing: 0, finished: 0, grade }),
  ),
});

describe("stations that are told", () => {
  it("are both ends, bends, changes of grade and a peg every 6 m or so, numbered on from drive to drive", () => {
    const first = drive("one", [
      [0, 0.1],
      [2, 0.1],
      [4, 0.1],
      [6, 0.1],
      [8, 0.1],
      [10, 0.02],
      [14, null],
    ]);
    const second = drive("two", [
      [0, 0.05],
      [2, 0.05],
      [4, null],
    ]);
    const lines = [
      {
        id: "one",
        line: [
          [0, 0],
          [2, 0],
          [2, 12],
        ] as [number, number][],
      },
      {
        id: "two",
        line: [
          [0, 0],
          [4, 0],
        ] as [number, number][],
      },
    ];
    const told = routeStations({ drives: lines, swales: [] }, [first, second], []);
    const names = (id: string) =>
      (told.drives.get(id) ?? []).map(({ name, station }) => `${name} ${station.distance}`);
    // 8 is 6 m on from the bend at 2, but only 2 m before the change of grade at 10.
    expect(names("one")).toEqual(["D1 0", "D2 2", "D3 10", "D4 14"]);
    expect(names("two")).toEqual(["D5 0", "D6 4"]);
  });

  it("puts a peg in a long even stretch", () => {
    const stations = Array.from({ length: 11 }, (_, i) => ({
      distance: 2 * i,
      at: [2 * i, 0] as [number, number],
      existing: 0,
      bed: 0,
      fall: i < 10 ? 0.02 : null,
    }));
    const swale: SwaleResult = {
      id: "s",
      name: "s",
      length: 20,
      leastFall: 0.02,
      drains: true,
      why: "",
      stations,
    };
    const line = {
      id: "s",
      line: [
        [0, 0],
        [20, 0],
      ] as [number, number][],
    };
    const told = routeStations({ drives: [], swales: [line] }, [], [swale]).swales.get("s") ?? [];
    expect(told.map(({ name, station }) => `${name} ${station.distance}`)).toEqual([
      "S1 0",
      "S2 6",
      "S3 12",
      "S4 20",
    ]);
  });
});
