import { describe, expect, it } from "vitest";
import { newProject, type Project } from "../../src/document";
import { type Why, type WhyTopic, whyOf } from "../../src/help";
import { notationOf } from "../../src/panels/notation";
import { createSolver } from "../../src/solve/pipeline";
import { demoProject } from "../support/demo";

const demos = ["pottery-studio", "joinery-shed", "open-hillside", "potting-barn"] as const;

function asked(project: Project) {
  const results = createSolver().solve(project);
  return { project, results, figures: notationOf(project.display) };
}

/** The why of a figure that must be known. */
function why(topic: WhyTopic, of: ReturnType<typeof asked>): Why {
  const found = whyOf(topic, of);
  if (!found) throw new Error(`no why for ${JSON.stringify(topic)}`);
  return found;
}

const input = ({ inputs }: Why, name: RegExp) => inputs.find((one) => name.test(one.name))?.figure;

describe.each(demos)("why a figure is what it is, on %s", (demo) => {
  const of = asked(demoProject(demo));
  const { project, results, figures } = of;

  it("beam = known height + reading", () => {
    for (const setup of results.survey.setups) {
      if (setup.beam === null) continue;
      const told = why({ kind: "beam", id: setup.id }, of);
      expect(told.figure).toBe(figures.length(setup.beam));
      expect(told.rule).toContain(setup.tie);
      const tie = project.survey.shots.find(
        (shot) => shot.setup === setup.id && shot.kind === "mark" && !shot.aside,
      );
      const mark = project.survey.marks.find(({ id }) => id === tie?.of);
      if (!tie?.reading || !mark) continue;
      expect(input(told, /^Height of/)).toBe(figures.length(mark.height.m));
      expect(input(told, /^Reading on/)).toBe(figures.reading(tie.reading.m));
      if (setup.spread === 0) expect(mark.height.m + tie.reading.m).toBeCloseTo(setup.beam, 9);
    }
  });

  it("height = beam − reading", () => {
    const told = results.survey.points.flatMap(({ shot, height }) => {
      const found = whyOf({ kind: "shot", id: shot }, of);
      return found && height !== null ? [{ found, height }] : [];
    });
    expect(told.length).toBeGreaterThan(5);
    for (const { found, height } of told) expect(found.figure).toBe(figures.length(height));
  });

  it("floor out of the ground = floor − ground, at each corner", () => {
    results.corners.forEach((corner) => {
      const told = why({ kind: "corner", id: corner.name }, of);
      expect(told.title).toContain(corner.name);
      expect(input(told, /^Floor/)).toBe(figures.length(results.floor ?? Number.NaN));
      expect(input(told, /^Ground/)).toBe(figures.length(corner.ground));
      expect(told.figure).toContain(figures.length(Math.abs((results.floor ?? 0) - corner.ground)));
    });
  });

  it("bottom of trench = top of wall − wall − footing", () => {
    const { foundation, floor, topOfWallAboveFloor } = project.building ?? fail();
    const bottom = floor + topOfWallAboveFloor - foundation.wallHeight - foundation.footingThickness;
    const told = why({ kind: "trench", id: "" }, of);
    expect(told.figure).toBe(figures.length(bottom));
    expect(input(told, /^Wall/)).toBe(figures.length(foundation.wallHeight));
    expect(input(told, /^Footing/)).toBe(figures.length(foundation.footingThickness));
  });

  it("every rule of the band with a height: from its own place, value and source", () => {
    for (const rule of results.band.rules) {
      const told = whyOf({ kind: "limit", id: rule.id }, of);
      expect(told === null).toBe(rule.height === null);
      if (!told || rule.height === null) continue;
      expect(told.figure).toBe(figures.length(rule.height));
      expect(told.source).toBe(rule.source);
      expect(input(told, /^Place/)).toBe(rule.place);
      expect(told.inputs.length).toBeGreaterThanOrEqual(2);
    }
  });

  it("a drive's grade from the heights at both ends of its steepest stretch", () => {
    expect(results.drives.length).toBeGreaterThan(0);
    for (const drive of results.drives) {
      const told = why({ kind: "drive", id: drive.id }, of);
      expect(told.figure).toBe(figures.slope(drive.steepest));
      const [start, end] = [input(told, /at its start/), input(told, /at its end/)];
      const at = (height: string | undefined) =>
        drive.stations.filter(({ finished }) => figures.length(finished) === height);
      const grades = at(start).flatMap((a) =>
        at(end).map((b) => Math.abs((b.finished - a.finished) / (b.distance - a.distance))),
      );
      expect(Math.min(...grades.map((grade) => Math.abs(grade - drive.steepest)))).toBeLessThan(1e-6);
    }
  });

  it("a swale's least fall, and the fall away from each wall", () => {
    for (const swale of results.water.swales)
      expect(why({ kind: "swale", id: swale.id }, of).figure).toBe(figures.slope(swale.leastFall));
    for (const wall of results.water.walls) {
      const told = why({ kind: "wall", id: String(wall.wall) }, of);
      expect(told.figure).toContain(figures.length(Math.abs(wall.fallAway)));
      expect(input(told, /^Wanted/)).toBe(figures.length(wall.needed));
      expect(told.rule).toContain(wall.rule);
      expect(told.source).toBe(wall.source);
    }
  });

  it("every item of the bill, counted as the bill says", () => {
    expect(results.bill.length).toBeGreaterThan(10);
    for (const item of results.bill) {
      const told = why({ kind: "bill", id: item.id }, of);
      expect(told.formula).toBe(item.how);
      // Counts from the drawing have no inputs of their own to show.
      if (item.unit === "m3" && item.stage !== "topsoil")
        expect(told.inputs.length).toBeGreaterThanOrEqual(2);
      if (item.unit === "m3") expect(told.figure).toBe(figures.volume(item.quantity));
      if (item.unit === "loads")
        expect(told.figure).toBe(`${item.quantity} ${item.quantity === 1 ? "load" : "loads"}`);
    }
  });

  it("stone that is trucked: where its bulk and its weight come from", () => {
    const stone = results.bill.filter(
      ({ stage, trucked }) => trucked && ["base", "drive", "drain"].includes(stage),
    );
    expect(stone.length).toBeGreaterThan(0);
    for (const { id } of stone) {
      const told = why({ kind: "bill", id }, of);
      expect(told.source).toMatch(/loose for one compacted: a round figure of our own/);
      expect(told.source).toMatch(/weight: suppliers' figure/);
      expect(input(told, /^Loose for one compacted$/)).toBe("1.15");
    }
  });

  it("each height to set out: beam − height is the reading", () => {
    expect(results.setout.rows.length).toBeGreaterThan(0);
    results.setout.rows.forEach((row, index) => {
      const told = why({ kind: "setout", id: String(index) }, of);
      expect(told.figure).toBe(
        row.reading === null ? figures.length(row.height) : figures.reading(row.reading),
      );
    });
  });

  it("leaves nothing empty and prints no broken number", () => {
    const topics: WhyTopic[] = [
      { kind: "area", id: "" },
      { kind: "lot area", id: "" },
      ...results.bill.map(({ id }): WhyTopic => ({ kind: "bill", id })),
      ...results.band.rules.map(({ id }): WhyTopic => ({ kind: "limit", id })),
      ...results.survey.setups.map(({ id }): WhyTopic => ({ kind: "beam", id })),
    ];
    for (const topic of topics) {
      const told = whyOf(topic, of);
      if (!told) continue;
      const texts = [told.title, told.figure, told.rule, told.formula, told.source];
      const all = [...texts, ...told.inputs.flatMap(({ name, figure }) => [name, figure])];
      for (const text of all) {
        expect(text.trim()).not.toBe("");
        expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
      }
    }
  });
});

function fail(): never {
  throw new Error("the demo has no building");
}

describe("by hand", () => {
  it("a rectangle's area is side × side, another outline's the coordinates' sum", () => {
    const project = demoProject("pottery-studio");
    const built = (outline: [number, number][]) =>
      asked({ ...project, building: { ...(project.building ?? fail()), outline, doors: [], windows: [] } });
    const square = why(
      { kind: "area", id: "" },
      built([
        [0, 0],
        [3.048, 0],
        [3.048, 6.096],
        [0, 6.096],
      ]),
    );
    expect([square.figure, square.formula]).toEqual(["200 ft²", "side × side"]);
    expect(input(square, /^One side/)).toBe("10′ 0″");
    const ell = why(
      { kind: "area", id: "" },
      built([
        [0, 0],
        [6.096, 0],
        [6.096, 3.048],
        [3.048, 3.048],
        [3.048, 6.096],
        [0, 6.096],
      ]),
    );
    expect(ell.figure).toBe("300 ft²");
    expect(input(ell, /^Corners/)).toBe("6");
    expect(input(ell, /^Round it/)).toBe("80′ 0″");
  });

  it("above the high ground: the ground there, and what the rule asks above it", () => {
    const of = asked(demoProject("pottery-studio"));
    const rule = of.results.band.rules.find(({ id }) => id === "aboveUphillGround") ?? fail();
    const told = why({ kind: "limit", id: rule.id }, of);
    expect(input(told, /^At least/)).toBe("6″");
    expect(input(told, /^Ground/)).toBe(of.figures.length((rule.height ?? 0) - 0.1524));
  });

  it("a receiver's offset and a tilted beam are among the inputs of a shot, a plain shot has neither", () => {
    const project = demoProject("pottery-studio");
    const [first] = project.survey.setups;
    if (!first) fail();
    const { rod } = first;
    const offset = { text: "2 in", m: 0.0508 };
    const setups = [
      { ...first, at: [0, 0] as [number, number], collimation: 0.001, rod: { ...rod, offset } },
    ];
    const of = asked({ ...project, survey: { ...project.survey, setups } });
    const shot = project.survey.shots.find(({ kind }) => kind === "ground")?.id ?? "";
    const told = why({ kind: "shot", id: shot }, of);
    const point = of.results.survey.points.find((each) => each.shot === shot);
    const reading = project.survey.shots.find(({ id }) => id === shot)?.reading?.m ?? Number.NaN;
    const beam = of.results.survey.setups[0]?.beam ?? Number.NaN;
    expect(told.formula).toBe("height = beam − reading − receiver's offset");
    expect(input(told, /^Receiver/)).toBe("2 in");
    const tilt = (point?.height ?? Number.NaN) - (beam - reading - 0.0508);
    expect(Math.abs(tilt)).toBeGreaterThan(0.005);
    expect(input(told, /^Corrections/)).toBe(of.figures.signed(tilt));
    const plain = why({ kind: "shot", id: shot }, asked(project));
    expect(plain.inputs).toHaveLength(2);
  });

  it("a mark read twice has both readings, each under a name of its own", () => {
    const project = demoProject("pottery-studio");
    const tie = project.survey.shots.find(({ kind }) => kind === "mark");
    if (!tie?.reading) fail();
    const again = { ...tie, id: "again", reading: { text: "1 m", m: tie.reading.m + 0.004 } };
    const of = asked({ ...project, survey: { ...project.survey, shots: [...project.survey.shots, again] } });
    const names = why({ kind: "beam", id: tie.setup }, of).inputs.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => name.startsWith("Reading on"))).toHaveLength(2);
    expect(names.filter((name) => name.startsWith("Height of"))).toHaveLength(1);
  });

  it("a run that misses its mark by little: the beam's share of that stands beside its reading", () => {
    const project = demoProject("joinery-shed");
    const run = closedRun(project, 0.004);
    const told = why({ kind: "beam", id: project.survey.setups[0]?.id ?? "" }, asked(run));
    const share = told.inputs.find(({ name }) => name === "Share of what the run misses a mark by");
    expect(share?.figure).toMatch(/^[+−]0\.002/);
  });

  it("a run that misses its mark by a metre is shared out nowhere: the tie that contradicts is named as kept out", () => {
    const project = demoProject("joinery-shed");
    const before = asked(project);
    const after = asked(closedRun(project, 1.142));
    const second = project.survey.setups[1]?.id ?? "";
    expect(after.results.survey.setups.map(({ beam }) => beam)).toEqual(
      before.results.survey.setups.map(({ beam }) => beam),
    );
    const told = why({ kind: "beam", id: second }, after);
    expect(told.inputs.find(({ name }) => name.startsWith("Kept out"))?.figure).toMatch(/^\+1\.14/);
    expect(told.rule).not.toContain("reading on");
    // No bump is made of it: the second look at the mark is as good as before.
    const codes = after.results.problems.map(({ code }) => code);
    expect(codes).toContain("ties-disagree");
    expect(codes).not.toContain("laser-moved");
  });

  it("an assumed beam says so, and names no reading", () => {
    const project = demoProject("pottery-studio");
    const [first] = project.survey.setups;
    const assumed = asked({
      ...project,
      survey: {
        ...project.survey,
        setups: [{ ...(first ?? fail()), assumedBeam: { text: "105' 2\"", m: 32.0548 } }],
        shots: project.survey.shots.filter(({ kind }) => kind === "ground"),
      },
    });
    const told = why({ kind: "beam", id: first?.id ?? "" }, assumed);
    expect(told.figure).toBe("105′ 2″");
    expect(told.formula).toBe("beam = assumed height");
    expect(told.inputs).toEqual([{ name: "Assumed beam", figure: "105' 2\"" }]);
  });

  it("knows nothing of an empty plan, nor of things that aren't there", () => {
    const of = asked(newProject());
    const topics: WhyTopic[] = [
      { kind: "area", id: "" },
      { kind: "lot area", id: "" },
      { kind: "trench", id: "" },
      { kind: "corner", id: "A" },
      { kind: "beam", id: "none" },
      { kind: "shot", id: "none" },
      { kind: "limit", id: "none" },
      { kind: "drive", id: "none" },
      { kind: "swale", id: "none" },
      { kind: "wall", id: "0" },
      { kind: "bill", id: "none" },
      { kind: "setout", id: "0" },
    ];
    for (const topic of topics) expect(whyOf(topic, of)).toBeNull();
  });
});

