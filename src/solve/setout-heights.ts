/** The heights to set out, by name and place, and the beam they are read from. */
import { hasSlab } from "../document/foundationMeasures";
import type { Project } from "../document/schema";
import type { FoundationLevels } from "../foundation";
import { cornerName, type GradingPlan, type SideRule } from "../grading";
import { type SetoutHeight, type SetoutReference, setout } from "../setout";
import { oncePer } from "./once-per";
import type {
  DriveResult,
  DriveStation,
  FootingDrainResult,
  FoundationResult,
  PipeResult,
  SetoutResult,
  SurveyResult,
  SwaleResult,
} from "./results";
import { type NumberedStation, routeStations } from "./route-stations";
import type { Words } from "./words";

export function setoutHeights(
  project: Project,
  plan: GradingPlan,
  levels: FoundationLevels,
  foundation: FoundationResult,
  drives: readonly DriveResult[],
  swales: readonly SwaleResult[],
  pipes: readonly PipeResult[],
  words: Words,
): SetoutHeight[] {
  const told = routeStations(project.grading, drives, swales);
  return [
    { what: "top of wall", where: "all round", height: levels.topOfWall },
    { what: "finished floor", where: "inside", height: levels.floor },
    ...insideHeights(project.building, levels),
    ...footingHeights(foundation, levels, words),
    ...apronHeights(plan, levels.floor, words),
    ...sills(project, plan, levels.floor),
    ...swales.flatMap((swale) => bedHeights(swale, told.swales.get(swale.id) ?? [], words)),
    ...pipes.flatMap(pipeInverts),
    ...drives.flatMap((drive) =>
      driveHeights(drive, told.drives.get(drive.id) ?? [], servedDoor(drive.id, project, plan), words),
    ),
  ];
}

/** What the inside is brought to before its floor. */
function insideHeights(building: Project["building"], levels: FoundationLevels): SetoutHeight[] {
  if (!building) return [];
  const { foundation } = building;
  if (foundation.kind === "crawl-space")
    return [{ what: "ground in the crawl space", where: "inside", height: levels.undersideOfBase }];
  const slab = hasSlab(foundation);
  const stone = { what: "top of base stone", where: "inside, under the slab" };
  const earth = { what: "earth under the base stone", where: "inside", height: levels.undersideOfBase };
  if (!slab) return [earth];
  return [{ ...stone, height: levels.undersideOfSlab - foundation.insulation }, earth];
}

/** Top and bottom of the footing: all round, piece by piece where it steps, hole by hole for posts. */
function footingHeights(
  foundation: FoundationResult,
  levels: FoundationLevels,
  words: Words,
): SetoutHeight[] {
  if (foundation.kind === "posts")
    return foundation.posts.map(({ bottom, wall, offset }, i) => ({
      what: `bottom of hole ${i + 1}`,
      where: onWallFrom(foundation, wall, offset, words),
      height: bottom,
    }));
  if (foundation.kind === "thickened-edge")
    return [{ what: "bottom of thickened edge", where: "all round", height: levels.bottomOfTrench }];
  if (!foundation.stepped || foundation.stepped.levels === 0)
    return [
      { what: "top of footing", where: "all round", height: levels.topOfFooting },
      { what: "bottom of trench", where: "all round", height: levels.bottomOfTrench },
    ];
  const pieces = foundation.walls.flatMap((wall) => wall.pieces.map((piece) => ({ wall, piece })));
  return ["top of footing", "bottom of trench"].flatMap((what, i) =>
    pieces.map(({ wall, piece }) => ({
      what,
      where: `wall ${wall.name}, ${words.length(piece.from)} to ${words.length(piece.to)} from ${cornerName(wall.wall)}`,
      height: i === 0 ? piece.top : piece.bottom,
    })),
  );
}

function onWallFrom({ walls }: FoundationResult, wall: number, offset: number, words: Words): string {
  return offset < 1e-6
    ? `corner ${cornerName(wall)}`
    : `wall ${walls[wall]?.name ?? ""}, ${words.length(offset)} from ${cornerName(wall)}`;
}

/**
 * The finished ground to grade to; drives and sides that are left as they are have heights of their own. One pair of rows
 * where all graded sides are alike, else a pair for each kind of side, by the walls' names.
 */
