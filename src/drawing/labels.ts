/**
 * One place that knows which paper is taken, so that no text crosses another text or an important line.
 * Everything is in paper millimetres. Callers ask for labels in order of rank; first come, first kept.
 */

/** A box turned about its centre. Angle in radians counter-clockwise. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly angle: number;
}

interface Taken {
  readonly box: Box;
  readonly group: string;
  readonly line: boolean;
  gone: boolean;
}

export interface Labels {
  /** Is the box free of texts, and (unless `textsOnly`) of lines? */
  fits(box: Box, textsOnly?: boolean): boolean;
  /** Takes a box for a text or symbol of the group. */
  take(group: string, box: Box): void;
  /** Takes a line (flat x, y in mm) that texts should keep off. */
  takeLine(group: string, points: ArrayLike<number>, width: number): void;
  /** Gives back everything a group took, before it is drawn afresh. */
  forget(group: string): void;
}

/** Side of a bucket, mm: about the height of two lines of text. */
const bucket = 8;
/** Long segments are taken in pieces, so that a slanted one doesn't fill many buckets. */
const longestPiece = 12;

/** Half extents of the upright box around a turned box. */
function halfExtents(box: Box): [number, number] {
  const c = Math.abs(Math.cos(box.angle));
  const s = Math.abs(Math.sin(box.angle));
  return [(box.width * c + box.height * s) / 2, (box.width * s + box.height * c) / 2];
}

/** Does one of a's own axes separate the boxes? */
function axisSeparates(a: Box, b: Box): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const c = Math.cos(a.angle);
  const s = Math.sin(a.angle);
  const turn = b.angle - a.angle;
  const tc = Math.abs(Math.cos(turn));
  const ts = Math.abs(Math.sin(turn));
  const along = Math.abs(dx * c + dy * s);
  if (along > (a.width + b.width * tc + b.height * ts) / 2) return true;
  const across = Math.abs(-dx * s + dy * c);
  return across > (a.height + b.width * ts + b.height * tc) / 2;
}

/** Do two turned boxes overlap? Touching counts. Method: separating axes. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return !axisSeparates(a, b) && !axisSeparates(b, a);
}

function pieces(x0: number, y0: number, x1: number, y1: number, width: number): Box[] {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const count = Math.max(1, Math.ceil(length / longestPiece));
  const angle = Math.atan2(y1 - y0, x1 - x0);
  return Array.from({ length: count }, (_, i) => {
    const t = (i + 0.5) / count;
    return { x: x0 + (x1 - x0) * t, y: y0 + (y1 - y0) * t, width: length / count, height: width, angle };
  });
}

/** An empty sheet of taken places. */
export function createLabels(): Labels {
  const buckets = new Map<number, Taken[]>();
  const groups = new Map<string, Taken[]>();

  function* around(box: Box): Generator<number> {
    const [hx, hy] = halfExtents(box);
    const i1 = Math.floor((box.x + hx) / bucket);
    const j1 = Math.floor((box.y + hy) / bucket);
    for (let j = Math.floor((box.y - hy) / bucket); j <= j1; j++) {
      for (let i = Math.floor((box.x - hx) / bucket); i <= i1; i++) yield j * 1_048_576 + i;
    }
  }

  function put(group: string, box: Box, line: boolean): void {
    const taken: Taken = { box, group, line, gone: false };
    for (const key of around(box)) {
      const list = buckets.get(key);
      if (list) list.push(taken);
      else buckets.set(key, [taken]);
    }
    const own = groups.get(group);
    if (own) own.push(taken);
    else groups.set(group, [taken]);
  }

  return {
    fits(box, textsOnly = false) {
      for (const key of around(box)) {
        for (const taken of buckets.get(key) ?? []) {
          if (taken.gone || (textsOnly && taken.line)) continue;
          if (boxesOverlap(box, taken.box)) return false;
        }
      }
      return true;
    },
    take(group, box) {
      put(group, box, false);
    },
    takeLine(group, points, width) {
      for (let i = 0; i + 3 < points.length; i += 2) {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = [points[i], points[i + 1], points[i + 2], points[i + 3]];
        for (const box of pieces(x0, y0, x1, y1, width)) put(group, box, true);
      }
    },
    forget(group) {
      const own = groups.get(group) ?? [];
      for (const taken of own) taken.gone = true;
      groups.delete(group);
      for (const taken of own) {
        for (const key of around(taken.box)) {
          const list = buckets.get(key);
          if (list)
            buckets.set(
              key,
              list.filter((other) => !other.gone),
            );
        }
      }
    },
  };
}
