/**
 * What the things that lie over the plan leave free of it: the part that a fitted plan is shown in.
 *
 * Units  CSS pixels from the plan's upper left corner, y down.
 */
import type { Box as PaperBox } from "../../drawing/labels";
import { writtenPxPerMm } from "../screen";
import { type Padding, toWorld, type View, type XY } from "./view";

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Names and dimensions are written round what is drawn: this much room on each side for words of usual size, and never more than a share of it. */
const written = { x: 42, y: 26, share: 0.12 } as const;

/**
 * Room to keep on each side so that what is `span` wide and high stands as large as it can between `taken`.
 *
 * Method  an edge of the free part is an edge of the plan or of something over it, so all such boxes are tried.
 *         Of equally good ones the larger. Something that lies wholly outside the plan takes nothing.
 */
export function freePadding(size: Size, taken: readonly Box[], span: XY, words = 1): Padding {
  const free = freeBox(size, taken, span);
  const x = Math.min(words * written.x, written.share * (free.right - free.left));
  const y = Math.min(words * written.y, written.share * (free.bottom - free.top));
  return {
    top: free.top + y,
    right: size.width - free.right + x,
    bottom: size.height - free.bottom + y,
    left: free.left + x,
  };
}

/** The empty box between `taken` in which something of a shape stands largest; the whole plan where there is none. */
export function freeBox({ width, height }: Size, taken: readonly Box[], [w, h]: XY): Box {
  const whole: Box = { left: 0, top: 0, right: width, bottom: height };
  const near = taken.filter((box) => cover(box, whole));
  const edges = (name: keyof Box, end: number) => [end, ...near.map((box) => box[name])];
  let best: { readonly box: Box; readonly scale: number; readonly area: number } | null = null;
  for (const left of edges("right", 0))
    for (const right of edges("left", width)) {
      if (right <= left) continue;
      for (const top of edges("bottom", 0))
        for (const bottom of edges("top", height)) {
          if (bottom <= top) continue;
          const box = { left, top, right, bottom };
          if (near.some((other) => cover(other, box))) continue;
          const scale = Math.min((right - left) / w, (bottom - top) / h);
          const area = (right - left) * (bottom - top);
          if (best === null || scale > best.scale || (scale === best.scale && area > best.area))
            best = { box, scale, area };
        }
    }
  return best?.box ?? whole;
}

/** Room beside the plan's rim that is counted as covered, px: wider than any text that would begin inside and run over it. */
const beyond = 600;

/** Boxes over the plan, and what lies beyond its rim, as boxes of the paper: mm along the plan's own axes. */
export function coveredPaper(view: View, boxes: readonly Box[]): readonly PaperBox[] {
  const { width, height } = view;
  const rim: readonly Box[] = [
    { left: -beyond, right: 0, top: -beyond, bottom: height + beyond },
    { left: width, right: width + beyond, top: -beyond, bottom: height + beyond },
    { left: 0, right: width, top: -beyond, bottom: 0 },
    { left: 0, right: width, top: height, bottom: height + beyond },
  ];
  const pxPerMm = writtenPxPerMm();
  const mmPerMetre = view.scale / pxPerMm;
  return [...boxes, ...rim].map(({ left, top, right, bottom }) => {
    const [x, y] = toWorld(view, [(left + right) / 2, (top + bottom) / 2]);
    return {
      x: x * mmPerMetre,
      y: y * mmPerMetre,
      width: (right - left) / pxPerMm,
      height: (bottom - top) / pxPerMm,
      angle: -view.angle,
    };
  });
}

function cover(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
