/** What the person should know of the acts on the ground, in words. */
import type { Grading, Rules } from "../document/schema";
import { nearestOnRing } from "../geometry";
import { farthestLook, type GradingPlan } from "../grading";
import { cornerSteps } from "./corner-steps";
import type { DriveResult, Fix, GradingResult, Problem } from "./results";
import { crossesDrive } from "./swale-over-drive";
import { wallCautions } from "./wall-cautions";
import type { Words } from "./words";

/** A drive whose surface is changed by more than this isn't the drive that was checked, m. */
const bump = 0.05;
/** A swale may take a strip off the apron's foot; nearer to the wall than this share of its width it takes the apron. Our own reading. */
const foot = 0.8;
/** Slopes that would have to be steeper than this take a wall, run for one of rise. */
const steepestFit = 1.5;

export function gradingCautions(
  result: GradingResult,
  plan: GradingPlan,
  grading: Grading,
  north: number,
  words: Words,
): Problem[] {
  return [
    ...wallCautions(result.walls, grading, north, words),
    ...result.sides.flatMap((side) => neverMeets(side, words)),
    ...cornerSteps(plan, words),
    ...result.conflicts.flatMap((conflict) => conflictNote(conflict, plan, words)),
    ...uphillSwales(grading, plan, words),
    ...unknownInOrder(grading, result),
  ];
}

function neverMeets(side: GradingResult["sides"][number], words: Words): Problem[] {
  if (side.meets || !side.endWall) return [];
  const { height, along, at } = side.endWall;
  const wall = `A retaining wall ${words.length(height)} high at the apron's edge, ${words.length(along)} along the wall, would end it`;
  return [
    side.farther === null
      ? {
          code: "slope-never-meets",
          severity: "caution",
          where: `the side slope of wall ${side.name}`,
          what: "The ground falls or climbs as steeply as the slope, so it never meets it.",
          how: `${wall}; higher where it stands farther out. Or take a steeper slope.`,
          at,
        }
      : {
          code: "slope-runs-far",
          severity: "caution",
          where: `the side slope of wall ${side.name}`,
          what: `It meets the ground only about ${words.length(Math.round(side.farther))} from the wall; cut and fill count it for ${words.length(farthestLook)} and no farther.`,
          how: `Check the floor height and its unit. ${wall}. Or take a steeper slope.`,
          at,
        },
  ];
}

function apronTaken(conflict: GradingResult["conflicts"][number], words: Words): Problem {
  return {
    code: "swale-takes-apron",
    severity: "caution",
    where: `${conflict.secondName} and ${conflict.firstName}`,
    what: `${sentence(conflict.secondName)} cuts up to ${words.length(-conflict.by)} off ${conflict.firstName} over ${words.area(conflict.area)}: beside the wall the ground falls into it more steeply than was asked for, and less of it covers the footing.`,
    how: "Move the swale away from the wall, beyond the apron and its own bank.",
    at: conflict.at,
    ids: [conflict.first, conflict.second],
  };
}

function conflictNote(
  conflict: GradingResult["conflicts"][number],
  plan: GradingPlan,
  words: Words,
): Problem[] {
  // A drive is meant to cross the apron to its door.
  const toDoor = plan.drives.some(
    ({ drive, sillBelowFloor }) => drive.id === conflict.second && sillBelowFloor !== null,
  );
  if (conflict.first === "apron" && toDoor) return [];
  // A swale at the apron's foot takes a strip off it and leads its water away: the order tells it, nothing is wrong.
  const bySwale = plan.swales.some(({ swale }) => swale.id === conflict.second);
  if (conflict.first === "apron" && bySwale) {
    const away = nearestOnRing(plan.footprint.ring, ...conflict.at).distance;
    return away < foot * plan.pad.width ? [apronTaken(conflict, words)] : [];
  }
  if (crossesDrive(conflict, plan)) return [];
  const what = conflict.by < 0 ? "cuts" : "raises";
  const onDrive = plan.drives.some(({ drive }) => drive.id === conflict.first);
  return [
    {
      code: "grading-conflict",
      severity: onDrive && Math.abs(conflict.by) > bump ? "caution" : "note",
      where: `${conflict.secondName} and ${conflict.firstName}`,
      what: `${sentence(conflict.secondName)} ${what} ${conflict.firstName} by up to ${words.length(Math.abs(conflict.by))} over ${words.area(conflict.area)}: it comes later in the order.`,
      how: "Move one of them, or change their order in the drive step.",
      at: conflict.at,
      ids: [conflict.first, conflict.second],
    },
  ];
}

