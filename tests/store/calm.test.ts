import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type Project, present, shotSchema, startHistory } from "../../src/document";
import { calmStore } from "../../src/store/calmStore";
import { appStore, shownProject } from "../../src/store/store";
import { demoProject } from "../support/demo";

const studio = demoProject("pottery-studio");
const crowd: Project = {
  ...studio,
  survey: {
    ...studio.survey,
    shots: Array.from({ length: 2000 }, (_, i) =>
      shotSchema.parse({ id: `s${i}`, setup: "u1", reading: null }),
    ),
  },
};
const shown = () => shownProject(calmStore.getState()).name;
/** The plan under the hand, told by its name. */
const drag = (project: Project, name: string) => appStore.setState({ preview: { ...project, name } });

describe("what panels show", () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => {
    appStore.setState({ preview: null });
    vi.useRealTimers();
  });

  it("follows a drag at each step on a usual plan", () => {
    appStore.setState({ history: startHistory(studio) });
    for (const step of ["one", "two"]) {
      drag(studio, step);
      expect(shown()).toBe(step);
    }
  });

  it("with very many shots waits until the hand rests, and is there at once when it lets go", () => {
    appStore.setState({ history: startHistory(crowd) });
    drag(crowd, "one");
    vi.advanceTimersByTime(60);
    drag(crowd, "two");
    vi.advanceTimersByTime(60);
    expect(shown()).toBe(crowd.name);
    vi.advanceTimersByTime(60);
    expect(shown()).toBe("two");
    drag(crowd, "three");
    appStore.setState({ preview: null });
    expect(shown()).toBe(crowd.name);
    vi.advanceTimersByTime(1000);
    expect(calmStore.getState()).toBe(appStore.getState());
  });

  it("with very many shots still follows the floor at each step", () => {
    appStore.setState({ history: startHistory(crowd), floorDrag: 31 });
    expect(calmStore.getState().floorDrag).toBe(31);
    appStore.setState({ floorDrag: null });
    expect(present(calmStore.getState().history)).toBe(crowd);
  });
});
