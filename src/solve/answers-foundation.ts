/** The foundation's questions: frost, steps, fill under the slab, lifts, doors, posts, what to tell the digger. */
import type { Answer, Answering, Asked } from "./answers";
import type { CoverCheck } from "./results";

const step = "foundation" as const;

export const foundationAnswers: readonly Answering[] = [
  mustStep,
  frostCover,
  edgeOnFill,
  settling,
  lifts,
  engineer,
  tellTheDigger,
  doors,
  posts,
];

function mustStep({ results, words }: Asked): Answer | null {
  const { stepped, levelFooting, cover } = results.foundation ?? {};
  if (!stepped || !levelFooting || !cover) return null;
  const failing = [...new Set([...cover.bearing.failing, ...cover[cover.counts].failing])];
  const needed = stepped.asked.length > 0 || failing.length > 0;
  return {
    id: "must-step",
    question: "Must the footing step, and where?",
    answer: stepped.on
      ? `it steps: ${stepped.steps.length} ${stepped.steps.length === 1 ? "step" : "steps"} of ${words.length(stepped.rise)}, ${stepped.levels} down at most`
      : needed
        ? "yes, as it stands it should"
        : "no, a level footing does",
    where: failing.length > 0 ? `cover fails at ${failing.join(", ")}` : stepped.asked.join("; "),
    margin: `a level footing takes a fall of ${words.length(levelFooting.takes)}; there is ${words.length(levelFooting.fall)}`,
    change: "A taller wall, a lower floor, or steps with the ground.",
    step,
  };
}

function frostCover({ results, words }: Asked): Answer | null {
  const { cover } = results.foundation ?? {};
  if (!cover) return null;
  const told = ({ least, at }: CoverCheck) => `${words.length(least)} at ${at.place}`;
  const check = cover[cover.counts];
  return {
    id: "frost",
    question: "Does fill count for frost cover?",
    answer: `${told(cover.finished)} below the finished ground, ${told(cover.undisturbed)} below undisturbed ground`,
    where: check.failing.length > 0 ? `too little at ${check.failing.join(", ")}` : check.at.place,
    margin:
      check.margin === null || check.needed === null
        ? "no frost depth has been typed: ask the building office"
        : `${words.length(Math.abs(check.margin))} ${check.margin < 0 ? "short of" : "over"} ${words.length(check.needed)}, counted from ${cover.counts === "finished" ? "finished" : "undisturbed"} ground`,
    change: "Inspectors differ on which counts: ask first. Fill never counts for bearing.",
    step,
  };
}

function edgeOnFill({ results, project, words }: Asked): Answer | null {
  const { cover, kind } = results.foundation ?? {};
  if (!cover || !project.building) return null;
  const [first] = cover.inFill;
  const wall = first && results.foundation?.walls[first.wall];
  const length = cover.inFill.reduce((sum, { from, to }) => sum + to - from, 0);
  return {
    id: "edge-on-fill",
    question:
      kind === "thickened-edge" ? "Does the slab's edge stand on fill?" : "Does the footing stand on fill?",
    answer: first
      ? `yes, over ${words.length(length)} of its length`
      : "no, all of it reaches stripped ground",
    where: wall ? `wall ${wall.name}` : cover.bearing.at.place,
    margin:
      cover.bearing.margin === null
        ? `${words.length(cover.bearing.least)} into undisturbed ground at its least`
        : `${words.length(cover.bearing.least)} into undisturbed ground where ${words.length(cover.bearing.needed ?? 0)} is asked for`,
    change:
      "Steps, a taller wall or a lower floor; fill under a footing is an engineer's to approve and test.",
    step,
  };
}

function settling({ results, words }: Asked): Answer | null {
  const fill = results.foundation?.slabFill;
  if (!fill) return null;
  const deepest = fill.corners.reduce((a, b) => (b.depth > a.depth ? b : a), fill.corners[0] ?? none);
  return {
    id: "settling",
    question: "Will the floor settle over its fill?",
    answer: `fill under it runs from ${words.length(Math.max(0, fill.least))} to ${words.length(fill.greatest)}`,
    where: `deepest at ${deepest.corner}${fill.cutAndFill ? "; part stands on cut, part on fill: it may crack between" : ""}`,
    margin: `${words.length(Math.abs(fill.limit - fill.greatest))} ${fill.passes ? "under" : "over"} the published limit of ${words.length(fill.limit)}`,
    change:
      "Thin lifts well compacted; beyond the limit tests and an engineer, a taller wall or the high side cut.",
    step,
  };
}

