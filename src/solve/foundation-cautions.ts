/**
 * What the foundation asks a person to know: cover, steps, fill on a wall and under the slab, trench, doors.
 *
 * Source  Stands in each sentence. Local rules and licensed people decide.
 */
import type { Foundation, Project } from "../document/schema";
import type { CoverCheck, FoundationResult, Problem, UnbalancedFill, WallPlace } from "./results";
import type { Words } from "./words";

/** A trench deeper than this wants an engineer, m (20 ft, 29 CFR 1926.652). */
const engineeredDepth = 6.096;
/** Untreated joists over the ground of a crawl space, m (18 in, IRC R317.1, 2012). */
const joistClearance = 0.4572;
/** More soil than a hand's breadth in an edge's or a post's way, m. */
const someFill = 0.1524;

export function foundationCautions(result: FoundationResult, project: Project, words: Words): Problem[] {
  const foundation = project.building?.foundation;
  if (!foundation) return [];
  return [
    ...coverCautions(result, foundation, words),
    ...sizeNotes(result, words),
    ...stepCautions(result),
    ...wallCautions(result, words),
    ...slabCautions(result, foundation, words),
    ...trenchCautions(result, foundation, words),
    ...kindCautions(result, foundation, words),
    ...doorCautions(result, words),
  ];
}

const at = ({ at: [x, y] }: WallPlace) => ({ at: [x, y] as [number, number] });

function coverCautions(
  { cover, kind, stepped }: FoundationResult,
  foundation: Foundation,
  words: Words,
): Problem[] {
  const counted = cover.counts === "finished" ? cover.finished : cover.undisturbed;
  const from = cover.counts === "finished" ? "finished ground" : "the ground as it is, fill not counted";
  const problems: Problem[] = [];
  if (lacks(counted))
    problems.push({
      code: "footing-frost",
      severity: "caution",
      where: `footing at ${counted.at.place}`,
      what: `Its bottom lies ${words.length(Math.abs(counted.least))} ${counted.least < 0 ? "above" : "below"} ${from}: ${words.length(-(counted.margin ?? 0))} less than the frost depth${cornersOf(counted)}.`,
      how: "Step the footing down there, take a taller wall or lower the floor; whether raised ground counts, the inspector says (International Residential Code R403.1.4.1, 2012).",
      ...at(counted.at),
      ...deeper(foundation, kind, -(counted.margin ?? 0), stepped, words),
    });
  if (lacks(cover.bearing))
    problems.push({
      code: cover.inFill.length > 0 ? "footing-in-fill" : "footing-shallow",
      severity: "caution",
      where: `footing at ${cover.bearing.at.place}`,
      what:
        cover.bearing.least < 0
          ? `It would stand on fill: its bottom lies ${words.length(-cover.bearing.least)} above undisturbed ground${cornersOf(cover.bearing)}.`
          : `It goes only ${words.length(cover.bearing.least)} into undisturbed ground${cornersOf(cover.bearing)}; ${words.length(cover.bearing.needed ?? 0)} is asked for.`,
      how: "Step the footing down there, take a taller wall or lower the floor: fill may add frost cover, never bearing (International Residential Code R403.1.4, 2012).",
      ...at(cover.bearing.at),
      ...deeper(foundation, kind, -(cover.bearing.margin ?? 0), stepped, words),
    });
  return problems;
}

function lacks({ margin }: CoverCheck): boolean {
  return margin !== null && margin < -1e-6;
}

function cornersOf({ failing }: CoverCheck): string {
  if (failing.length === 0) return "";
  return failing.length === 1 ? ` (corner ${failing[0]})` : ` (corners ${failing.join(", ")})`;
}

