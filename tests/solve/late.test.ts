/** The long part of a solve, worked out by another solver that never sees the shots: nothing comes out otherwise. */
import { expect, test } from "vitest";
import { type Project, pitEdits } from "../../src/document";
import { createSolver } from "../../src/solve";
import { projectForLate } from "../../src/solve/late";
import { pitSpots } from "../../src/survey";
import { demoProject as demo } from "../support/demo";
import { difference } from "./difference";

const demos = ["pottery-studio", "potting-barn", "joinery-shed", "open-hillside"] as const;

/** As the other thread does it: all that goes over is copied. */
function lateElsewhere(project: Project, surface: ReturnType<ReturnType<typeof createSolver>["surface"]>) {
  const there = createSolver({ surface: () => structuredClone(surface) });
  return structuredClone(there.late(structuredClone(projectForLate(project))));
}

test.each(demos)("%s: a drag's solve with the late part of another solver is the full solve", (name) => {
  const project = demo(name);
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const late = lateElsewhere(project, here.surface(project));
  expect(difference(here.solve(project, { late }), createSolver().solve(project))).toBeNull();
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

test("a full solve of what was taken over is from memory", () => {
  const project = demo("pottery-studio");
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const late = lateElsewhere(project, here.surface(project));
  const first = here.solve(project, { late });
  const again = here.solve(project);
  expect(again.finishedContours).toBe(first.finishedContours);
  expect(difference(again, first)).toBeNull();
});

test("a floor drag goes on from what was taken over", () => {
  const project = demo("pottery-studio");
  const here = createSolver();
  here.solve(project, { detail: "drag" });
  const late = lateElsewhere(project, here.surface(project));
  here.solve(project, { late });
  const there = createSolver();
  there.solve(project);
  const floor = (project.building?.floor ?? 0) + 0.15;
  const [one, other] = [here, there].map((solver) => solver.solve(project, { floor, detail: "drag" }));
  expect(difference(one, other)).toBeNull();
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
