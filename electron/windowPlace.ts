import type { Rectangle } from "electron";

/** Where the window stood when it was last closed. Without x and y the system places it. */
export interface WindowPlace {
  readonly bounds: { width: number; height: number; x?: number; y?: number };
  readonly maximized: boolean;
}

const usual = { width: 1440, height: 900 };
const least = { width: 960, height: 640 };
/** So much of the title bar must be on a screen to get hold of the window, px. */
const grip = { width: 120, height: 40 };

/** The place remembered, if it can be read and still lies on a screen that is there; else a usual one that fits. */
export function placeWindow(remembered: unknown, screens: readonly Rectangle[]): WindowPlace {
  const place = asPlace(remembered);
  const screen = place && screens.find((area) => overlaps(area, place));
  if (!place || !screen) return { bounds: fitted(usual, screens[0]), maximized: place?.maximized ?? false };
  const { width, height } = fitted(place, screen);
  return { bounds: { x: place.x, y: place.y, width, height }, maximized: place.maximized };
}

function fitted(size: { width: number; height: number }, screen: Rectangle | undefined) {
  const within = (wanted: number, smallest: number, room: number) =>
    Math.max(smallest, Math.min(wanted, room));
  return {
    width: within(size.width, least.width, screen?.width ?? size.width),
    height: within(size.height, least.height, screen?.height ?? size.height),
  };
}

function overlaps(area: Rectangle, window: Rectangle): boolean {
  const right = Math.min(area.x + area.width, window.x + window.width);
  const width = right - Math.max(area.x, window.x);
  return width >= grip.width && window.y >= area.y && window.y <= area.y + area.height - grip.height;
}

function asPlace(value: unknown): (Rectangle & { maximized: boolean }) | null {
  if (typeof value !== "object" || value === null) return null;
  const { x, y, width, height, maximized } = value as Record<string, unknown>;
  const whole = (number: unknown): number | null => (Number.isInteger(number) ? (number as number) : null);
  const [left, top, wide, high] = [whole(x), whole(y), whole(width), whole(height)];
  if (left === null || top === null || wide === null || high === null) return null;
  return { x: left, y: top, width: wide, height: high, maximized: maximized === true };
}