describe("why water in a swale and under a drive is what it is", () => {
  const demo = demoProject("pottery-studio");
  const rained: Project = {
    ...demo,
    storm: { ...demo.storm, intensity: 0.05 / 3600 },
    grading: {
      ...demo.grading,
      swales: demo.grading.swales.map((swale) => ({ ...swale, depth: 0.4 })),
    },
  };
  const of = asked(rained);
  const { results } = of;
  const flow = results.water.flows.find(({ depth, speed }) => depth !== null && speed !== null);

  it("peak = C × i × A, with the inputs that make it", () => {
    if (!flow || flow.peak === null || flow.intensity === null)
      throw new Error("rain is typed and a swale carries it");
    expect(flow.peak).toBeCloseTo(flow.runoff * flow.intensity * flow.catchment, 9);
    const told = why({ kind: "swale peak", id: flow.id }, of);
    expect(input(told, /^C,/)).toBe(flow.runoff.toFixed(2));
    expect(input(told, /^A,/)).toBe(of.figures.area(flow.catchment));
    expect(told.source).toContain("rational formula");
  });

  it("depth and speed by Manning, at the least and the steepest fall", () => {
    if (!flow) throw new Error("a swale carries it");
    const depth = why({ kind: "swale depth", id: flow.id }, of);
    expect(depth.figure).toBe(of.figures.length(flow.depth ?? Number.NaN));
    expect(input(depth, /^n,/)).toBe(String(rained.storm.roughness));
    const speed = why({ kind: "swale speed", id: flow.id }, of);
    expect(input(speed, /steepest fall/)).toBe(of.figures.slope(flow.steepest));
  });

  it("tells catchment, lot lines, roof and drain as the window does", () => {
    const piped: Project = {
      ...rained,
      drainage: {
        ...rained.drainage,
        roof: { ...rained.drainage.roof, shape: "gable" },
        footingDrain: { on: true, fall: 0.01 },
      },
    };
    const all = asked(piped);
    const { water } = all.results;
    const [caught, line, side] = [water.flows[0], water.leaving[0], water.roof?.[0]];
    if (!caught || !line || !side || !water.footingDrain) throw new Error("all of them are there");
    expect(why({ kind: "swale catchment", id: caught.id }, all).figure).toBe(
      all.figures.area(caught.catchment),
    );
    expect(why({ kind: "leaving", id: String(line.line) }, all).figure).toBe(all.figures.area(line.after));
    expect(why({ kind: "roof side", id: String(side.wall) }, all).figure).toBe(
      all.figures.flow(side.peak ?? 0),
    );
    expect(why({ kind: "footing drain", id: "" }, all).figure).toBe(
      all.figures.length(water.footingDrain.low),
    );
    expect(whyOf({ kind: "pond", id: "nowhere" }, all)).toBeNull();
    const wet = asked(demoProject("potting-barn"));
    const [pond] = wet.results.water.ponds;
    if (!pond) throw new Error("it has a low place");
    expect(why({ kind: "pond", id: pond.at.join(" ") }, wet).figure).toBe(wet.figures.length(pond.depth));
  });

  it("isn't known without rain, nor for a pipe that isn't there", () => {
    const dry = asked({ ...rained, storm: { ...rained.storm, intensity: null, table: [] } });
    expect(whyOf({ kind: "swale peak", id: flow?.id ?? "" }, dry)).toBeNull();
    expect(whyOf({ kind: "pipe", id: "none" }, of)).toBeNull();
  });
});

/** The joinery shed's run closed on its mark from the second set-up, by a reading that is off by so much. */
function closedRun(project: ReturnType<typeof demoProject>, off: number) {
  const { setups, shots, marks } = project.survey;
  const [mark] = marks;
  const beam = asked(project).results.survey.setups[1]?.beam ?? 0;
  const m = beam - (mark?.height.m ?? 0) + off;
  const tie = { kind: "mark" as const, of: mark?.id ?? null, reading: { text: `${m} m`, m } };
  const close = { ...(shots[0] ?? fail()), id: "close", name: "close", setup: setups[1]?.id ?? "", ...tie };
  return { ...project, survey: { ...project.survey, shots: [...shots, close] } };
}