/** Typed heights of a bed that rise on the way. */
function uphillSwales({ swales }: Grading, plan: GradingPlan, words: Words): Problem[] {
  return plan.swales.flatMap((line): Problem[] => {
    if (line.fall >= 0 || !swales.some(({ id, beds }) => id === line.swale.id && beds.length > 0)) return [];
    let worst = 1;
    const rise = (i: number) => (line.bed[i] as number) - (line.bed[i - 1] as number);
    for (let i = 1; i < line.bed.length; i++) if (rise(i) > rise(worst)) worst = i;
    return [
      {
        code: "swale-bed-rises",
        severity: "caution",
        where: `${line.swale.name}, ${words.length(line.at[worst - 1] as number)} to ${words.length(line.at[worst] as number)} from its high end`,
        what: `Its typed bed rises ${words.length(rise(worst))} there: water stands behind it.`,
        how: "Type heights that go down all the way to the outlet.",
        ids: [line.swale.id],
      },
    ];
  });
}

function unknownInOrder({ order }: Grading, result: GradingResult): Problem[] {
  const known = new Set(result.order.map(({ id }) => id));
  if (order.every((id) => known.has(id))) return [];
  return [
    {
      code: "grading-order-unknown",
      severity: "note",
      where: "the order of grading",
      what: "It names something that isn't in the plan, which is passed over.",
      how: "Set the order again in the drive step.",
    },
  ];
}

/** What the drives' long sections come to. They follow the floor. */
export function driveProfileCautions(
  drives: readonly DriveResult[],
  { steepestDrive, off }: Rules,
  words: Words,
): Problem[] {
  return drives.flatMap((drive): Problem[] => {
    const common = { where: drive.name, ids: [drive.id] };
    const steep = off.includes("steepestDrive") ? [] : drive.pieces.filter(({ over }) => over);
    const worst = steep.reduce<(typeof steep)[number] | null>(
      (a, b) => (a && Math.abs(a.grade) >= Math.abs(b.grade) ? a : b),
      null,
    );
    const node = worst && drive.nodes.find(({ distance: at }) => at === worst.from);
    const touching = drive.underside?.parts.filter(({ room }) => room < 0) ?? [];
    const hit = touching.reduce<(typeof touching)[number] | null>(
      (a, b) => (a && a.room <= b.room ? a : b),
      null,
    );
    return [
      ...(worst && drive.nodes.some(({ kind }) => kind === "break")
        ? [
            {
              ...common,
              code: "drive-piece-steep",
              severity: "caution" as const,
              where: `${drive.name}, ${words.length(worst.from)} to ${words.length(worst.to)} from the road`,
              what: `It ${worst.grade > 0 ? "climbs" : "falls"} at ${words.slope(Math.abs(worst.grade))} there, where ${words.slope(steepestDrive)} is the limit.`,
              how: "Drag its grade breaks until each piece is within the limit.",
              ...(node ? { at: node.at } : {}),
            },
          ]
        : []),
      ...(hit
        ? [
            {
              ...common,
              code: "drive-underside",
              severity: "caution" as const,
              where: `${drive.name}, ${words.length(Math.max(0, hit.distance))} from the road`,
              what: `A ${drive.underside?.vehicle ?? "vehicle"} touches with its ${partWords[hit.part]} by ${words.length(-hit.room)}.`,
              how: "Round the break with a vertical curve, or spread it over two breaks.",
              at: hit.at,
            },
          ]
        : []),
    ];
  });
}

