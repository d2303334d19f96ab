/**
 * What the person should know before digging, building or ordering: found in the results, said in words.
 *
 * Source  Trenches: 29 CFR 1926.651 and .652.
 *         Slopes: International Building Code appendix J (2012). Local rules and licensed people decide.
 */
import { hasBearing, keepsRule } from "../advice";
import type { Project } from "../document/schema";
import { nearestOnRing } from "../geometry";
import { farthestLook, onWall } from "../grading";
import type { FloorResults } from "./floor";
import { foundationCautions } from "./foundation-cautions";
import { fillIntoRoad } from "./into-road";
import { placeName } from "./place-names";
import { figuresToCheck, floorFarFromGround } from "./plausible";
import type { BandRule, Problem } from "./results";
import type { BuildingSite } from "./site";
import { waterCautions } from "./water-cautions";
import type { Words } from "./words";

/** 4 ft: a ladder; 5 ft: shoring or sloped sides, m. */
const ladderDepth = 1.2192;
const protectedDepth = 1.524;
/** Steepest side slopes without a study, run for one of rise. */
const steepestSlope = 2;
/** No earth stands steeper than this by itself for long, run for one of rise: likelier a slip. Our own choice. */
const wallLike = 0.5;
/** Ground that falls by less than this away from a wall is level, m. */
const level = 1e-3;
/** More of the earth than this on guessed ground is worth a word. */
const guessedShare = 0.1;
/** A drive that ends nearer to the building than this is meant to lead to it, m. */
const besideBuilding = 12;

export function cautions(
  site: BuildingSite,
  project: Project,
  results: FloorResults,
  words: Words,
): Problem[] {
  return [
    // A figure in the wrong unit brings most of the rest: it is told before what follows from it.
    ...floorFarFromGround(results.floor, site.ground, words),
    ...figuresToCheck(project, words),
    ...trenchCautions(results, words),
    ...(results.foundation ? foundationCautions(results.foundation, project, words) : []),
    ...wallCautions(results, site, words),
    ...waterCautions(site, project, results, words),
    ...driveCautions(project, results, words),
    ...fillIntoRoad(site, results, words),
    ...servesNoDoor(site, project, results, words),
    ...slopeCautions(site, project),
    ...bandCautions(results),
    ...readingCautions(results, words),
    ...guessCautions(results),
    ...markCautions(project),
  ];
}

/** Without a mark that can be found on the plan nobody can set out from the sheet. */
function markCautions({ survey, building }: Project): Problem[] {
  const [mark] = survey.marks;
  const problems: Problem[] = [];
  if (!mark)
    problems.push({
      code: "mark-missing",
      severity: "caution",
      where: "the mark",
      what: "There is none: the sheets have nothing to tell heights from.",
      how: "Add a mark that will outlast the job, and read it at the laser.",
    });
  else if (!mark.at)
    problems.push({
      code: "mark-unplaced",
      severity: "caution",
      where: `the mark ${mark.name}`,
      what: "It has no place on the plan, so nobody finds it from the sheet.",
      how: "Place it with a click on the plan, or type its east and north.",
      ids: [mark.id],
    });
  if (building && building.foundation.frostDepth === null)
    problems.push({
      code: "frost-untyped",
      severity: "note",
      where: "the foundation",
      what: "The frost depth of the place isn't typed, so the footing isn't checked against it.",
      how: "Ask the building office, and type it in the foundation step.",
    });
  return problems;
}