const none = { corner: "", depth: 0, lifts: 0 };

function lifts({ results, words, project }: Asked): Answer | null {
  const fill = results.foundation?.slabFill;
  if (!fill || fill.greatest <= 0) return null;
  const { swell, shrink } = project.materials;
  return {
    id: "lifts",
    question: "How many lifts, and how thick?",
    answer: `${fill.lifts} of ${words.length(fill.lift)} where it is deepest`,
    where: `spread each about ${words.length((fill.lift * swell) / shrink)} loose`,
    margin: "",
    change: "The compactor: a light plate asks for thinner lifts. Passes and moisture are settled by a test.",
    step,
  };
}

function engineer({ results, words }: Asked): Answer | null {
  const { unbalanced } = results.foundation ?? {};
  if (!unbalanced || unbalanced.length === 0) return null;
  const worst = unbalanced.reduce((a, b) => (b.worst > a.worst ? b : a));
  const { limit } = worst;
  return {
    id: "engineer",
    question: "At what height of fill does a wall need an engineer?",
    answer:
      limit === null ? "the tables have no such wall: ask one" : `over ${words.length(limit)} on one side`,
    where: `${worst.at.place}: ${words.length(worst.worst)}${worst.holds === "none" ? "" : `, held from the ${worst.holds}`}`,
    margin:
      limit === null
        ? ""
        : `${words.length(Math.abs(limit - worst.worst))} ${worst.passes ? "under" : "over"}`,
    change: "A thicker wall, less fill on its one side, or the floor that holds its top put in first.",
    step,
  };
}

function tellTheDigger({ results, words }: Asked): Answer | null {
  const { setout, trench } = results;
  const [first] = trench;
  if (!first) return null;
  const lowest = trench.reduce((a, b) => (b.bottom < a.bottom ? b : a));
  const mark = setout.markHeight;
  return {
    id: "digger",
    question: "What do I tell the digger?",
    answer:
      mark === null
        ? `bottom of trench at ${words.length(lowest.bottom)}`
        : `bottom of trench ${words.length(Math.abs(mark - lowest.bottom))} ${lowest.bottom <= mark ? "below" : "above"} the mark${setout.mark ? ` (${setout.mark})` : ""}`,
    where: trench.map(({ corner, belowGround }) => `${corner} ${words.length(belowGround)} deep`).join(", "),
    margin: setout.beam === null ? "type today's reading on the mark for the readings to look for" : "",
    change: "The set-out step lists every height as a reading; the sheets carry them outdoors.",
    step: "foundation",
  };
}

function doors({ results, words }: Asked): Answer | null {
  const found = results.foundation?.doors ?? [];
  if (found.length === 0) return null;
  return {
    id: "doors",
    question: "Doors: how high is the sill, what falls away outside?",
    answer: found
      .map(({ name, drop, drive, steps }) =>
        drive
          ? `${name}: ${words.length(drive.lip)} over the drive's end, landing ${words.length(drive.landing)}`
          : `${name}: ${words.length(drop)} above the ground${steps ? `, ${steps.risers} risers` : ""}`,
      )
      .join("; "),
    where: found.map(({ name, wallName }) => `${name} in ${wallName}`).join(", "),
    margin: found.map(({ name, apronFall }) => `${name}: ${words.slope(apronFall)} away from it`).join("; "),
    change: "The floor, each door's own sill, or the drive's landing.",
    step,
  };
}

function posts({ results, words }: Asked): Answer | null {
  const found = results.foundation?.posts ?? [];
  const [first] = found;
  if (!first) return null;
  const inFill = found.reduce((a, b) => (b.inFill > a.inFill ? b : a), first);
  return {
    id: "posts",
    question: "Posts before or after the fill?",
    answer:
      inFill.inFill > 0
        ? `up to ${words.length(inFill.inFill)} of fill stands round a post: its hole goes on down into undisturbed ground either way`
        : "no post stands in fill",
    where: `longest from the bottom of its hole to the floor: ${words.length(Math.max(...found.map(({ length }) => length)))}`,
    margin: "",
    change:
      "Compact first and drill through, or set them first and fill in thin lifts on both sides at once.",
    step,
  };
}
