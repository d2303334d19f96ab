/** The long part of a solve, worked out by another solver that never sees the shots: nothing comes out otherwise. */
import { describe, expect, test } from "vitest";
import { type Project, pitEdits } from "../../src/document";
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
