import { describe, expect, it } from "vitest";
import { placeWindow } from "../../electron/windowPlace";

const screen = { x: 0, y: 0, width: 1920, height: 1080 };
const right = { x: 1920, y: 0, width: 1280, height: 1024 };
const remembered = { x: 100, y: 50, width: 1300, height: 850, maximized: false };

describe("where the window opens", () => {
  it("is where it stood", () =>
    expect(placeWindow(remembered, [screen])).toEqual({
      bounds: { x: 100, y: 50, width: 1300, height: 850 },
      maximized: false,
    }));

  it("is on the second screen if it stood there and the screen is still there", () => {
    const there = { ...remembered, x: 2000, maximized: true };
    expect(placeWindow(there, [screen, right])).toMatchObject({ bounds: { x: 2000 }, maximized: true });
    expect(placeWindow(there, [screen]).bounds).toEqual({ width: 1440, height: 900 });
  });

  it.each([
    ["far to the left", { x: -1250 }],
    ["above the screen, where its bar can't be reached", { y: -100 }],
    ["below the screen", { y: 1060 }],
  ])("is the usual one if it stood %s", (_where, moved) =>
    expect(placeWindow({ ...remembered, ...moved }, [screen]).bounds).toEqual({ width: 1440, height: 900 }),
  );

  it("is no larger than the screen and no smaller than the program needs", () => {
    expect(placeWindow({ ...remembered, width: 5000, height: 10 }, [screen]).bounds).toMatchObject({
      width: 1920,
      height: 640,
    });
    expect(placeWindow(null, [{ x: 0, y: 0, width: 1280, height: 800 }]).bounds).toEqual({
      width: 1280,
      height: 800,
    });
  });

  it.each([
    [null],
    ["text"],
    [{}],
    [{ ...remembered, x: "1" }],
    [{ ...remembered, width: Number.NaN }],
    [[1, 2]],
  ])("is the usual one where the settings are damaged: %j", (damaged) =>
    expect(placeWindow(damaged, [screen]).bounds).toEqual({ width: 1440, height: 900 }),
  );

  it("needs no screen", () => expect(placeWindow(null, []).bounds).toEqual({ width: 1440, height: 900 }));
});