function trenchCautions({ trench, corners, foundation }: FloorResults, words: Words): Problem[] {
  if (foundation?.kind === "posts") return [];
  const deepest = trench.reduce((a, b) => (b.belowGround > a.belowGround ? b : a));
  if (deepest.belowGround < ladderDepth) return [];
  const corner = corners.find(({ name }) => name === deepest.corner);
  const deep = deepest.belowGround >= protectedDepth;
  return [
    {
      code: deep ? "trench-deep" : "trench-ladder",
      severity: "caution",
      where: `trench at corner ${deepest.corner}`,
      what: `It goes ${words.length(deepest.belowGround)} below the ground as it is.`,
      how: deep
        ? `From ${words.rule("5 ft", "1.5 m")}, and in bad soil from less, the sides must be sloped back or shored before anyone goes in; spoil at least ${words.rule("2 ft", "0.6 m")} back, a ladder within ${words.rule("25 ft", "7.6 m")} (29 CFR 1926.651, .652).`
        : `From ${words.rule("4 ft", "1.2 m")} there must be a ladder within ${words.rule("25 ft", "7.6 m")}; in bad soil slope the sides back; spoil at least ${words.rule("2 ft", "0.6 m")} back (29 CFR 1926.651).`,
      ...(corner ? { at: [corner.x, corner.y] as [number, number] } : {}),
    },
  ];
}

/** Walls from which the ground doesn't fall away. */
function wallCautions({ water }: FloorResults, { footprint }: BuildingSite, words: Words): Problem[] {
  const problems: Problem[] = [];
  for (const wall of water.walls) {
    if (wall.fallsEnough) continue;
    const place = footprint.walls[wall.wall];
    problems.push({
      code: "wall-fall-away",
      severity: "caution",
      where: `wall ${wall.name}`,
      what: fallsTooLittle(wall, words),
      how: "Give the apron more fall or width, or lead the water off in a swale.",
      ...(place ? { at: onWall(place, place.length / 2) as [number, number] } : {}),
    });
  }
  return problems;
}

function fallsTooLittle({ fallAway, needed }: FloorResults["water"]["walls"][number], words: Words): string {
  const wanted = words.length(needed);
  if (Math.abs(fallAway) < level)
    return `The finished ground lies level beside it where ${wanted} of fall is wanted: water stands there.`;
  const way = `${fallAway < 0 ? "rises" : "falls"} ${words.length(Math.abs(fallAway))}`;
  return `The finished ground ${way} away from it where ${wanted} is wanted.`;
}

function driveCautions({ grading }: Project, { drives }: FloorResults, words: Words): Problem[] {
  return drives.flatMap((drive) => {
    const first = drive.stations[0];
    const leadsToDoor = grading.drives.some(({ id, door }) => id === drive.id && door !== null);
    if (!leadsToDoor || !first?.grade || first.grade >= 0) return [];
    return [
      {
        code: "drive-falls-to-door",
        severity: "caution" as const,
        where: drive.name,
        what: `It falls ${words.slope(-first.grade)} from the road to the landing: rain on it runs towards the door.`,
        how: "Lead the water off before the landing: a drain or a dip across the drive, with an outlet.",
        at: first.at,
        ids: [drive.id],
      },
    ];
  });
}

/** A drive that ends beside the building but at no door: nobody has looked at the step into it. */
function servesNoDoor(
  { plan, footprint }: BuildingSite,
  { grading }: Project,
  { floor, drives }: FloorResults,
  words: Words,
): Problem[] {
  return plan.drives.flatMap(({ line, drive }): Problem[] => {
    const end = line[line.length - 1];
    const meant = grading.drives.find(({ id }) => id === drive.id);
    if (!end || !meant || meant.door !== null) return [];
    if (nearestOnRing(footprint.ring, end[0], end[1]).distance > besideBuilding) return [];
    const stations = drives.find(({ id }) => id === drive.id)?.stations ?? [];
    const below = (floor ?? 0) - (stations[stations.length - 1]?.finished ?? floor ?? 0);
    const step = `${words.length(Math.abs(below))} ${below < 0 ? "above" : "below"} the floor`;
    return [
      {
        code: "drive-serves-no-door",
        severity: "caution",
        where: drive.name,
        what: `It ends on the ground as it is, ${placeName(footprint, end, words)}, ${step}, and leads to no door.`,
        how: "Choose the door it ends at in the drive step, or drag its end onto a door.",
        at: [end[0], end[1]],
        ids: [drive.id],
      },
    ];
  });
}

