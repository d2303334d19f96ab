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

/** What a text may cross: nothing, crosses of shots that give way to it, thin lines too, lot lines and walls too, or also signs. */
export type Crossing = "nothing" | "crosses" | "lines" | "firm-lines" | "signs";

/** A sign (a corner's ring, a mark's triangle) is only crossed at the very worst; a cross of a shot gives way to what lies on it. */
type Kind = "text" | "sign" | "cross" | "line" | "firm-line";

interface Taken {
  readonly box: Box;
  readonly group: string;
  readonly kind: Kind;
  gone: boolean;
}

export interface Labels {
  /** Is the box free of texts, and of the lines that it may not cross? */
  fits(box: Box, over?: Crossing): boolean;
  /** Is a line, flat x, y in mm, free of texts and of what it may not cross? It may run under what lies over the plan. */
  lineFits(points: ArrayLike<number>, width: number, over?: Crossing): boolean;
  /** Is something written there? What lies over the plan doesn't count. */
  written(box: Box): boolean;
  /** Takes a box for a text or symbol of the group. */
  take(group: string, box: Box, kind?: "text" | "sign" | "cross"): void;
  /** Takes a line (flat x, y in mm) that texts should keep off; a firm one only texts cross that must be shown. */
  takeLine(group: string, points: ArrayLike<number>, width: number, firm?: boolean): void;
  /** Has the group taken anything that it didn't give back? */
  holds(group: string): boolean;
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
  const reach = (a.width + a.height + b.width + b.height) / 2;
  // Most pairs are far apart: half the sides added up are more than half a diagonal.
  if (Math.abs(b.x - a.x) > reach || Math.abs(b.y - a.y) > reach) return false;
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

/** Buckets that a box reaches into: first and last column and row. */
function reachOf(box: Box): readonly [number, number, number, number] {
  const [hx, hy] = halfExtents(box);
  return [
    Math.floor((box.x - hx) / bucket),
    Math.floor((box.x + hx) / bucket),
    Math.floor((box.y - hy) / bucket),
    Math.floor((box.y + hy) / bucket),
  ];
}

const crossed: Readonly<Record<Crossing, readonly Kind[]>> = {
  nothing: [],
  crosses: ["cross"],
  lines: ["cross", "line"],
  "firm-lines": ["cross", "line", "firm-line"],
  signs: ["cross", "line", "firm-line", "sign"],
};

/** Paper under this name is covered by something that lies over the plan. */
export const coveredGroup = "covered";

/** Is something true of each piece of a line, flat x, y in mm? */
function everyPiece(points: ArrayLike<number>, width: number, holds: (piece: Box) => boolean): boolean {
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = [points[i], points[i + 1], points[i + 2], points[i + 3]];
    if (!pieces(x0, y0, x1, y1, width).every(holds)) return false;
  }
  return true;
}

const keyOf = (i: number, j: number) => j * 1_048_576 + i;

/** An empty sheet of taken places. */
export function createLabels(): Labels {
  const buckets = new Map<number, Taken[]>();
  const groups = new Map<string, Taken[]>();

  function put(group: string, box: Box, kind: Kind): void {
    const taken: Taken = { box, group, kind, gone: false };
    const [i0, i1, j0, j1] = reachOf(box);
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const list = buckets.get(keyOf(i, j));
        if (list) list.push(taken);
        else buckets.set(keyOf(i, j), [taken]);
      }
    }
    const own = groups.get(group);
    if (own) own.push(taken);
    else groups.set(group, [taken]);
  }

  function sweep(box: Box): void {
    const [i0, i1, j0, j1] = reachOf(box);
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const list = buckets.get(keyOf(i, j));
        if (list?.some((taken) => taken.gone)) {
          buckets.set(
            keyOf(i, j),
            list.filter((taken) => !taken.gone),
          );
        }
      }
    }
  }

  function meets(box: Box, counts: (taken: Taken) => boolean): boolean {
    const [i0, i1, j0, j1] = reachOf(box);
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        for (const taken of buckets.get(keyOf(i, j)) ?? []) {
          if (counts(taken) && boxesOverlap(box, taken.box)) return true;
        }
      }
    }
    return false;
  }

  const fits = (box: Box, over: Crossing = "nothing") => {
    const free = crossed[over];
    return !meets(box, ({ kind }) => !free.includes(kind));
  };

  return {
    fits,
    lineFits(points, width, over = "nothing") {
      const counts = ({ kind, group }: Taken) => group !== coveredGroup && !crossed[over].includes(kind);
      return everyPiece(points, width, (piece) => !meets(piece, counts));
    },
    written: (box) => meets(box, ({ kind, group }) => kind === "text" && group !== coveredGroup),
    take(group, box, kind = "text") {
      put(group, box, kind);
    },
    takeLine(group, points, width, firm = false) {
      const kind = firm ? "firm-line" : "line";
      everyPiece(points, width, (box) => {
        put(group, box, kind);
        return true;
      });
    },
    holds: (group) => groups.has(group),
    forget(group) {
      const own = groups.get(group) ?? [];
      groups.delete(group);
      for (const taken of own) taken.gone = true;
      for (const taken of own) sweep(taken.box);
    },
  };
}
