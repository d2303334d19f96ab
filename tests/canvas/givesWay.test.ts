import { describe, expect, it } from "vitest";
import { dimensionsGiveWay } from "../../src/canvas/select/givesWay";
import { buildingEdits, present } from "../../src/document";
import { run, select, setTool } from "../../src/store/actions";
import { appStore } from "../../src/store/store";

const givesWay = () => dimensionsGiveWay(appStore.getState());

describe("the building's drawn dimensions", () => {
  it("give way while it is selected alone and at rest", () => {
    run(buildingEdits.drawBuilding, { outline: buildingEdits.rectangleOutline([0, 0], 10, 6), floor: 30 });
    expect(givesWay()).toBe(false);
    select([{ kind: "building" }]);
    expect(givesWay()).toBe(true);
    const state = appStore.getState();
    expect(dimensionsGiveWay({ ...state, preview: present(state.history) })).toBe(false);
  });

  it("stay while a tool is at work", () => {
    setTool("door");
    expect(givesWay()).toBe(false);
  });
});
