/**
 * All ties of all set-ups adjusted together, by least squares.
 *
 * Units   metres.
 * Method  Unknown are the height of each beam and of each turning point; a reading says beam - point = reading, one on a
 *         mark says beam = mark + reading. Weights 1/σ² where every reading has a σ by the beam's accuracy, equal
 *         weights otherwise: then the error of a set-up is taken to lie in the reading that ties it, as the rule of the book
 *         has it, so that a run's misclosure comes out shared equally over its set-ups, side shots with their set-up. The points are taken out of the normal equations first, so their size is the number of
 *         beams; Cholesky. Only ties that agree come here (agreeing.ts): a blunder would move what was read well.
 * Source  Variation of parameters, e.g. Ghilani, Adjustment Computations (method from memory); derived here from
 *         first principles.
 * Limits  Data sheets state a beam's error as a tolerance; it is taken as one standard deviation, which is cautious.
 *         Marks are taken as known exactly.
 */
import type { Shot } from "../document/schema";
import { cholesky, substitute } from "../geometry";
import type { Beam, Beams } from "./beams";
import type { Piece } from "./pieces";
import type { Readings } from "./readings";
import type { Tie, Ties } from "./ties";

export interface Adjusted {
  readonly beams: Beams;
  /** Standard deviation of each beam, by piece; null where a reading that it hangs on has none. */
  readonly sigmas: ReadonlyMap<string, number | null>;
}

/** A sight of no length is still read no better than this, m. */
const LEAST_SIGMA = 0.0005;

/** `carried` says which beams are known at all, and which rest on an assumed height. */
export function adjustBeams(
  pieces: readonly Piece[],
  ties: Ties,
  readings: Readings,
  carried: Beams,
): Adjusted {
  const beams = new Map<string, Beam>();
  const sigmas = new Map<string, number | null>();
  for (const group of connected(pieces, ties)) {
    if (!group.some(({ id }) => carried.has(id))) continue;
    const solved = solveGroup(group, ties, readings, carried);
    group.forEach(({ id }, i) => {
      const before = carried.get(id);
      if (before === undefined) return;
      beams.set(id, { height: solved.heights[i] ?? before.height, from: before.from });
      sigmas.set(id, solved.sigmas[i] ?? sigmaByMarks(ties.get(id) ?? [], readings));
    });
  }
  return { beams, sigmas };
}

/** Where the others' readings have no σ, a set-up that read marks still has its own. */
function sigmaByMarks(own: readonly Tie[], readings: Readings): number | null {
  const marks = own.filter(({ to }) => "mark" in to).map(({ shot }) => readings.get(shot)?.sigma ?? null);
  const weights = marks.flatMap((sigma) => (sigma === null ? [] : [1 / Math.max(sigma, LEAST_SIGMA) ** 2]));
  if (marks.length === 0 || weights.length < marks.length) return null;
  return 1 / Math.sqrt(weights.reduce((sum, weight) => sum + weight, 0));
}

