/** What still shows an earlier layout while one is dragged is marked, by a word and by being paler; nothing else is. */
import { act, cleanup, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { FloorPanel } from "../../src/panels/steps/FloorPanel";
import { WaterPanel } from "../../src/panels/steps/WaterPanel";
import { dragFloor, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const word = "as before this move";

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

const lag = (lagging: boolean) =>
  act(() => appStore.setState(({ results }) => ({ results: { ...results, lagging } })));
const part = (title: string) => screen.getByRole("heading", { name: title }).closest("section");

describe("parts that lag", () => {
  it("the curve says so while the layout is under the hand, and no more once it is worked out", () => {
    render(<FloorPanel />);
    const curve = part("Fill and cut as the floor moves");
    expect(curve?.textContent).not.toContain(word);
    lag(true);
    expect(curve?.textContent).toContain(word);
    expect(curve?.className).toContain("part-lags");
    expect(part("Corners")?.textContent).not.toContain(word);
    lag(false);
    expect(curve?.textContent).not.toContain(word);
    expect(curve?.textContent).toContain("from the ground as it is");
  });

  it("the curve is not old while only the floor is dragged: it is the same for every floor", () => {
    render(<FloorPanel />);
    const { floor } = appStore.getState().results;
    act(() => dragFloor((floor ?? 0) + 0.2));
    expect(appStore.getState().results.lagging).toBe(true);
    expect(part("Fill and cut as the floor moves")?.textContent).not.toContain(word);
  });

  it("low places are old then too: they follow the floor", () => {
    render(<WaterPanel />);
    const { floor } = appStore.getState().results;
    act(() => dragFloor((floor ?? 0) + 0.2));
    expect(part("Low places that hold water")?.textContent).toContain(word);
  });
});
