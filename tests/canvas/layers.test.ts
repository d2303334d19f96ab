/** Layers: what is remembered, what a step shows, one map at a time, and what can't be picked. */
import { describe, expect, it } from "vitest";
import { thingsInBox } from "../../src/canvas/select/box";
import { thingAt } from "../../src/canvas/select/hit";
import { closedLayers, pickable } from "../../src/canvas/select/pickable";
import { setStep } from "../../src/store/actions";
import { followStep, lockLayer, resetLayers, showLayer, toggleLayer } from "../../src/store/layerActions";
import {
  hiddenInStep,
  layersFromText,
  layersToText,
  mapLayers,
  planLayers,
  stepLayers,
  usualLayers,
  withShown,
} from "../../src/store/layers";
import { stepNames } from "../../src/store/state";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

describe("layers", () => {
  it("are remembered as they were, and as at first where nothing sound was kept", () => {
    const kept = {
      hidden: new Set(["depth", "grid"] as const),
      strengths: { existing: 0.4 },
      lockedLayers: new Set(["lot"] as const),
      layersFollow: true,
      mapGround: "finished",
    } as const;
    expect(layersFromText(layersToText(kept))).toEqual(kept);
    expect(layersFromText(null)).toEqual(usualLayers);
    expect(layersFromText("{ not json")).toEqual(usualLayers);
    const odd = layersFromText('{"hidden":["depth","moon"],"strengths":{"lot":7,"grid":"much","notes":0.5}}');
    expect([...odd.hidden]).toEqual(["depth"]);
    expect(odd.strengths).toEqual({ notes: 0.5 });
  });

  it("show one map in colour at a time", () => {
    const heights = withShown(usualLayers.hidden, "heights", true);
    expect(mapLayers.filter((layer) => !heights.has(layer))).toEqual(["heights"]);
    const none = withShown(heights, "heights", false);
    expect(mapLayers.filter((layer) => !none.has(layer))).toEqual([]);
    expect(withShown(none, "lot", false).has("lot")).toBe(true);
  });

  it("have a preset for each step, with at most one map", () => {
    for (const step of stepNames) {
      expect(stepLayers[step].length).toBeGreaterThan(3);
      expect(mapLayers.filter((layer) => stepLayers[step].includes(layer)).length).toBeLessThan(2);
      expect(hiddenInStep(step).size + stepLayers[step].length).toBe(planLayers.length);
    }
  });

  it("follow the step until a person changes one", () => {
    setStep("floor");
    followStep(true);
    expect(appStore.getState().hidden.has("depth")).toBe(false);
    setStep("shots");
    expect(appStore.getState().hidden).toEqual(hiddenInStep("shots"));
    toggleLayer("depth");
    expect(appStore.getState().layersFollow).toBe(false);
    setStep("lot");
    expect(appStore.getState().hidden.has("depth")).toBe(false);
    resetLayers();
    expect(appStore.getState().hidden).toEqual(usualLayers.hidden);
  });
});

describe("what can be picked", () => {
  const project = demoProject("pottery-studio");
  const [a, b] = project.building?.outline ?? [];
  const onWall: [number, number] = [
    ((a?.[0] ?? 0) * 3 + (b?.[0] ?? 0)) / 4,
    ((a?.[1] ?? 0) * 3 + (b?.[1] ?? 0)) / 4,
  ];

  it("leaves out things of a locked or hidden layer, but not the places that hang on them", () => {
    expect(thingAt(project, onWall, 0.2)).toEqual({ kind: "building" });
    lockLayer("building", true);
    expect(thingAt(project, onWall, 0.2)?.kind).not.toBe("building");
    lockLayer("building", false);
    showLayer("building", false);
    expect(thingAt(project, onWall, 0.2)?.kind).not.toBe("building");
    resetLayers();
    expect(thingAt(project, onWall, 0.2)).toEqual({ kind: "building" });
    expect(pickable(project, new Set(["building", "shots"])).building).toBe(project.building);
    expect(pickable(project, new Set(["building", "shots"])).survey.shots).toEqual([]);
    expect(closedLayers()).toEqual(usualLayers.hidden);
  });

  it("is left out of a box as well", () => {
    const view = { centre: [18, 15], scale: 10, angle: 0.4, width: 900, height: 700 } as const;
    const kinds = () => new Set(thingsInBox(project, view, [0, 0], [900, 700]).map(({ kind }) => kind));
    expect([...kinds()]).toEqual(expect.arrayContaining(["building", "door", "shot", "drive"]));
    lockLayer("building", true);
    showLayer("shots", false);
    expect([...kinds()].filter((kind) => ["building", "door", "shot"].includes(kind))).toEqual([]);
    expect(kinds().has("drive")).toBe(true);
    resetLayers();
  });
});
