/** The heights to set out, by name and place, and the beam they are read from. */
import type { Project } from "../document/schema";
import type { FoundationLevels } from "../foundation";
import { bedHeight, type GradingPlan } from "../grading";
import type { SetoutHeight, SetoutReference } from "../setout";
import type { DriveResult, SurveyResult } from "./results";
import type { Words } from "./words";

export function setoutHeights(
  project: Project,
  plan: GradingPlan,
  levels: FoundationLevels,
  drives: readonly DriveResult[],
  words: Words,
): SetoutHeight[] {
  return [
    { what: "top of wall", where: "all round", height: levels.topOfWall },
    { what: "finished floor", where: "inside", height: levels.floor },
    { what: "top of base stone", where: "inside, under the slab", height: levels.undersideOfSlab },
    { what: "earth under the base stone", where: "inside", height: levels.undersideOfBase },
    { what: "top of footing", where: "all round", height: levels.topOfFooting },
    { what: "bottom of trench", where: "all round", height: levels.bottomOfTrench },
    ...apronHeights(plan, levels.floor, words),
    ...sills(project, plan, levels.floor),
    ...plan.swales.flatMap((line) =>
      line.line.map((_, i): SetoutHeight => {
        const along = line.distances[i] ?? 0;
        const last = i === line.line.length - 1;
        const part =
          i === 0 ? "high end" : last ? "outlet" : `bend, ${words.length(along)} from its high end`;
        return { what: `bed of ${line.swale.name}`, where: part, height: bedHeight(line, along) };
      }),
    ),
    ...drives.flatMap((drive) => driveEnds(drive, words)),
  ];
}

/** The finished ground to grade to; drives and sides that are left as they are have heights of their own. */
function apronHeights({ pad }: GradingPlan, floor: number, words: Words): SetoutHeight[] {
  if (pad.leave.every((left) => left === 1)) return [];
  const atWall = floor + pad.edgeAboveFloor;
  const but = pad.leave.some((left) => left === 1) ? "but for sides left as they are" : "clear of drives";
  return [
    { what: "finished ground", where: `at the wall, ${but}`, height: atWall },
    {
      what: "finished ground",
      where: `${words.length(pad.width)} out from the wall`,
      height: atWall - pad.fall * pad.width,
    },
  ];
}

function sills(project: Project, plan: GradingPlan, floor: number): SetoutHeight[] {
  return (project.building?.doors ?? []).flatMap((door) => {
    const wall = plan.footprint.walls[door.wall];
    return wall
      ? [{ what: `sill of ${door.name}`, where: `wall ${wall.name}`, height: floor - door.sillBelowFloor }]
      : [];
  });
}

/** Both ends of a drive and the edge of its landing. */
function driveEnds({ name, stations }: DriveResult, words: Words): SetoutHeight[] {
  const first = stations[0];
  const last = stations[stations.length - 1];
  if (!first || !last) return [];
  const edge = stations.find(
    (station, i) => i > 0 && station.grade !== null && breaks(stations[i - 1]?.grade, station.grade),
  );
  const rows: SetoutHeight[] = [{ what: `top of ${name}`, where: "at the road", height: first.finished }];
  if (edge)
    rows.push({
      what: `top of ${name}`,
      where: `edge of the landing, ${words.length(edge.distance)} from the road`,
      height: edge.finished,
    });
  return [...rows, { what: `top of ${name}`, where: "at its far end", height: last.finished }];
}

function breaks(before: number | null | undefined, after: number): boolean {
  return before !== null && before !== undefined && Math.abs(before - after) > 1e-6;
}

/** The reference mark, and the beam: from today's reading on it, else from the first set-up that saw it. */
export function setoutReference(project: Project, survey: SurveyResult): SetoutReference {
  const { mark } = survey;
  if (!mark) return { mark: null, beam: null };
  const today = project.worksheet.markReading;
  if (today) return { mark, beam: mark.height + today.m };
  const tied = new Map(survey.setups.map((setup) => [setup.id, setup.tied ? setup.beam : null]));
  const saw = project.survey.shots.find(
    (shot) =>
      !shot.aside && shot.kind === "mark" && shot.of === mark.id && (tied.get(shot.setup) ?? null) !== null,
  );
  return { mark, beam: saw ? (tied.get(saw.setup) ?? null) : null };
}
