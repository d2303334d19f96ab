/** Common practice, no source: what is locked on a drawing neither moves nor goes, whoever asks. */
import { describe, expect, it } from "vitest";
import { buildingEdits, drawingEdits, type Project, type Thing } from "../../src/document";
import { lockedRefusal } from "../../src/document/locks";
import { demoProject } from "../support/demo";

const plan = demoProject("pottery-studio");

function edited(
  project: Project,
  edit: { ok: true; project: Project } | { ok: false; why: string },
): Project {
  if (!edit.ok) throw new Error(edit.why);
  return edit.project ?? project;
}

function withLocked(...things: Thing[]): Project {
  return edited(plan, drawingEdits.lockThings.run(plan, { things, locked: true }));
}

function moved(project: Project): Project {
  const { building } = project;
  if (!building) throw new Error("no building");
  const outline = building.outline.map(([x, y]): [number, number] => [x + 1, y]);
  return { ...project, building: { ...building, outline } };
}

describe("what is locked", () => {
  const locked = withLocked({ kind: "building" });

  it("isn't moved by a typed corner, nor removed", () => {
    expect(lockedRefusal(locked, moved(locked))).toMatch(/studio|building/);
    expect(lockedRefusal(locked, moved(locked))).toContain("Unlock it first");
    const gone = edited(locked, buildingEdits.removeBuilding.run(locked, {}));
    expect(lockedRefusal(locked, gone)).toContain("is locked");
  });

  it("keeps its doors, and its floor may be set all the same", () => {
    const door = locked.building?.doors[0];
    if (!door) throw new Error("no door");
    const wider = { ...door, width: door.width + 0.3 };
    const building = locked.building && { ...locked.building, doors: [wider] };
    expect(lockedRefusal(locked, { ...locked, building })).toContain("with its building");
    const floor = buildingEdits.setFloor.run(locked, { floor: (locked.building?.floor ?? 0) + 0.1 });
    expect(lockedRefusal(locked, edited(locked, floor))).toBeNull();
  });

  it("may be unlocked, and then moved", () => {
    const open = edited(
      locked,
      drawingEdits.lockThings.run(locked, { things: [{ kind: "building" }], locked: false }),
    );
    expect(lockedRefusal(locked, open)).toBeNull();
    expect(lockedRefusal(open, moved(open))).toBeNull();
  });

  it("a locked drive lets its end follow the door that it leads to", () => {
    const drive = plan.grading.drives[0];
    if (!drive) throw new Error("no drive");
    const held = withLocked({ kind: "drive", id: drive.id });
    expect(lockedRefusal(held, moved(held))).toBeNull();
    const line = drive.line.map(([x, y]): [number, number] => [x, y - 1]);
    const grading = { ...held.grading, drives: [{ ...drive, line }] };
    expect(lockedRefusal(held, { ...held, grading })).toContain(drive.name);
  });
});