/** What one click can do: step it down, or a wall that is taller by so much. */
function deeper(
  foundation: Foundation,
  kind: FoundationResult["kind"],
  by: number,
  stepped: FoundationResult["stepped"],
  words: Words,
): Pick<Problem, "fixes"> {
  const edit = (patch: Partial<Foundation>) => [
    { command: "building.changeFoundation" as const, args: { patch } },
  ];
  if (kind === "posts") {
    const holeDepth = foundation.posts.holeDepth + by;
    return {
      fixes: [
        {
          words: `Dig the holes ${words.length(by)} deeper`,
          edits: edit({ posts: { ...foundation.posts, holeDepth } }),
        },
      ],
    };
  }
  if (kind === "thickened-edge") {
    const depth = foundation.edge.depth + by;
    return {
      fixes: [
        {
          words: `Make the edge ${words.length(by)} deeper`,
          edits: edit({ edge: { ...foundation.edge, depth } }),
        },
      ],
    };
  }
  return {
    fixes: [
      ...(stepped && !stepped.on
        ? [
            {
              words: "Step the footing down where it is shallow",
              edits: edit({ steps: { ...foundation.steps, on: true } }),
            },
          ]
        : []),
      {
        words: `Take a wall ${words.length(by)} taller all round`,
        edits: edit({ wallHeight: foundation.wallHeight + by }),
      },
    ],
  };
}

/** Typed dimensions that are less, or more, than published. */
function sizeNotes({ sizes }: FoundationResult, words: Words): Problem[] {
  return sizes
    .filter(({ passes }) => !passes)
    .map(({ what, value, least, most, source }) => ({
      code: "footing-size",
      severity: "note",
      where: `the ${what}`,
      what: `It is ${words.length(value)}; ${least !== null && value < least ? `at least ${words.length(least)}` : `at most ${words.length(most ?? value)}`} is published (${source}).`,
      how: "Take the figure of your designer or of the place's code; later editions go by snow load.",
    }));
}

function stepCautions({ stepped, levelFooting }: FoundationResult): Problem[] {
  const [why] = stepped?.asked ?? [];
  if (!stepped || stepped.on || why === undefined || (levelFooting && !levelFooting.enough)) return [];
  return [
    {
      code: "footing-steep-ground",
      severity: "note",
      where: "the footing",
      what: `Along a wall ${why}.`,
      how: "A footing whose bottom would follow that ground must go down in level steps; a level trench at one height needs none.",
    },
  ];
}

function wallCautions({ unbalanced }: FoundationResult, words: Words): Problem[] {
  const over = unbalanced
    .filter(({ passes }) => !passes)
    .reduce<UnbalancedFill | null>((a, b) => (a && a.worst >= b.worst ? a : b), null);
  if (!over) return [];
  const higher =
    over.holds === "inside"
      ? "The fill inside stands # higher than the ground outside"
      : "The ground outside stands # higher than what holds against it inside";
  const limit =
    over.limit === null
      ? "the published tables have no such wall"
      : `${words.length(over.limit)} is the published limit for this wall`;
  return [
    {
      code: "wall-holds-fill",
      severity: "caution",
      where: `wall at ${over.at.place}`,
      what: `${higher.replace("#", words.length(over.worst))}; ${limit} (${over.source}).`,
      how: "Ask an engineer; don't backfill one side before the wall is braced and hard, nor one side only.",
      ...at(over.at),
    },
  ];
}

/** Fill between the stripped ground and the bottom of the edge, where it is most, m. */
function edgeFill({ walls }: FoundationResult): number {
  return walls.reduce(
    (most, { stripped, bottom }) =>
      bottom.reduce((deep, at, i) => Math.max(deep, at - (stripped[i] ?? at)), most),
    0,
  );
}

function slabCautions(result: FoundationResult, foundation: Foundation, words: Words): Problem[] {
  const { slabFill, kind } = result;
  if (!slabFill) return [];
  const problems: Problem[] = [];
  const place = { at: [...slabFill.at] as [number, number] };
  if (!slabFill.passes)
    problems.push({
      code: "slab-fill",
      severity: "caution",
      where: "under the slab",
      what: `Fill goes up to ${words.length(slabFill.greatest)} deep there, ${slabFill.lifts} lifts of ${words.length(slabFill.lift)}; ${words.length(slabFill.limit)} is the ${foundation.slabFill.approved === null ? "published" : "approved"} limit (${slabFill.source}).`,
      how: "Cut into the high side with a lower floor, take a crawl space or a floor that spans, or have an engineer specify the fill and its tests.",
      ...place,
      ...stoneInstead(slabFill.greatest, foundation),
    });
  if (slabFill.cutAndFill)
    problems.push({
      code: "slab-cut-and-fill",
      severity: "note",
      where: "under the slab",
      what: `Part of it lies on dug ground, part on up to ${words.length(slabFill.greatest)} of fill: it may crack along the line between.`,
      how: "Compact in thin lifts and test, dig the firm part out for an even base, or put a joint there.",
      ...place,
    });
  const underEdge = edgeFill(result);
  if (kind === "thickened-edge" && underEdge > someFill)
    problems.push({
      code: "edge-on-fill",
      severity: "caution",
      where: "the thickened edge",
      what: `It would stand on a pad of up to ${words.length(underEdge)} of fill.`,
      how: "A pad under an edge that carries must be approved: ask an engineer, or take a stem wall down to firm ground.",
      ...place,
    });
  return problems;
}

