/**
 * What the person should know before digging, building or ordering: found in the results, said in words.
 *
 * Source  Trenches: 29 CFR 1926.651 and .652.
 *         Slopes: International Building Code appendix J (2012). Local rules and licensed people decide.
 */
import { hasBearing, keepsRule } from "../advice";
import type { Project } from "../document/schema";
import { containsPoint, nearestOnRing } from "../geometry";
import { crossings, farthestLook, onWall } from "../grading";
import { formatBore } from "../units";
import { shoreNear } from "./advice-facts";
import type { FloorResults } from "./floor";
import { foundationCautions } from "./foundation-cautions";
import { sentence } from "./grading-cautions";
import { actsInOrder } from "./grading-result";
import { pipeWords } from "./pipe-words";
import { placeName } from "./place-names";
import { figuresToCheck, floorFarFromGround } from "./plausible";
import type { BandRule, Problem } from "./results";
import { comesOut } from "./roof-water";
import type { BuildingSite } from "./site";
import type { Words } from "./words";

/** 4 ft: a ladder; 5 ft: shoring or sloped sides, m. */
const ladderDepth = 1.2192;
const protectedDepth = 1.524;
/** Steepest side slopes without a study, run for one of rise. */
const steepestSlope = 2;
/** No earth stands steeper than this by itself for long, run for one of rise: likelier a slip. Our own choice. */
const wallLike = 0.5;
/** More of the earth than this on guessed ground is worth a word. */
const guessedShare = 0.1;
/** A drive that ends nearer to the building than this is meant to lead to it, m. */
const besideBuilding = 12;
/** A swale that comes out nearer to the lot line than this hands its water on gathered, m: our own choice. */
const outletOffLine = 3.048;
/** Nearer than this is on the line, m. */
const onTheLine = 0.05;
/** Water standing this near to the walls, m. */
const pondReach = 3.048;

export function cautions(
  site: BuildingSite,
  project: Project,
  results: FloorResults,
  words: Words,
): Problem[] {
  return [
    ...trenchCautions(results, words),
    ...(results.foundation ? foundationCautions(results.foundation, project, words) : []),
    ...wallCautions(results, site, words),
    ...waterCautions(results, site, words),
    ...driveCautions(results, words),
    ...servesNoDoor(site, project, results, words),
    ...swalesAtDrives(site, project),
    ...outletsAtLines(site, project, words),
    ...stormCautions(results),
    ...pipeCautions(results, project, words),
    ...roofOutlets(site, project, results),
    ...slopeCautions(site, project),
    ...bandCautions(results),
    ...readingCautions(results, words),
    ...guessCautions(results),
    ...markCautions(project),
    ...figuresToCheck(project, words),
    ...floorFarFromGround(results.floor, site.ground, words),
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
      what: `The finished ground ${wall.fallAway < 0 ? `rises ${words.length(-wall.fallAway)}` : `falls ${words.length(wall.fallAway)}`} away from it where ${words.length(wall.needed)} is wanted.`,
      how: "Give the apron more fall or width, or lead the water off in a swale.",
      ...(place ? { at: onWall(place, place.length / 2) as [number, number] } : {}),
    });
  }
  return problems;
}

function waterCautions({ water }: FloorResults, { footprint }: BuildingSite, words: Words): Problem[] {
  const swales = water.swales
    .filter(({ drains }) => !drains)
    .map((swale): Problem => {
      const outlet = swale.stations[swale.stations.length - 1];
      return {
        code: "swale-does-not-drain",
        severity: "caution",
        where: swale.name,
        what: swale.why,
        how: "Drag its points or change its depth and fall until it runs all along.",
        ...(outlet ? { at: outlet.at } : {}),
        ids: [swale.id],
      };
    });
  const ponds = water.ponds.flatMap((pond): Problem[] => {
    const at = shoreNear(pond, footprint, pondReach);
    if (!at) return [];
    return [
      {
        code: "pond-at-wall",
        severity: "caution",
        where: `beside the building, ${placeName(footprint, at, words)}`,
        what: `Water stands up to ${words.length(pond.depth)} deep there before it runs off${pond.guessed ? ", if the guessed ground is right" : ""}.`,
        how: "Raise the floor, draw a swale that leads it away, or shoot more ground there.",
        at: pond.at,
      },
    ];
  });
  return [...swales, ...ponds, ...neighbourCautions(water, words)];
}

/** More water over a lot line than before. */
function neighbourCautions({ leaving }: FloorResults["water"], words: Words): Problem[] {
  return leaving
    .filter(({ rises }) => rises)
    .map(({ line, middle, before, after, growth }) => ({
      code: "water-to-neighbour",
      severity: "caution",
      where: `lot line ${line + 1}`,
      what: `${grown(growth)} (from ${words.area(before)} as the ground is, ${words.area(after)} as planned; a roof sheds more than grass).`,
      how: "Lead it another way or hold it back, or ask the neighbour and whoever looks after drainage there.",
      at: middle,
    }));
}

function grown(growth: number | null): string {
  return growth === null
    ? "In a storm water runs off over it where none did"
    : `In a storm ${Math.round(100 * growth)} % more runs off over it than now`;
}

