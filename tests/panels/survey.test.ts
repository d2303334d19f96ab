import { describe, expect, it } from "vitest";
import {
  newProject,
  type Place,
  type Project,
  placeResolver,
  shotPlace,
  stakePoint,
  surveyEdits,
} from "../../src/document";
import { signedArea } from "../../src/geometry";
import { notationOf } from "../../src/panels/notation";
import { bookRule } from "../../src/panels/survey/bookRule";
import {
  checkWords,
  closesWords,
  pageCells,
  pageHeads,
  pageSums,
  runPage,
} from "../../src/panels/survey/levelRun";
import { beamErrorWords, noPegs, pegAnswer } from "../../src/panels/survey/pegs";
import {
  anchorOptions,
  draftOf,
  type PlaceDraft,
  placeFrom,
  whyNowhere,
} from "../../src/panels/survey/placeDraft";
import { noStakes, stakesFrom, stakesShown, withPickedRow } from "../../src/panels/survey/stakes";
import { demoProject } from "../support/demo";

const metric = (project: Project): Project => ({
  ...project,
  display: { ...project.display, length: "m", reading: "m", rounding: 3 },
});

function edited(
  project: Project,
  ...edits: readonly ((now: Project) => ReturnType<typeof surveyEdits.addShot.run>)[]
): Project {
  return edits.reduce((now, edit) => {
    const done = edit(now);
    if (!done.ok) throw new Error(done.why);
    return done.project;
  }, project);
}

describe("the two-peg worksheet", () => {
  // A beam that rises 1 mm in 10 m: from the middle of 60 m both read 3 mm too much, then 0.5 mm and 5.5 mm.
  const typed = { midA: "1.503", midB: "1.253", nearA: "1.6005", nearB: "1.3555", apart: "60", toA: "5" };

  it("finds the beam's error and says it as builders do", () => {
    const answer = pegAnswer(typed, "m", "m");
    if (answer.state !== "found") throw new Error(answer.state);
    expect(answer.result.error).toBeCloseTo(0.0001, 9);
    expect(answer.result.trueDifference).toBeCloseTo(0.25, 9);
    const { display } = metric(newProject());
    expect(beamErrorWords(0.0001, notationOf(display))).toBe("0.003 m high at 30 m");
    expect(
      beamErrorWords(
        -1 / 16 / 12 / 100,
        notationOf({ ...display, length: "ft-in", reading: "in", rounding: 16 }),
      ),
    ).toBe("1⁄16″ low at 100 ft".replace("1⁄16", "¹⁄₁₆"));
    expect(beamErrorWords(0, notationOf(display))).toBe("none that shows");
  });

  it("waits until all is typed; says which field it can't read", () => {
    expect(pegAnswer(noPegs, "m", "m")).toEqual({ state: "empty" });
    expect(pegAnswer({ ...typed, nearB: "" }, "m", "m")).toEqual({ state: "empty" });
    expect(pegAnswer({ ...typed, midA: "x" }, "m", "m")).toMatchObject({ state: "fault", field: "midA" });
    expect(pegAnswer({ ...typed, toA: "30" }, "m", "m")).toMatchObject({ state: "fault", field: "toA" });
  });
});

describe("the book's rule", () => {
  it("follows the rods of its set-ups", () => {
    const setup = (reads: "down" | "up") => ({ rod: { kind: "plain" as const, reads, offset: null } });
    expect(bookRule([])).toBe("A bigger reading is lower ground.");
    expect(bookRule([setup("up")])).toBe("A bigger reading is higher ground.");
    expect(bookRule([setup("up"), setup("down")])).toBe("Each set-up's rod says which way its readings go.");
  });
});

