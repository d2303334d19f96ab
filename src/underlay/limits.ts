/** How large a picture under the plan may be, and what becomes of a larger one. */

export const pictureLimits = {
  /** A picture with more pixels than this isn't unpacked: it would take more than a gigabyte. */
  pixels: 250_000_000,
  /** Longest side kept in the project, px. */
  side: 4096,
  /** Bytes kept in the project for one picture. */
  keptBytes: 12_000_000,
  /** Bytes kept in the project for all of them. */
  allBytes: 60_000_000,
} as const;

/**
 * The largest size (px) of the same shape whose longest side is at most `side`; the size itself where it fits.
 * No side becomes less than one pixel.
 */
export function fittedSize(width: number, height: number, side: number = pictureLimits.side) {
  const share = Math.min(1, side / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * share)),
    height: Math.max(1, Math.round(height * share)),
  };
}