function driveCautions({ drives }: FloorResults, words: Words): Problem[] {
  return drives.flatMap((drive) => {
    const first = drive.stations[0];
    if (!first?.grade || first.grade >= 0) return [];
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

/** A swale through a drive: its water needs a way under it. */
function swalesAtDrives({ plan }: BuildingSite, { grading }: Project): Problem[] {
  const order = actsInOrder(grading).map(({ id }) => id);
  return plan.swales.flatMap((swale) =>
    plan.drives.flatMap((drive): Problem[] => {
      const [crossing] = crossings(swale, drive);
      if (!crossing) return [];
      const driveLater = order.indexOf(drive.drive.id) > order.indexOf(swale.swale.id);
      return [
        {
          code: "swale-crosses-drive",
          where: swale.swale.name,
          ...crossingWords(drive.drive.name, swale.swale.sideSlope, plan.piped === true, driveLater),
          at: [...crossing.at],
          ids: [swale.swale.id, drive.drive.id],
        },
      ];
    }),
  );
}

/** Banks steeper than this in a dip can't be driven through, run for one of rise: our own choice. */
const drivenDip = 8;

function crossingWords(
  drive: string,
  banks: number,
  piped: boolean,
  driveLater: boolean,
): Pick<Problem, "severity" | "what" | "how"> {
  if (piped)
    return {
      severity: "note",
      what: `It runs under ${drive} in a pipe, and the drive's earth closes over it.`,
      how: "Its size, cover and inverts stand in the water step. Or let the drive dip through the swale, chosen there.",
    };
  if (driveLater)
    return {
      severity: "caution",
      what: `${sentence(drive)} comes later in the order and closes it: its water has no way through.`,
      how: "Set the swale after the drive in the order, so that the drive dips through it, or take a pipe, chosen in the water step.",
    };
  const what = `${sentence(drive)} dips down to its bed there`;
  if (banks >= drivenDip)
    return {
      severity: "note",
      what: `${what}.`,
      how: "Pave the dip with stone that water can't carry off, or take a pipe, chosen in the water step.",
    };
  return {
    severity: "caution",
    what: `${what} between banks of ${Number(banks.toFixed(1))} : 1: nothing drives through those. The drive's grades and its vehicle are told without the dip.`,
    how: `Give the swale side slopes of ${drivenDip} : 1 or flatter there, or take a pipe, chosen in the water step.`,
  };
}

const inStorm = {
  overflows: {
    what: "In the storm that is typed it overflows.",
    how: "Dig it deeper or wider, or let it fall more.",
  },
  "is scoured": {
    what: "In the storm that is typed water runs faster in it than its bed bears.",
    how: "Make it wider or gentler, or line it with stone.",
  },
  "has too little room": {
    what: "The storm that is typed stays in it with less to spare than is asked for.",
    how: "Dig it deeper or wider, or let it fall more.",
  },
} as const;

/** Swales that drain, but don't bear the storm. */
function stormCautions({ water }: FloorResults): Problem[] {
  return water.flows.flatMap(({ id, verdict }): Problem[] => {
    const swale = water.swales.find((each) => each.id === id);
    if (!swale?.drains || verdict === null || verdict === "carries it") return [];
    const outlet = swale.stations.at(-1);
    return [
      {
        code: "swale-in-storm",
        severity: "caution",
        where: swale.name,
        ...inStorm[verdict],
        ...(outlet ? { at: outlet.at } : {}),
        ids: [id],
      },
    ];
  });
}

function pipeCautions({ water }: FloorResults, { display }: Project, words: Words): Problem[] {
  const bore = (m: number) => formatBore(m, display.area === "ft2");
  return water.pipes.flatMap((pipe): Problem[] => {
    if (pipe.verdict === null || pipe.verdict === "carries it") return [];
    return [
      {
        code: "pipe-does-not-do",
        severity: "caution",
        where: pipe.name,
        what: pipeWords(pipe, { length: words.length, bore }),
        how: "See “Pipes under drives” in the water step.",
        at: [pipe.at[0], pipe.at[1]],
        ids: [pipe.swale, pipe.drive],
      },
    ];
  });
}

/** Downspouts that come out nowhere. */
function roofOutlets({ footprint }: BuildingSite, { drainage }: Project, { water }: FloorResults): Problem[] {
  const { flow } = water;
  if (!flow) return [];
  return drainage.roof.outlets.flatMap(({ wall, at }): Problem[] => {
    if (comesOut(at, footprint.ring, flow)) return [];
    return [
      {
        code: "roof-outlet-nowhere",
        severity: "caution",
        where: `the downspouts at wall ${footprint.walls[wall]?.name ?? ""}`,
        what: "Their outlet lies within the walls or beyond the ground that is known: their water is counted as dripping along the eave.",
        how: "Type a place outside the walls, or lead them into a swale.",
        at: [at[0], at[1]],
      },
    ];
  });
}

/** A swale that comes out at the lot line sends its water, gathered, over it. */
function outletsAtLines({ plan }: BuildingSite, { lot }: Project, words: Words): Problem[] {
  if (lot.outline.length < 3) return [];
  return plan.swales.flatMap(({ swale, line }): Problem[] => {
    const outlet = line.at(-1);
    if (!outlet) return [];
    const within = containsPoint(lot.outline, outlet[0], outlet[1]);
    const { distance } = nearestOnRing(lot.outline, outlet[0], outlet[1]);
    if (within && distance > outletOffLine) return [];
    return [
      {
        code: "swale-outlet-at-line",
        severity: "caution",
        where: `the outlet of ${swale.name}`,
        what:
          distance < onTheLine
            ? "It lies on the lot line: the water it gathers goes over it in one place."
            : within
              ? `It lies ${words.length(distance)} from the lot line: the water it gathers goes over it in one place.`
              : `It lies ${words.length(distance)} beyond the lot line, on ground that isn't yours.`,
        how: `End it ${words.rule("10 ft", "3 m")} or more inside and spread the water over grass or stone, or have it agreed with the neighbour, or with the road's office at a road.`,
        at: [outlet[0], outlet[1]],
        ids: [swale.id],
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