function slopeCautions(site: BuildingSite, { grading }: Project): Problem[] {
  const problems: Problem[] = [];
  if (!site.reach.meets)
    problems.push({
      code: "slopes-run-on",
      severity: "caution",
      where: "the side slopes",
      what: `At some floor heights they don't meet the ground within ${Math.round(farthestLook)} m of what is drawn; what lies farther out counts in no figure.`,
      how: "Take steeper side slopes, a wall, a floor nearer to the ground, or another place.",
    });
  const { slopes, apron, pads } = grading;
  const steep: [string, number][] = [
    ["the side slopes", Math.min(slopes.fill, slopes.cut)],
    ...apron.sides.flatMap(({ wall, fill, cut }): [string, number][] => {
      const name = `the side slopes of wall ${site.footprint.walls[wall]?.name ?? wall + 1}`;
      return [[name, Math.min(fill ?? steepestSlope, cut ?? steepestSlope)]];
    }),
    ...pads.map((pad): [string, number] => [
      `the slopes of ${pad.name}`,
      Math.min(pad.fillSlope, pad.cutSlope),
    ]),
  ];
  for (const [where, slope] of steep)
    if (slope < steepestSlope)
      problems.push({
        code: "slopes-steep",
        severity: "caution",
        where,
        what:
          slope < wallLike
            ? `At ${slope} : 1 they stand all but upright, as no earth does.`
            : "They are steeper than 2 : 1.",
        how:
          slope < wallLike
            ? "Type how far they run for one of rise, 3 for 3 : 1, or draw a retaining wall."
            : "Steeper than 2 : 1 wants a study of the soil (International Building Code appendix J); ask an engineer.",
      });
  return problems;
}

/** Rules that the present floor breaks, or that leave no floor at all. */
function bandCautions({ band, floor }: FloorResults): Problem[] {
  if (!band.empty || floor === null) return [];
  const bearing = band.rules.filter((rule) => rule.on && hasBearing(rule));
  const { clash } = band;
  const what = clash
    ? `No floor keeps both “${named(clash.low)}” and “${named(clash.high)}”${bearing.some((rule) => !keepsRule(rule, floor)) ? "" : ", by less than a hair"}.`
    : `No floor keeps all of ${bearing
        .filter(({ kind }) => kind === "within")
        .map((rule) => `“${named(rule)}”`)
        .join(", ")} and the other limits.`;
  return [
    {
      code: "band-empty",
      severity: "caution",
      where: "the floor height",
      what,
      how: "Move or turn the building, take a taller wall, deepen the swale, lengthen the drive, step the footing, or switch a rule off if your official allows it.",
    },
  ];
}

const named = ({ name, place }: BandRule) => `${name} (${place})`;

function readingCautions({ setout }: FloorResults, words: Words): Problem[] {
  const above = setout.rows.filter(({ reading }) => reading !== null && reading < 0);
  if (above.length === 0) return [];
  const highest = above.reduce((a, b) => (b.height > a.height ? b : a));
  return [
    {
      code: "reading-above-beam",
      severity: "note",
      where: `set-out: ${highest.what}`,
      what: `It lies ${words.length(-(highest.reading ?? 0))} above the beam, so it can't be read there.`,
      how: "Set the laser up higher and take a new reading on the mark.",
    },
  ];
}

function guessCautions({ earthwork }: FloorResults): Problem[] {
  if (!earthwork || earthwork.guessedShare < guessedShare) return [];
  return [
    {
      code: "earth-on-guess",
      severity: "note",
      where: "cut and fill",
      what: `${Math.round(100 * earthwork.guessedShare)} % of the earth lies on ground that no shot bounds: a guess.`,
      how: "Shoot the ground out to where the slopes end.",
    },
  ];
}
