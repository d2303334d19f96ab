import { beforeEach, describe, expect, it } from "vitest";
import { givingWay, tellsOf, toldElsewhere } from "../../src/canvas/select/givesWay";
import { liveDimensions } from "../../src/canvas/select/liveDimensions";
import { type Project, present, startHistory, type Thing } from "../../src/document";
import { drawPlan } from "../../src/drawing";
import { createSolver } from "../../src/solve";
import { select, setTool } from "../../src/store/actions";
import { appStore, shownProject } from "../../src/store/store";
import { formatLength, roundingFor } from "../../src/units";
import { demoProject } from "../support/demo";

const studio = demoProject("pottery-studio");
const results = createSolver().solve(studio);

/** All that the plan writes now, with what the tool has in hand. */
function written(hand: Parameters<typeof toldElsewhere>[1] = {}): string[] {
  const state = appStore.getState();
  const told = toldElsewhere(state, hand);
  return drawPlan(shownProject(state), results, { metresPerMm: 0.1 })
    .flatMap((layer) => givingWay(layer, told))
    .flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
}

const words = (m: number, { display }: Project) =>
  formatLength(m, display.length, roundingFor(display.length, display));
const tells = (texts: readonly string[], length: string) => texts.filter((text) => text.includes(length));

describe("lengths of what is selected", () => {
  beforeEach(() => {
    appStore.setState({ tool: "select", preview: null, selection: [], history: startHistory(studio) });
  });

  const [drive] = studio.grading.drives;
  const door = studio.building?.doors[0];
  const tree = studio.lot.features.find(({ points, keepClear }) => points.length === 1 && keepClear > 0);
  it.each<[string, Thing | undefined, string]>([
    ["the lot's lines", { kind: "lot" }, "S 88.9° W"],
    ["a drive's width", drive && { kind: "drive", id: drive.id }, drive?.name ?? ""],
    ["a door's width", door && { kind: "door", id: door.id }, door?.name ?? ""],
    ["a tree's distance", tree && { kind: "feature", id: tree.id }, tree?.name ?? ""],
    ["the building's walls", { kind: "building" }, "32′ × 24′"],
  ])("%s are told by their figures alone, and what else is written stays", (_what, thing, stays) => {
    if (!thing) throw new Error("the demo has it");
    const own = liveDimensions(studio, [thing]).filter(({ label }) => !/^from corner|^piece/.test(label));
    expect(own.length).toBeGreaterThan(0);
    const lengths = own.map(({ m }) => words(m, studio).replace(/′ 0″$/, "′"));
    const before = written();
    const twice = lengths.filter((length) => tells(before, length).length > 0);
    expect(twice.length, "the plan writes some of them").toBeGreaterThan(0);
    select([thing]);
    const now = written();
    for (const length of twice)
      expect(tells(now, length).length, length).toBeLessThan(tells(before, length).length);
    expect(tells(now, stays).length).toBe(tells(before, stays).length);
  });

  it("change no layer but those that are said to tell of the thing", () => {
    const things: Thing[] = [
      { kind: "lot" },
      { kind: "building" },
      ...(drive ? [{ kind: "drive", id: drive.id } as const] : []),
    ];
    for (const thing of things) {
      select([thing]);
      const told = toldElsewhere(appStore.getState(), {});
      if (!told) throw new Error("its lengths are told by its figures");
      const layers = drawPlan(studio, results, { metresPerMm: 0.1 });
      const changed = layers.filter((layer) => givingWay(layer, told) !== layer.marks);
      expect(changed.length).toBeGreaterThan(0);
      for (const layer of changed) expect(tellsOf(layer, told.thing), layer.id).toBe(true);
      expect(layers.every((layer) => tellsOf(layer, told.thing))).toBe(false);
    }
  });

  it("come back while a tool is at work", () => {
    const before = written();
    select([{ kind: "lot" }]);
    setTool("door");
    expect(written()).toEqual(before);
  });

  it("in the hand: only what the tool writes gives way", () => {
    select([{ kind: "lot" }]);
    appStore.setState({ preview: present(appStore.getState().history) });
    const before = written();
    const line = before.find((text) => text.startsWith("S 88.9° W"));
    const length = line?.split("  ")[1] ?? "";
    expect(length).not.toBe("");
    const hand = {
      marks: [{ kind: "text", at: [0, 0], text: `${length} (+1″)`, style: "preview-label" }],
    } as const;
    const now = written(hand);
    expect(tells(now, length)).toEqual([]);
    expect(now.length).toBe(before.length);
    expect(now.filter((text) => /^[NS] .*′/.test(text)).length).toBe(studio.lot.outline.length - 1);
  });
});