function stoneInstead(depth: number, foundation: Foundation): Pick<Problem, "fixes"> {
  if (foundation.slabFill.kind !== "earth" || depth > 0.6096) return {};
  const slabFill = { ...foundation.slabFill, kind: "sand-gravel" as const };
  return {
    fixes: [
      {
        words: "Fill with clean sand or gravel instead of earth",
        edits: [{ command: "building.changeFoundation", args: { patch: { slabFill } } }],
      },
    ],
  };
}

function trenchCautions({ dig }: FoundationResult, { trench }: Foundation, words: Words): Problem[] {
  if (!dig) return [];
  const problems: Problem[] = [];
  const place = at(dig.deepest.at);
  if (dig.deepest.depth > engineeredDepth)
    problems.push({
      code: "trench-engineer",
      severity: "caution",
      where: `trench at ${dig.deepest.at.place}`,
      what: `It goes ${words.length(dig.deepest.depth)} below the ground.`,
      how: `Beyond ${words.rule("20 ft", "6.1 m")} an engineer designs how its sides stand (29 CFR 1926.652).`,
      ...place,
    });
  if (dig.sides === "benched" && trench.soil === "C")
    problems.push({
      code: "trench-benched-loose",
      severity: "caution",
      where: "the trench",
      what: "Its sides are to be benched in soil of kind C, which doesn't stand in benches.",
      how: "Slope or shore them (29 CFR 1926 subpart P, appendix B).",
    });
  return problems;
}

function kindCautions(result: FoundationResult, { crawl }: Foundation, words: Words): Problem[] {
  const problems: Problem[] = [];
  if (result.kind === "crawl-space" && crawl.clearance < joistClearance - 1e-9)
    problems.push({
      code: "crawl-clearance",
      severity: "caution",
      where: "the crawl space",
      what: `Joists would lie ${words.length(crawl.clearance)} above its ground.`,
      how: "Untreated joists want 18 in, girders 12 in (International Residential Code R317.1, 2012): dig it deeper or take treated wood.",
    });
  const buried = result.posts.filter(({ inFill }) => inFill > someFill);
  if (buried.length > 0)
    problems.push({
      code: "posts-in-fill",
      severity: "note",
      where: "the posts",
      what: `${buried.length} of ${result.posts.length} stand in up to ${words.length(Math.max(...buried.map(({ inFill }) => inFill)))} of fill; their holes are measured from undisturbed ground below it.`,
      how: "Set posts in undisturbed ground before filling, or drill through the fill, and order the posts that much longer.",
    });
  return problems;
}

function doorCautions({ doors }: FoundationResult, words: Words): Problem[] {
  return doors.flatMap((door): Problem[] => {
    if (door.drive && door.drive.lip < -1e-6)
      return [
        {
          code: "drive-over-sill",
          severity: "caution",
          where: door.name,
          what: `The end of ${door.drive.name} lies ${words.length(-door.drive.lip)} above its sill.`,
          how: "Lower the drive's end or raise the sill.",
          at: [...door.at],
          ids: [door.id, door.drive.id],
        },
      ];
    if (door.drop < -1e-6)
      return [
        {
          code: "ground-over-sill",
          severity: "caution",
          where: door.name,
          what: `The finished ground stands ${words.length(-door.drop)} above its sill: water runs in.`,
          how: "Raise the sill or the floor, or grade the ground lower there.",
          at: [...door.at],
          ids: [door.id],
        },
      ];
    return [];
  });
}