const partWords = { underside: "underside", front: "front end", rear: "rear end" } as const;

export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Slopes are offered in tenths, the flatter ones never flatter than what just fits. */
const tenth = 10;
/** What "fits in the space" beside each caution of a slope that passes a line, with what one click can do. */
export function withFits(
  problems: readonly Problem[],
  result: GradingResult,
  grading: Grading,
  words: Words,
): Problem[] {
  return problems.map((problem) => {
    const fit = fitOf(problem, result);
    if (!fit) return problem;
    const slope = fit.slope === null ? null : Math.floor(fit.slope * tenth + 1e-9) / tenth;
    const gentle = slope !== null && slope >= steepestFit ? slope : null;
    const off = standsWhere(fit, words);
    const wall = `a retaining wall ${words.length(fit.wallHeight)} high, ${off}`;
    const there = fit.clear > 0 ? "before what stays clear" : "there";
    const stops =
      gentle === null
        ? `Only ${wall}, would stop the ${fit.what} slope ${there}.`
        : `The ${fit.what} slope stops ${there} at ${gentle} : 1, or with ${wall}.`;
    // Where another shape comes nearest it is that which is to be moved; the slope passes the line elsewhere.
    const byShape = problem.ids?.some((id) => result.order.some((act) => act.id === id)) ?? false;
    return {
      ...problem,
      how: byShape
        ? `${problem.how} Elsewhere ${stops.charAt(0).toLowerCase()}${stops.slice(1)}`
        : `${stops} ${problem.how}`,
      fixes: [
        ...(gentle === null ? [] : [takeSlopes(fit, gentle, result, grading)]),
        ...(fit.wall
          ? [
              {
                words: "Put a retaining wall along the line",
                edits: [
                  {
                    command: "retainingWall.add" as const,
                    args: {
                      line: fit.wall.line.map(([x, y]): [number, number] => [x, y]),
                      lowSide: fit.wall.lowSide,
                    },
                  },
                ],
              },
            ]
          : []),
      ],
    };
  });
}

/** The slope of all sides and, where sides that come to the line have one of their own, theirs. */
function takeSlopes(
  { what, sides }: GradingResult["fits"][number],
  slope: number,
  result: GradingResult,
  { apron }: Grading,
): Fix {
  const patch = what === "fill" ? { fill: slope } : { cut: slope };
  const ownOf = (name: string) =>
    apron.sides.find((side) => side[what] !== null && result.sides[side.wall]?.name === name);
  const own = sides.flatMap((name) => ownOf(name) ?? []);
  const usual = own.length < sides.length;
  const before = own.map(({ wall }) => result.sides[wall]?.name ?? "").join(", ");
  return {
    words: usual
      ? `Take ${what} slopes of ${slope} : 1`
      : `Take ${slope} : 1 for the ${what} slope before ${before}`,
    edits: [
      ...(usual ? [{ command: "grading.changeSlopes" as const, args: { patch } }] : []),
      ...own.map(({ wall }) => ({ command: "grading.changeSide" as const, args: { wall, patch } })),
    ],
  };
}

function standsWhere({ clear, wall }: GradingResult["fits"][number], words: Words): string {
  if (clear > 0) return `${words.length(clear)} from it`;
  return wall ? `${words.length(wall.inside)} inside the line` : "on the line";
}

/** The worst fit of the line that a caution is about. */
function fitOf({ code, where }: Problem, { fits }: GradingResult): GradingResult["fits"][number] | null {
  const about =
    code === "grading-past-lot"
      ? fits.filter(({ line }) => line.startsWith("lot line"))
      : code === "grading-near-feature"
        ? fits.filter(({ line }) => line === where)
        : [];
  return about.reduce<(typeof about)[number] | null>(
    (a, b) => (a && a.wallHeight >= b.wallHeight ? a : b),
    null,
  );
}
