/** Edits of the building's windows. */
import { type Building, type Project, type Window, windowSchema } from "../schema";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { openingsOverlap } from "./openings";

const noBuilding = "There is no building yet. Draw its outline first.";

function withWindows(project: Project, building: Building, windows: Window[]): Project {
  return { ...project, building: { ...building, windows } };
}

function windowFault(building: Building, window: Window): string | null {
  const a = building.outline[window.wall];
  const b = building.outline[(window.wall + 1) % building.outline.length];
  if (!a || !b) return "The building has no such wall.";
  const end = window.offset + window.width;
  if (end > Math.hypot(b[0] - a[0], b[1] - a[1]) + 1e-6)
    return "The window is wider than what is left of its wall.";
  const was = building.windows.find(({ id }) => id === window.id);
  // A window that stays where a file had it can still be renamed.
  if (was && was.wall === window.wall && was.offset === window.offset && was.width === window.width)
    return null;
  const near = building.windows.find((other) => other.id !== window.id && openingsOverlap(other, window));
  if (near) return `There is a window (${near.name}) there already. Choose a free piece of the wall.`;
  const door = building.doors.find((other) => openingsOverlap(other, window));
  return door ? `There is a door (${door.name}) there already. Choose a free piece of the wall.` : null;
}

export const addWindow = command(
  "building.addWindow",
  (project, args: { wall: number; offset: number; width: number }): Edit => {
    const { building } = project;
    if (!building) return refuse(noBuilding);
    const id = nextId("o", building.windows);
    const window = windowSchema.safeParse({ id, ...args });
    const fault = window.success
      ? windowFault(building, window.data)
      : "A window needs a wall, a place on it and a width.";
    if (!window.success || fault) return refuse(fault ?? "");
    return done(withWindows(project, building, [...building.windows, window.data]), "add window", {
      made: id,
    });
  },
);

export const changeWindow = command(
  "building.changeWindow",
  (project, args: { id: string; patch: Partial<Omit<Window, "id">> }): Edit => {
    const { building } = project;
    const window = building?.windows.find(({ id }) => id === args.id);
    if (!building || !window) return refuse("That window is gone.");
    const next = patched<Window>(windowSchema, window, args.patch);
    if (!next.ok) return refuse(next.why);
    const fault = windowFault(building, next.value);
    if (fault) return refuse(fault);
    const windows = replaced(building.windows, args.id, () => next.value);
    return windows
      ? done(withWindows(project, building, windows), "change window")
      : refuse("That window is gone.");
  },
);

export const removeWindow = command("building.removeWindow", (project, args: { id: string }): Edit => {
  const { building } = project;
  if (!building) return refuse(noBuilding);
  const windows = building.windows.filter(({ id }) => id !== args.id);
  return done(withWindows(project, building, windows), "remove window");
});
