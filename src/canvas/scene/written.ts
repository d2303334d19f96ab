/** What is written on the plan now, for what stands over it and would rather cover none of it. */
import { textBox } from "../../drawing/context";
import type { TextMark } from "../../drawing/marks";
import { writtenPxPerMm } from "../screen";
import type { Box } from "../view/freeArea";
import { toScreen, type View } from "../view/view";

/** On the screen about its middle, px. */
export interface ScreenBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The same box by its edges. */
export function rimOf({ x, y, width, height }: ScreenBox): Box {
  return { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 };
}

/** And back: a box by its edges as one about its middle. */
export function middleBox({ left, right, top, bottom }: Box): ScreenBox {
  return { x: (left + right) / 2, y: (top + bottom) / 2, width: right - left, height: bottom - top };
}

let texts: () => readonly TextMark[] = () => [];

/** The plan's painter says where its texts are to be had. */
export function writtenBy(source: () => readonly TextMark[]): void {
  texts = source;
}

/** The upright boxes round the plan's texts in a view. */
export function writtenBoxes(view: View): readonly ScreenBox[] {
  return texts().map((mark) => textOnScreen(mark, view));
}

/** The upright box round a text of the plan. */
export function textOnScreen(mark: TextMark, view: View): ScreenBox {
  const metresPerMm = writtenPxPerMm() / view.scale;
  const box = textBox(mark, metresPerMm, 0, view.angle);
  const [x, y] = toScreen(view, [box.x * metresPerMm, box.y * metresPerMm]);
  const [c, s] = [Math.abs(Math.cos(box.angle + view.angle)), Math.abs(Math.sin(box.angle + view.angle))];
  return {
    x,
    y,
    width: (box.width * c + box.height * s) * writtenPxPerMm(),
    height: (box.width * s + box.height * c) * writtenPxPerMm(),
  };
}
