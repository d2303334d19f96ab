/** What the pointer's menu offers on the very place that it was opened at. */
import { beforeEach, expect, it } from "vitest";
import { actsAtPlace } from "../../src/app/atPlace";
import { toolRun } from "../../src/canvas/stage/toolRun";
import { planView } from "../../src/canvas/view/planView";
import {
  buildingEdits,
  newProject,
  type Point,
  present,
  siteEdits,
  surveyEdits,
  type Thing,
} from "../../src/document";
import { closePlanMenu, openPlanMenu, select, setTool, showProject } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { checkEdit } from "../support/checkEdit";

const project = () => present(appStore.getState().history);
const fits = () =>
  actsAtPlace.filter(({ whyNot }) => whyNot?.(appStore.getState()) === null).map(({ id }) => id);
const run = (id: string) => actsAtPlace.find((each) => each.id === id)?.run();

function rightClick(thing: Thing, at: Point): void {
  select([thing]);
  openPlanMenu({ x: 0, y: 0, at, of: "selection" });
}

beforeEach(() => {
  const walls = { outline: buildingEdits.rectangleOutline([0, 0], 10, 6), floor: 30 };
  const lot: Point[] = [
    [-20, -20],
    [20, -20],
    [30, 0],
    [20, 20],
    [-20, 20],
  ];
  const built = checkEdit(newProject(), buildingEdits.drawBuilding, walls);
  const onLot = checkEdit(built, siteEdits.setLotOutline, { outline: lot });
  showProject(checkEdit(onLot, surveyEdits.addShot, { name: "1" }), { name: null, token: null });
  planView.setState({ view: { centre: [0, 0], scale: 10, angle: 0, width: 1200, height: 900 } });
  setTool("select");
  closePlanMenu();
});

it("on a wall: a door, a window, a piece of it to pull at; inside the walls none of them", () => {
  rightClick({ kind: "building" }, [5, 3]);
  expect(fits()).toEqual([]);
  rightClick({ kind: "building" }, [5, 6]);
  expect(fits()).toEqual(["here.door", "here.window", "here.pull"]);
  run("here.door");
  expect(project().building?.doors[0]).toMatchObject({ wall: 0 });
  rightClick({ kind: "building" }, [3, 6]);
  run("here.pull");
  expect(toolRun.getState().state).toMatchObject({ name: "spanning" });
});

it("on a corner of the lot: it goes", () => {
  rightClick({ kind: "lot" }, [25, 10]);
  expect(fits()).toEqual([]);
  rightClick({ kind: "lot" }, [30, 0]);
  expect(fits()).toEqual(["here.removeCorner"]);
  run("here.removeCorner");
  expect(project().lot.outline).toHaveLength(4);
});

it("on a shot: set aside, and let count again", () => {
  const shot = project().survey.shots[0];
  rightClick({ kind: "shot", id: shot?.id ?? "" }, [1, 1]);
  expect(fits()).toEqual(["here.setAside"]);
  run("here.setAside");
  expect(project().survey.shots[0]?.aside).toBe(true);
  expect(fits()).toEqual(["here.takeBack"]);
});
