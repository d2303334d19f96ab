/** The long part of a solve, worked out by another solver that never sees the shots: nothing comes out otherwise. */
import { describe, expect, test } from "vitest";
import { arrangeEdits, type Project, pitEdits } from "../../src/document";
import { createSolver, type GroundSurface } from "../../src/solve";
import { projectForLate } from "../../src/solve/late";
import { pitSpots } from "../../src/survey";
import { demoProject as demo } from "../support/demo";
import { difference } from "./difference";

/** As the other thread does it: all that goes over is copied. */
function lateElsewhere(project: Project, surface: GroundSurface) {
  const there = createSolver({ surface: () => structuredClone(surface) });
  return structuredClone(there.late(structuredClone(projectForLate(project))));
}

describe("the earth of a plan, which comes ahead of its water and limits", () => {
  const project = demo("pottery-studio");
  const here = createSolver();
  const before = here.solve(project);
  const moved = movedEast(project, 2.4);
  const quick = here.solve(moved, { detail: "drag" });
  const there = createSolver({ surface: () => structuredClone(here.surface(moved)) });
  const earth = structuredClone(there.lateEarth(structuredClone(projectForLate(moved))));
  if (!earth) throw new Error("the demo has a building");
  const first = here.solve(moved, { late: earth });
  const whole = createSolver().solve(moved);

  test("has the volumes, lines and curve that stay, where the hand left coarse ones", () => {
    expect(quick.earthLags).toBe(true);
    expect(first.earthLags).toBe(false);
    for (const part of ["earthwork", "curve", "finishedContours", "daylight", "corners"] as const)
      expect(difference(first[part], whole[part])).toBeNull();
    expect(quick.earthwork).not.toEqual(whole.earthwork);
  });

  test("leaves water and limits as they were, and says that they lag", () => {
    expect(first.lagging).toBe(true);
    expect(first.water.ponds).toBe(before.water.ponds);
    expect(first.balance).toBe(before.balance);
  });

  test("is followed by the rest, for which no layout has to come again", () => {
    const late = structuredClone(there.late(structuredClone(projectForLate(moved))));
    if (late.kind !== "built") throw new Error("the demo has a building");
    const settled = here.solve(moved, { late: { ...late, layout: null } });
    expect(difference(settled, whole)).toBeNull();
    expect(settled.lagging).toBe(false);
  });
});

test("without a building there is no earth to come ahead", () => {
  expect(createSolver().lateEarth({ ...demo("pottery-studio"), building: null })).toBeNull();
});

describe("a plan whose long part was worked out elsewhere", () => {
  const project = demo("potting-barn");
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const results = here.solve(project, { late: lateElsewhere(project, here.surface(project)) });
  const alone = createSolver();

  test("is solved as the window's solver does it alone", () => {
    expect(difference(results, alone.solve(project))).toBeNull();
  });

  test("is known from then on: a full solve works nothing out again", () => {
    const again = here.solve(project);
    expect(again.finishedContours).toBe(results.finishedContours);
    expect(difference(again, results)).toBeNull();
  });

  test("is what a floor drag goes on from", () => {
    const floor = (project.building?.floor ?? 0) + 0.15;
    const [one, other] = [here, alone].map((solver) => solver.solve(project, { floor, detail: "drag" }));
    expect(difference(one, other)).toBeNull();
  });
});

test("another plan that is opened shows nothing of the last one's water, slopes and limits", () => {
  const here = createSolver();
  here.solve(demo("pottery-studio"));
  here.forgetSettled();
  const opened = here.solve(demo("joinery-shed"), { detail: "drag" });
  expect(opened.water.ponds).toEqual([]);
  expect(opened.balance).toBeNull();
  expect(opened.lagging).toBe(true);
});

test("a pit placed by tapes from a shot stands at its place for the other solver too", () => {
  const project = withPitByTapes(demo("pottery-studio"));
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const late = lateElsewhere(project, here.surface(project));
  const whole = createSolver().solve(project);
  expect(pitSpots(project.survey, []).at(-1)?.at).not.toBeNull();
  expect(difference(here.solve(project, { late }), whole)).toBeNull();
});

test("water on ground without a building comes over as well", () => {
  const project = { ...demo("pottery-studio"), building: null };
  const here = createSolver();
  const quick = here.solve(project, { detail: "drag" });
  expect(quick.lagging).toBe(true);
  const late = lateElsewhere(project, here.surface(project));
  const settled = here.solve(project, { late });
  expect(difference(settled, createSolver().solve(project))).toBeNull();
  expect(settled.lagging).toBe(false);
});

function movedEast(project: Project, by: number): Project {
  const edit = arrangeEdits.moveThings.run(project, { things: [{ kind: "building" }], by: [by, 0] });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}

function withPitByTapes(project: Project): Project {
  const [first, second] = project.survey.shots.filter(({ place }) => place.kind === "at");
  if (!first || !second) throw new Error("the demo has no placed shots");
  const taped = { text: "30 m", m: 30 };
  const edit = pitEdits.addPit.run(project, {
    name: "by tapes",
    topsoil: { text: "0.3 m", m: 0.3 },
    water: { text: "0.5 m", m: 0.5 },
    place: {
      kind: "tapes",
      from: [
        { kind: "shot", shot: first.id },
        { kind: "shot", shot: second.id },
      ],
      lengths: [taped, taped],
      side: "left",
    },
  });
  if (!edit.ok) throw new Error(edit.why);
  return edit.project;
}