describe("a grid of stakes", () => {
  const typed = {
    ...noStakes,
    rows: "2",
    columns: "3",
    rowSpacing: "4",
    columnSpacing: "5",
    start: "10, 20",
  };

  it("runs towards its bearing, further rows to the left", () => {
    const read = stakesFrom({ ...typed, towards: "0" }, metric(newProject()));
    if (!read.ok) throw new Error(read.why);
    const project = edited(
      metric(newProject()),
      (now) => surveyEdits.addSetup.run(now, {}),
      (now) => surveyEdits.addGrid.run(now, read.grid),
    );
    const [grid] = project.survey.grids;
    if (!grid) throw new Error("no grid");
    const [x, y] = stakePoint(grid, 1, 2);
    expect([x, y].map((m) => Number(m.toFixed(9)))).toEqual([6, 30]);
    expect(project.survey.shots.map(({ name }) => name)).toEqual(["1-1", "1-2", "1-3", "2-3", "2-2", "2-1"]);
  });

  it("says which field it can't read", () => {
    const project = metric(newProject());
    const field = (patch: Partial<typeof typed>) => {
      const read = stakesFrom({ ...typed, ...patch }, project);
      return read.ok ? null : read.field;
    };
    expect(field({ rows: "2.5" })).toBe("rows");
    expect(field({ rowSpacing: "far" })).toBe("rowSpacing");
    expect(field({ start: "" })).toBe("start");
    expect(field({ start: "A" })).toBe("start");
    expect(field({ towards: "up" })).toBe("towards");
  });

  it("is shown where its stakes will stand, and not while a field isn't understood", () => {
    const project = metric(newProject());
    const read = stakesFrom(typed, project);
    if (!read.ok) throw new Error(read.why);
    const laid = edited(
      project,
      (now) => surveyEdits.addSetup.run(now, {}),
      (now) => surveyEdits.addGrid.run(now, read.grid),
    );
    const places = laid.survey.shots.map((each) => shotPlace(laid, each));
    expect(stakesShown(typed, project)).toEqual(places);
    expect(stakesShown({ ...typed, rowSpacing: "far" }, project)).toEqual([]);
    expect(stakesShown({ ...typed, rows: "100000" }, project)).toEqual([]);
  });

  it("takes its first stake and its direction from two clicks, north turned too", () => {
    const plan = metric(newProject());
    const turned = { ...plan, lot: { ...plan.lot, north: 0.3 } };
    for (const project of [plan, turned]) {
      const picked = withPickedRow(
        typed,
        { from: [2, 3], towards: [6, 6] },
        project,
        notationOf(project.display).length,
      );
      const stakes = stakesShown(picked, project);
      expect(stakes[0]).toEqual([2, 3]);
      const [a, b] = [stakes[0], stakes[1]] as [[number, number], [number, number]];
      expect(Math.atan2(b[1] - a[1], b[0] - a[0])).toBeCloseTo(Math.atan2(3, 4), 3);
    }
  });
});

describe("places as typed", () => {
  const project = metric(demoProject("pottery-studio"));
  const [shot] = project.survey.shots.filter(({ kind }) => kind === "ground");
  if (!shot) throw new Error("no shot");
  const blank: PlaceDraft = draftOf(
    { ...shot, place: { kind: "none" } },
    project,
    notationOf(project.display),
  );
  const made = (patch: Partial<PlaceDraft>): Place => {
    const read = placeFrom({ ...blank, first: "corner 0", second: "corner 1", ...patch }, project);
    if (!read.ok) throw new Error(read.why);
    return read.place;
  };
  const at = (place: Place) => placeResolver(project.survey, project.building?.outline ?? [])(place).at;
  const [a = [0, 0], b = [0, 0]] = project.building?.outline ?? [];
  const wall = Math.hypot(b[0] - a[0], b[1] - a[1]);

  it("two tapes give two places at their lengths from the known points", () => {
    const [left, right] = (["left", "right"] as const).map((side) =>
      at(made({ kind: "tapes", firstTape: "5", secondTape: String(wall), side })),
    );
    for (const place of [left, right]) {
      if (!place) throw new Error("no place");
      expect(Math.hypot(place[0] - a[0], place[1] - a[1])).toBeCloseTo(5, 9);
      expect(Math.hypot(place[0] - b[0], place[1] - b[1])).toBeCloseTo(wall, 9);
    }
    expect(left).not.toEqual(right);
  });

  it("a wall, a baseline, an angle and a distance lead to the same place by their own ways", () => {
    const off = at(made({ kind: "baseline", along: "2", right: "1.5" }));
    const polar = at(
      made({ kind: "polar", angle: `${(Math.atan2(1.5, 2) * 180) / Math.PI}`, distance: "2.5" }),
    );
    const out = at(made({ kind: "wall", wall: "0", along: "2", out: "1.5" }));
    const outside = signedArea(project.building?.outline ?? []) > 0 ? "1.5" : "-1.5";
    const offOutside = at(made({ kind: "baseline", along: "2", right: outside }));
    if (!off || !polar || !out || !offOutside) throw new Error("no place");
    expect(Math.hypot(off[0] - polar[0], off[1] - polar[1])).toBeLessThan(1e-4);
    expect(Math.hypot(offOutside[0] - out[0], offOutside[1] - out[1])).toBeLessThan(1e-9);
  });

  it("tapes that can't meet and a missing point are said while they are typed, nothing while a length is missing", () => {
    const said = (patch: Partial<PlaceDraft>) =>
      whyNowhere({ ...blank, first: "corner 0", second: "corner 1", ...patch }, project, shot.id);
    const tapes = (firstTape: string, secondTape: string) => said({ kind: "tapes", firstTape, secondTape });
    expect(tapes("1", "")).toBeNull();
    expect(tapes("1", String(wall))).toBeNull();
    expect(tapes("0.5", String(wall / 3))).toContain("don't meet");
    const off = { kind: "baseline", along: "1", right: "2" } as const;
    expect(said(off)).toBeNull();
    expect(said({ ...off, second: "shot gone" })).toContain("has no place itself");
    expect(said({ ...off, first: `shot ${shot.id}` })).toContain("has no place itself");
  });

  it("every kind fills the form again as it was typed", () => {
    const kinds: Partial<PlaceDraft>[] = [
      { kind: "corner", corner: "2" },
      { kind: "wall", wall: "1", along: "2", out: "3" },
      { kind: "tapes", firstTape: "7", secondTape: "8", side: "right" },
      { kind: "baseline", along: "1", right: "-2" },
      { kind: "polar", angle: "30", distance: "4" },
      { kind: "at", coordinates: "3; 4" },
    ];
    for (const patch of kinds) {
      const place = made(patch);
      const again = placeFrom(draftOf({ ...shot, place }, project, notationOf(project.display)), project);
      expect(again).toEqual({ ok: true, place });
    }
  });

  it("says what is missing", () => {
    const why = (patch: Partial<PlaceDraft>) => {
      const read = placeFrom({ ...blank, ...patch }, project);
      return read.ok ? null : read.why;
    };
    expect(why({ kind: "at" })).toContain("east and north");
    expect(why({ kind: "tapes", first: "corner 1", second: "corner 1" })).toContain("two different points");
    expect(why({ kind: "tapes", firstTape: "5", secondTape: "" })).toContain("Second tape");
  });

  it("known points are those that have a place, without the shot itself", () => {
    const values = anchorOptions(project, shot.id).map(({ value }) => value);
    expect(values).toContain("corner 0");
    expect(values).not.toContain(`shot ${shot.id}`);
  });
});

