/**
 * Pipes that take swales under drives.
 *
 * Units   metres, m3/s.
 * Method  Where a swale's line crosses a drive's, the pipe lies on the swale's bed from toe to toe of the drive's side
 *         slopes. It must carry the swale's whole peak with water no higher than a freeboard under the drive's lowest place
 *         over the ditch, and with the cover asked for where the least of the drive and its shoulders lies over it.
 * Source  see `drainage/culvert.ts`; the freeboard is our own choice. Cover: the maker's.
 */
import type { Drainage } from "../document/schema";
import { type Culvert, headwater, type PipeKind, pipeKinds, standardPipes } from "../drainage";
import { pointAlong } from "../geometry";
import {
  bedFall,
  bedHeight,
  type Crossing,
  crossings,
  driveHeight,
  driveOperator,
  type GradingPlan,
  noLimits,
} from "../grading";
import type { PipeResult, SwaleFlow } from "./results";

/** Water stays so far under the drive's lowest place, m. */
const freeboard = 0.1524;

type SwaleLine = GradingPlan["swales"][number];
type DriveLine = GradingPlan["drives"][number];

export function pipesUnderDrives(
  plan: GradingPlan,
  flows: readonly SwaleFlow[],
  pipe: Drainage["pipe"],
  floor: number,
): PipeResult[] {
  if (!plan.piped) return [];
  const kind = pipeKinds.find(({ id }) => id === pipe.kind) ?? (pipeKinds[0] as PipeKind);
  return plan.swales.flatMap((swale) => {
    const flow = flows.find(({ id }) => id === swale.swale.id);
    const asked = { peak: flow?.peak ?? null, below: flow?.depth ?? 0, kind, pipe, floor };
    return plan.drives.flatMap((drive) =>
      crossings(swale, drive).map((crossing) => pipeAt(crossing, swale, drive, asked)),
    );
  });
}

/** Places looked at to each side of the drive's middle for the least cover. */
const coverSteps = 12;

interface Asked {
  readonly peak: number | null;
  /** Depth of the storm's water in the ditch below the pipe, m. */
  readonly below: number;
  readonly kind: PipeKind;
  readonly pipe: Drainage["pipe"];
  readonly floor: number;
}

function pipeAt(crossing: Crossing, swale: SwaleLine, drive: DriveLine, asked: Asked): PipeResult {
  const { at, alongSwale, alongDrive, square } = crossing;
  const top = heightOn(drive, alongDrive, asked.floor);
  const bed = bedHeight(swale, alongSwale);
  const { width, sideSlope, shoulder } = drive.drive;
  const half = (width / 2 + shoulder.width + sideSlope * Math.max(0, top - bed)) / square;
  const [from, to] = [Math.max(0, alongSwale - half), Math.min(swale.length, alongSwale + half)];
  const inverts = [bedHeight(swale, from), bedHeight(swale, to)] as const;
  const length = to - from;
  const fall = length > 0 ? (inverts[0] - inverts[1]) / length : bedFall(swale, alongSwale);
  const { bottomWidth, sideSlope: bank } = swale.swale;
  // Over the ditch's own width, from rim to rim, the drive dams it.
  const rim = (bottomWidth / 2 + bank * Math.max(0, top - bed)) / square;
  const lowPoint = lowestWithin(drive, alongDrive - rim, alongDrive + rim, asked.floor);
  const like = { length, fall, kind: asked.kind };
  const edge = (width / 2 + shoulder.width) / square;
  const over = leastOver({ inverts, from, to }, swale, drive, asked.floor, alongSwale, edge);
  const coverOf = (bore: number) => over - bore;
  const holds = (bore: number) =>
    asked.peak !== null &&
    headwater({ ...like, diameter: bore }, asked.peak, asked.below).head <= lowPoint - freeboard - inverts[0];
  const bore = asked.pipe.bore ?? sizeFor(asked.peak, holds);
  const head =
    asked.peak === null || bore === null
      ? null
      : headwater({ ...like, diameter: bore } as Culvert, asked.peak, asked.below);
  const place = (along: number): [number, number] => [...pointAlong(swale.line, along).at];
  return {
    swale: swale.swale.id,
    drive: drive.drive.id,
    name: `${swale.swale.name} under ${drive.drive.name}`,
    at: [at[0], at[1]],
    ends: [place(from), place(to)],
    inverts,
    length,
    fall,
    peak: asked.peak,
    bore,
    typed: asked.pipe.bore !== null,
    headwater: head && inverts[0] + head.head,
    by: head?.by ?? null,
    inletLoss: asked.kind.ke,
    roughness: asked.kind.n,
    below: asked.below,
    lowPoint,
    freeboard,
    cover: bore === null ? null : coverOf(bore),
    verdict: verdictOf(),
  };

  function verdictOf(): PipeResult["verdict"] {
    if (!(fall > 0)) return "doesn't fall";
    if (asked.peak === null) return null;
    if (bore === null || !holds(bore)) return "overtops";
    return coverOf(bore) < asked.pipe.cover - 1e-9 ? "too little cover" : "carries it";
  }
}

interface Laid {
  readonly inverts: readonly [number, number];
  /** Distances along the swale of its ends, m. */
  readonly from: number;
  readonly to: number;
}

/** Least height of the drive with its shoulders over the pipe's invert, m: at an edge, where the drive falls that way. */
function leastOver(
  { inverts, from, to }: Laid,
  swale: SwaleLine,
  drive: DriveLine,
  floor: number,
  along: number,
  half: number,
): number {
  const operator = driveOperator(drive);
  const limits = noLimits();
  let least = Number.POSITIVE_INFINITY;
  for (let k = -coverSteps; k <= coverSteps; k++) {
    // A hair within the edge: beyond it the side slope begins.
    const t = along + 0.999 * half * (k / coverSteps);
    if (t < from || t > to) continue;
    const [x, y] = pointAlong(swale.line, t).at;
    operator.limitsAt(x, y, 0, limits);
    const invert = inverts[0] + ((inverts[1] - inverts[0]) * (t - from)) / (to - from || 1);
    least = Math.min(least, limits.lower + limits.share * floor - invert);
  }
  return least;
}

/** The least standard bore that holds the water under the drive, m; null without a peak or where none does. */
function sizeFor(peak: number | null, holds: (bore: number) => boolean): number | null {
  if (peak === null) return null;
  return standardPipes.map((inches) => inches * 0.0254).find(holds) ?? null;
}

function heightOn(drive: DriveLine, along: number, floor: number): number {
  const { base, share } = driveHeight(drive, along);
  return base + share * floor;
}

function lowestWithin(drive: DriveLine, start: number, end: number, floor: number): number {
  const [from, to] = [Math.max(0, start), Math.min(drive.length, end)];
  const steps = Math.max(1, Math.ceil((to - from) / 0.5));
  return Math.min(
    ...Array.from({ length: steps + 1 }, (_, i) => heightOn(drive, from + ((to - from) * i) / steps, floor)),
  );
}
