/** While a tool draws and the pointer rests near the plan's rim the plan moves in from there, so that what is drawn can go on. */
import type { View, XY } from "../view/view";

/** How near to the rim, px: nearer than anything of a plan that is shown whole, which must stand still to be clicked. */
const band = 12;
/** Here a hand that holds a thing of the plan means what lies beyond it, px. */
const outermost = 3;
/** At the rim itself, px a second. */
const speed = 620;
/** A pointer that only passes on its way to a button moves nothing, ms. */
const patience = 220;

/** Speed of the plan under a pointer, px a second to the right and down; [0, 0] away from the rim. */
export function rimSpeed([x, y]: XY, { width, height }: Pick<View, "width" | "height">): XY {
  const along = (place: number, size: number) => {
    const share = (inside: number) => speed * Math.min(1, Math.max(0, (band - inside) / band));
    return share(place) - share(size - place);
  };
  return [along(x, width), along(y, height)];
}

export interface RimHost {
  view(): View;
  /** Is a line or a shape half drawn? */
  draws(): boolean;
  /** Does the pointer hold a thing of the plan: a corner, a line, a shot? */
  holds(): boolean;
  pan(dx: number, dy: number): void;
  /** The plan has moved under the pointer: the tool aims anew. */
  moved(screen: XY): void;
}

/** Follows the pointer; moves the plan frame by frame as long as it rests in the rim. */
export class Rim {
  private screen: XY | null = null;
  private since = 0;
  private last = 0;
  private frame: number | null = null;

  constructor(private readonly host: RimHost) {}

  at(screen: XY): void {
    this.screen = screen;
    if (!this.isIn(screen)) this.leave();
    else if (this.frame === null) {
      this.since = performance.now();
      this.last = this.since;
      this.frame = requestAnimationFrame((now) => this.step(now));
    }
  }

  leave(): void {
    if (this.frame !== null) cancelAnimationFrame(this.frame);
    this.frame = null;
  }

  private isIn(screen: XY): boolean {
    const view = this.host.view();
    const [dx, dy] = rimSpeed(screen, view);
    if ((dx === 0 && dy === 0) || !this.host.draws()) return false;
    return !this.host.holds() || !isSeenWithin(screen, view, outermost);
  }

  private step(now: number): void {
    this.frame = null;
    const { screen } = this;
    if (!screen || !this.isIn(screen)) return;
    // A page that was asleep must not jump.
    const seconds = Math.min(0.05, (now - this.last) / 1000);
    this.last = now;
    if (now - this.since > patience) {
      const [dx, dy] = rimSpeed(screen, this.host.view());
      this.host.pan(dx * seconds, dy * seconds);
      this.host.moved(screen);
    }
    this.frame = requestAnimationFrame((next) => this.step(next));
  }
}

function isSeenWithin([x, y]: XY, { width, height }: View, margin: number): boolean {
  return Math.min(x, y, width - x, height - y) > margin;
}