describe("the level run's page", () => {
  // Out by a turning point and back to the mark, 4 mm too high.
  const project = edited(
    metric(newProject()),
    (now) => surveyEdits.addMark.run(now, { name: "bolt", height: "10" }),
    (now) => surveyEdits.addShot.run(now, { name: "bolt", kind: "mark", of: "m1", reading: "1.5" }),
    (now) => surveyEdits.addShot.run(now, { name: "TP", kind: "turning", reading: "0.5" }),
    (now) => surveyEdits.addSetup.run(now, {}),
    (now) => surveyEdits.addShot.run(now, { name: "TP", kind: "turning", of: "s2", reading: "0.6" }),
    (now) => surveyEdits.addShot.run(now, { name: "bolt", kind: "mark", of: "m1", reading: "1.596" }),
  );
  const notation = notationOf(project.display);

  it("both forms have their columns, sums and the check; the run is judged by its class", () => {
    const made = runPage(project, "setups");
    if (!made.ok) throw new Error(made.whys.join());
    const { page } = made;
    for (const form of ["instrument", "rise"] as const) {
      expect(page.rows.map((row) => pageCells(row, form, notation).length)).toEqual(
        page.rows.map(() => pageHeads[form].length),
      );
      expect(pageSums(page, form, notation)).toHaveLength(pageHeads[form].length);
      expect(checkWords(page, form, notation)).toContain("the page checks");
    }
    expect(pageCells(page.rows[1] as (typeof page.rows)[0], "instrument", notation).slice(0, 6)).toEqual([
      "TP",
      "0.600 m",
      "11.600 m",
      "",
      "0.500 m",
      "11.000 m",
    ]);
    expect(closesWords(project, page, notation)).toEqual({
      within: true,
      words: "It misses by +0.004 m; 0.007 m is permitted.",
    });
    const strict = { ...project, survey: { ...project.survey, misclosureClass: "third" as const } };
    expect(closesWords(strict, page, notation)).toMatchObject({ within: null });
  });

  it("an empty book has no page, and says so", () => {
    expect(runPage(newProject(), "setups")).toEqual({ ok: false, whys: ["Nothing was read yet."] });
  });
});
