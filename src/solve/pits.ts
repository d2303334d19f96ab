/** What the test pits say of the strip, and of the trench at each corner and along each side. */
import type { Materials, Point, Survey } from "../document/schema";
import {
  firmGround,
  type Layer,
  type PitSpot,
  pitDepthAt,
  pitSpots,
  pitSummary,
  type UnderFooting,
  underFooting,
} from "../survey";
import type { CornerResult, Fix, PitsResult, Problem, TrenchCorner, WallElevation } from "./results";
import type { Words } from "./words";

/** About 2 in: strip and pits differ by more than anyone would notice with a machine, m. */
const UNLIKE = 0.05;

export interface PitsStage {
  readonly pits: PitsResult;
  readonly problems: readonly Problem[];
}

export function pitsStage(
  survey: Survey,
  outline: readonly Point[],
  corners: readonly CornerResult[],
  trench: readonly TrenchCorner[],
  walls: readonly WallElevation[],
  materials: Materials,
  words: Words,
): PitsStage {
  const spots = pitSpots(survey, outline);
  const topsoil = pitSummary(spots, "topsoil");
  const found = corners.map(({ name, x, y, ground }) => ({
    corner: name,
    firm: firmGround(spots, [x, y], ground)?.height ?? null,
    rock: below(spots, "rock", [x, y], ground),
    water: below(spots, "water", [x, y], ground),
  }));
  const problems = stripProblem(topsoil, materials.stripDepth, words);
  for (const corner of corners) problems.push(...footingProblems(spots, corner, trench, words));
  for (const wall of walls) problems.push(...sideProblems(spots, wall, outline, words));
  return {
    pits: { count: spots.length, topsoil, corners: found },
    problems,
  };
}

function below(spots: readonly PitSpot[], layer: Layer, at: Point, ground: number): number | null {
  const found = pitDepthAt(spots, layer, at);
  return found === null ? null : ground - found.depth;
}

function stripProblem(topsoil: PitsResult["topsoil"], strip: number, words: Words): Problem[] {
  if (topsoil === null || Math.abs(topsoil.mean - strip) <= UNLIKE) return [];
  const pits = topsoil.count === 1 ? "One test pit shows" : `${topsoil.count} test pits show`;
  return [
    {
      code: "strip-unlike-pits",
      severity: "note",
      where: "the topsoil strip",
      what: `${pits} ${words.length(topsoil.mean)} of topsoil${topsoil.count > 1 ? " on average" : ""}; the strip is reckoned with ${words.length(strip)}.`,
      how: "Take the depth that the pits show, or dig more pits.",
    },
  ];
}

function footingProblems(
  spots: readonly PitSpot[],
  { name, x, y, ground }: CornerResult,
  trench: readonly TrenchCorner[],
  words: Words,
): Problem[] {
  const bottom = trench.find(({ corner }) => corner === name)?.bottom;
  if (bottom === undefined) return [];
  return underFooting(spots, [x, y], ground, bottom).map((found) =>
    said(found, `trench at corner ${name}`, [x, y], words),
  );
}

function said({ layer, by, count }: UnderFooting, where: string, [x, y]: Point, words: Words): Problem {
  const [code, what, how] = SAID[layer];
  return {
    code,
    severity: "caution",
    where,
    what: `By ${count === 1 ? "the one test pit that met it" : `${count} test pits`}, ${what.replace("#", words.length(by))}`,
    how,
    at: [x, y],
    ...(layer === "water" ? { fixes: [drainRound] } : {}),
  };
}

/** Between the corners only where it is worse than at both of them: the corners speak for themselves. */
function sideProblems(
  spots: readonly PitSpot[],
  wall: WallElevation,
  outline: readonly Point[],
  words: Words,
): Problem[] {
  const [start, end] = [outline[wall.wall], outline[(wall.wall + 1) % outline.length]];
  if (!start || !end || spots.length === 0) return [];
  const last = wall.distance.length - 1;
  const at = (i: number): [number, number] => {
    const t = (wall.distance[i] as number) / wall.length;
    return [start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1])];
  };
  const found = wall.distance.reduce((worst, _, i) => {
    for (const one of underFooting(spots, at(i), wall.existing[i] as number, wall.bottom[i] as number)) {
      const before = worst.get(one.layer);
      if (!before || one.by > before.found.by) worst.set(one.layer, { station: i, found: one });
    }
    return worst;
  }, new Map<Layer, { station: number; found: UnderFooting }>());
  return [...found.values()]
    .filter(({ station, found: { layer, by } }) =>
      [0, last].every((corner) => {
        const there = underFooting(
          spots,
          at(corner),
          wall.existing[corner] as number,
          wall.bottom[corner] as number,
        ).find((one) => one.layer === layer);
        return station !== corner && by > (there?.by ?? 0) + UNLIKE;
      }),
    )
    .map(({ station, found: one }) =>
      said(
        one,
        `trench along wall ${wall.name}, ${words.length(wall.distance[station] as number)} from ${wall.name.split("-")[0]}`,
        at(station),
        words,
      ),
    );
}

/** What a click can do about water in the trench; whether the drain can come out by itself is told in the water step. */
const drainRound: Fix = {
  words: "Put a drain round the footing, and ask where it comes out",
  edits: [
    { command: "building.changeFoundation", args: { patch: { drain: true } } },
    { command: "drainage.change", args: { part: "footingDrain", patch: { on: true } } },
  ],
};

/** # stands for the length. What soil can carry is for an engineer or the building office to say. */
const SAID: Readonly<Record<Layer, readonly [code: string, what: string, how: string]>> = {
  topsoil: [
    "footing-on-topsoil",
    "topsoil reaches # below the bottom of the trench.",
    "Dig down to undisturbed ground there, or step the footing.",
  ],
  oldFill: [
    "footing-on-fill",
    "old fill reaches # below the bottom of the trench.",
    "Dig down to undisturbed ground there, step the footing, or ask an engineer about the fill.",
  ],
  rock: [
    "rock-in-trench",
    "rock stands # above the bottom of the trench.",
    "Reckon with breaking it, or ask whether the footing may stand on it.",
  ],
  water: [
    "water-in-trench",
    "water stands # above the bottom of the trench.",
    "Plan a drain that comes out lower, and dig when the ground is dry; wet trench sides fall in.",
  ],
};