function apronHeights({ pad, footprint }: GradingPlan, floor: number, words: Words): SetoutHeight[] {
  const graded = footprint.walls.filter((_, i) => pad.leave[i] !== 1);
  if (graded.length === 0) return [];
  const alike = new Map<string, { readonly rule: SideRule; readonly walls: string[] }>();
  footprint.walls.forEach(({ name }, i) => {
    if (pad.leave[i] === 1) return;
    const rule = pad.sides?.[i] ?? pad;
    const key = `${rule.edgeAboveFloor} ${rule.fall} ${rule.width}`;
    const kind = alike.get(key) ?? { rule, walls: [] };
    kind.walls.push(name);
    alike.set(key, kind);
  });
  const some = graded.length < footprint.walls.length;
  return [...alike.values()].flatMap(({ rule, walls }) => {
    const only = alike.size > 1 ? `, ${walls.join(", ")}` : "";
    const but = some && only === "" ? "but for sides left as they are" : "clear of drives";
    const atWall = floor + rule.edgeAboveFloor;
    return [
      { what: "finished ground", where: `at the wall${only}, ${but}`, height: atWall },
      {
        what: "finished ground",
        where: `${words.length(rule.width)} out from the wall${only}`,
        height: atWall - rule.fall * rule.width,
      },
    ];
  });
}

function sills(project: Project, plan: GradingPlan, floor: number): SetoutHeight[] {
  return (project.building?.doors ?? []).flatMap((door) => {
    const wall = plan.footprint.walls[door.wall];
    return wall
      ? [{ what: `sill of ${door.name}`, where: `wall ${wall.name}`, height: floor - door.sillBelowFloor }]
      : [];
  });
}

function bedHeights(
  { name }: SwaleResult,
  stations: readonly NumberedStation<SwaleResult["stations"][number]>[],
  words: Words,
): SetoutHeight[] {
  return stations.map(({ name: peg, station }, i) => {
    const last = i === stations.length - 1;
    const place = i === 0 ? "high end" : last ? "outlet" : `${words.length(station.distance)} on`;
    return { what: `bed of ${name}`, where: `${peg}, ${place}`, height: station.bed };
  });
}

function pipeInverts({ name, inverts: [inlet, outlet] }: PipeResult): SetoutHeight[] {
  return [
    { what: "invert of pipe", where: `${name}, inlet`, height: inlet },
    { what: "invert of pipe", where: `${name}, outlet`, height: outlet },
  ];
}

/** The set-out with the drain round the footing, which is known only once the rest is. */
export function withDrain(
  made: SetoutResult,
  reference: SetoutReference,
  drain: FootingDrainResult | null,
): SetoutResult {
  return drain ? { ...made, rows: [...made.rows, ...setout(reference, drainInverts(drain)).rows] } : made;
}

/** The drain rises both ways from its lowest corner; that, its highest, and where it comes out. */
function drainInverts(drain: FootingDrainResult): SetoutHeight[] {
  const what = "invert of footing drain";
  return [
    { what, where: `corner ${drain.highCorner}, its highest`, height: drain.high },
    { what, where: `corner ${drain.lowCorner}, its lowest`, height: drain.low },
    ...(drain.outlet ? [{ what, where: "where it comes out", height: drain.outlet.invert }] : []),
  ];
}

/** "at big door, wall C-D"; a drive without a door just ends. */
function servedDoor(id: string, project: Project, plan: GradingPlan): string {
  const serves = project.grading.drives.find((drive) => drive.id === id)?.door ?? null;
  const door = serves === null ? undefined : project.building?.doors.find((one) => one.id === serves);
  const wall = door && plan.footprint.walls[door.wall];
  return door && wall ? `at ${door.name}, wall ${wall.name}` : "at its end, away from the road";
}

function driveHeights(
  { name, stations }: DriveResult,
  told: readonly NumberedStation<DriveStation>[],
  end: string,
  words: Words,
): SetoutHeight[] {
  const edge = stations.find(
    (station, i) => i > 0 && station.grade !== null && breaks(stations[i - 1]?.grade, station.grade),
  );
  return told.map(({ name: peg, station }, i) => {
    const on = `${words.length(station.distance)} on`;
    const between = station === edge ? `edge of the landing, ${on}` : on;
    const place = i === 0 ? "at the road" : i === told.length - 1 ? end : between;
    return { what: `top of ${name}`, where: `${peg}, ${place}`, height: station.finished };
  });
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
  return { mark, beam: beamOf(mark.id, readingsOnMarks(project.survey.shots), survey.setups) };
}

/** Few of the shots are on marks. */
const readingsOnMarks = oncePer((shots: Project["survey"]["shots"]) =>
  shots.filter(({ aside, kind }) => !aside && kind === "mark"),
);

function beamOf(
  mark: string,
  readings: Project["survey"]["shots"],
  setups: SurveyResult["setups"],
): number | null {
  // A rod that reads up has no beam to read down from.
  const tied = new Map(
    setups.map(({ id, tied: known, beam, reads }) => [id, known && reads !== "up" ? beam : null]),
  );
  const saw = readings.find((shot) => shot.of === mark && (tied.get(shot.setup) ?? null) !== null);
  return saw ? (tied.get(saw.setup) ?? null) : null;
}