/** Pieces that readings on common points tie together. */
function connected(pieces: readonly Piece[], ties: Ties): Piece[][] {
  const leader = new Map<Piece, Piece>(pieces.map((piece) => [piece, piece]));
  const find = (piece: Piece): Piece => {
    let at = piece;
    for (let up = leader.get(at); up !== undefined && up !== at; up = leader.get(at)) at = up;
    leader.set(piece, at);
    return at;
  };
  for (const own of ties.values()) {
    for (const { piece, to } of own) if ("shot" in to) leader.set(find(piece), find(to.piece));
  }
  const groups = new Map<Piece, Piece[]>();
  for (const piece of pieces) {
    const key = find(piece);
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return [...groups.values()];
}

/** One reading on a point: beam - point = down. */
interface Sight {
  readonly beam: number;
  readonly down: number;
  readonly weight: number;
}

interface Solved {
  readonly heights: readonly number[];
  readonly sigmas: readonly (number | null)[];
}

function solveGroup(group: readonly Piece[], ties: Ties, readings: Readings, carried: Beams): Solved {
  const own = group.flatMap(({ id }) => ties.get(id) ?? []);
  const used = own.flatMap(({ shot, to }) => ("shot" in to ? [shot, to.shot] : [shot]));
  const weighed = used.every((shot) => typeof readings.get(shot)?.sigma === "number");
  const index = new Map(group.map((piece, i) => [piece, i]));
  const sight = (shot: Shot, piece: Piece, down: number): Sight => {
    const sigma = Math.max(readings.get(shot)?.sigma ?? 0, LEAST_SIGMA);
    return { beam: index.get(piece) ?? -1, down, weight: weighed ? 1 / (sigma * sigma) : 1 };
  };
  const carriedOn = new Set(own.flatMap(({ piece, to }) => ("shot" in to ? [piece] : [])));
  // Heights relative to the carried ones: what is solved for is small, so nothing cancels.
  const base = group.map(({ id }) => carried.get(id)?.height ?? 0);
  const equations = new Normal(group.length);
  for (const tie of own) {
    if (!("mark" in tie.to)) continue;
    // Where other readings tie the set-up, the one on the mark closes the run.
    const { beam, down, weight } = sight(tie.shot, tie.piece, tie.reading);
    const closes = !weighed && carriedOn.has(tie.piece);
    equations.addKnown(beam, tie.to.mark.height.m + down - (base[beam] ?? 0), closes ? EXACT : weight);
  }
  if (!own.some(({ to }) => "mark" in to)) equations.addKnown(heldBeam(group, carried), 0, HELD);
  if (weighed) for (const point of commonPoints(own, sight)) equations.addPoint(point, base);
  else
    for (const { piece, reading, to } of own) {
      if (!("shot" in to)) continue;
      const [beam, other] = [index.get(piece) ?? -1, index.get(to.piece) ?? -1];
      const carriedBy = (base[beam] ?? 0) - (base[other] ?? 0);
      equations.addDifference(beam, other, reading - to.reading - carriedBy);
    }
  const { changes, variances } = equations.solve();
  return {
    heights: base.map((height, i) => height + (changes[i] ?? 0)),
    sigmas: base.map((_, i) => (weighed ? Math.sqrt(Math.max(0, variances[i] ?? 0)) : null)),
  };
}

/** Weight of a closing reading on a mark, which takes no part of the misclosure, beside 1 of a set-up. */
const EXACT = 1e7;

/** Without a mark the group hangs on the beam that was assumed, as if known exactly. */
const HELD = 1e12;

function heldBeam(group: readonly Piece[], carried: Beams): number {
  const assumed = group.findIndex(({ id }) => carried.get(id)?.from === "assumed");
  return Math.max(0, assumed);
}

/** The readings on each turning point, from wherever it was read: shots that name each other are one point. */
function commonPoints(
  own: readonly Tie[],
  sight: (shot: Shot, piece: Piece, down: number) => Sight,
): Sight[][] {
  const pointOf = new Map<Shot, Map<Shot, Sight>>();
  for (const { shot, piece, reading, to } of own) {
    if (!("shot" in to)) continue;
    const point = pointOf.get(to.shot) ?? pointOf.get(shot) ?? new Map<Shot, Sight>();
    const other = pointOf.get(shot);
    if (other !== undefined && other !== point) {
      for (const [seen, value] of other) {
        point.set(seen, value);
        pointOf.set(seen, point);
      }
    }
    point.set(shot, sight(shot, piece, reading));
    point.set(to.shot, sight(to.shot, to.piece, to.reading));
    pointOf.set(shot, point);
    pointOf.set(to.shot, point);
  }
  return [...new Set(pointOf.values())].map((point) => [...point.values()]);
}

/** Normal equations of the beams; the points are eliminated as they come. */
class Normal {
  private readonly matrix: Float64Array;
  private readonly right: Float64Array;

  constructor(private readonly size: number) {
    this.matrix = new Float64Array(size * size);
    this.right = new Float64Array(size);
  }

  addKnown(beam: number, change: number, weight: number): void {
    this.add(beam, beam, weight);
    this.right[beam] = (this.right[beam] ?? 0) + weight * change;
  }

  /** One beam is to change by so much more than the other. */
  addDifference(beam: number, other: number, change: number): void {
    this.add(beam, beam, 1);
    this.add(other, other, 1);
    this.add(beam, other, -1);
    this.add(other, beam, -1);
    this.right[beam] = (this.right[beam] ?? 0) + change;
    this.right[other] = (this.right[other] ?? 0) - change;
  }

  /** With the point's height at its best value, w (beam - down) sums to nothing about its mean. */
  addPoint(sights: readonly Sight[], base: readonly number[]): void {
    const total = sights.reduce((sum, { weight }) => sum + weight, 0);
    const heights = sights.map(({ beam, down }) => (base[beam] ?? 0) - down);
    const mean = sights.reduce((sum, { weight }, k) => sum + (weight * (heights[k] ?? 0)) / total, 0);
    sights.forEach(({ beam, weight }, k) => {
      this.add(beam, beam, weight);
      this.right[beam] = (this.right[beam] ?? 0) + weight * (mean - (heights[k] ?? 0));
      for (const other of sights) this.add(beam, other.beam, (-weight * other.weight) / total);
    });
  }

  private add(row: number, column: number, value: number): void {
    const at = row * this.size + column;
    this.matrix[at] = (this.matrix[at] ?? 0) + value;
  }

  solve(): { readonly changes: readonly number[]; readonly variances: readonly number[] } {
    const factor = cholesky(this.matrix, this.size);
    const changes = substitute(factor, this.right, this.size);
    const variances = Array.from(changes, (_, i) => {
      const unit = new Float64Array(this.size);
      unit[i] = 1;
      return substitute(factor, unit, this.size)[i] ?? 0;
    });
    return { changes: [...changes], variances };
  }
}
