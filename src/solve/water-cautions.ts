/**
 * What the person should know of the water, in words: swales, low places, pipes, downspouts, and what goes over the lot's lines.
 *
 * Source  First principles; distances our own choice where they say so.
 */
import type { Project } from "../document/schema";
import { containsPoint, nearestOnRing } from "../geometry";
import { crossings } from "../grading";
import { formatBore } from "../units";
import { shoreNear } from "./advice-facts";
import type { FloorResults } from "./floor";
import { sentence } from "./grading-cautions";
import { actsInOrder } from "./grading-result";
import { pipeWords } from "./pipe-words";
import { placeName } from "./place-names";
import type { Problem } from "./results";
import { comesOut } from "./roof-water";
import type { BuildingSite } from "./site";
import type { Words } from "./words";

/** A swale that comes out nearer to the lot line than this hands its water on gathered, m: our own choice. */
const outletOffLine = 3.048;
/** Nearer than this is on the line, m. */
const onTheLine = 0.05;
/** Water standing this near to the walls, m. */
const pondReach = 3.048;

export function waterCautions(
  site: BuildingSite,
  project: Project,
  results: FloorResults,
  words: Words,
): Problem[] {
  return [
    ...standingWater(results, site, words),
    ...swalesAtDrives(site, project),
    ...outletsAtLines(site, project, words),
    ...stormCautions(results),
    ...pipeCautions(results, project, words),
    ...roofOutlets(site, project, results),
  ];
}

function standingWater({ water }: FloorResults, { footprint }: BuildingSite, words: Words): Problem[] {
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
