/** How large paper is on the screen. */
import { appStore } from "../store/store";

/** A millimetre of paper on a screen of 96 dots an inch, px. */
export const pxPerMm = 96 / 25.4;

/**
 * A millimetre of what is written on the plan, px: words, the room they need and the signs beside them grow with the
 * size of text that the person chose. Widths of lines and handles don't.
 */
export const writtenPxPerMm = (): number => pxPerMm * appStore.getState().preferences.textSize;
