/** Where the tour's card stands: beside what it points at, wholly inside the window. */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly left: number;
  readonly top: number;
}

const gap = 14;

/**
 * Right of the target, else left, below, above; where there is no room on any side, inside its lower part.
 * Without a target in the middle of the window. All in pixels.
 */
export function cardPlace(
  target: Box | null,
  card: { width: number; height: number },
  window: { width: number; height: number },
): Spot {
  const inside = ({ left, top }: Spot): Spot => ({
    left: Math.max(gap, Math.min(left, window.width - card.width - gap)),
    top: Math.max(gap, Math.min(top, window.height - card.height - gap)),
  });
  if (!target)
    return inside({ left: (window.width - card.width) / 2, top: (window.height - card.height) / 2 });
  const [right, bottom] = [target.left + target.width, target.top + target.height];
  const level = target.top + Math.min(24, target.height / 2);
  const middle = target.left + (target.width - card.width) / 2;
  if (right + 2 * gap + card.width <= window.width) return inside({ left: right + gap, top: level });
  if (target.left - 2 * gap - card.width >= 0)
    return inside({ left: target.left - gap - card.width, top: level });
  if (bottom + 2 * gap + card.height <= window.height) return inside({ left: middle, top: bottom + gap });
  if (target.top - 2 * gap - card.height >= 0)
    return inside({ left: middle, top: target.top - gap - card.height });
  return inside({ left: middle, top: bottom - card.height - gap });
}
