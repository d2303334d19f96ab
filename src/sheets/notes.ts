/** What the sheet says in words: what heights are told from, how much earth moves, what is still open. */
import type { Project } from "../document/schema";
import { compass } from "../drawing";
import { nearestOnRing, type Point, segmentsMeet } from "../geometry";
import type { Results } from "../solve/results";
import type { Block } from "./block";
import { type Paragraph, proseBlock } from "./prose-block";
import type { Figures } from "./tables";

const paragraph = (text: string): Paragraph => ({ runs: [{ text }] });

/** "14′ 6″ south-west of corner D". */
function placeFromCorner(at: Point, project: Project, results: Results, figures: Figures): string | null {
  const nearest = results.corners
    .map((corner) => ({ corner, distance: Math.hypot(corner.x - at[0], corner.y - at[1]) }))
    .sort((a, b) => a.distance - b.distance)[0];
  if (!nearest) return null;
  const { corner, distance } = nearest;
  const wind = compass([at[0] - corner.x, at[1] - corner.y], project.lot.north);
  return `${figures.length(distance)} ${wind} of corner ${corner.name}`;
}

function markSentence(project: Project, results: Results, figures: Figures): string {
  const { mark } = results.survey;
  if (!mark) return "No mark has been set yet: heights are told in the project's own datum.";
  const note = project.survey.marks.find((one) => one.id === mark.id)?.note ?? "";
  const place = mark.at ? placeFromCorner(mark.at, project, results, figures) : null;
  const parts = [mark.name, note, place].filter((part) => part);
  return `The mark is ${parts.join(", ")}.`;
}

function floorRuns(results: Results, figures: Figures): Paragraph["runs"] {
  const { floor, topOfWall, survey } = results;
  if (floor === null) return [];
  const mark = survey.mark?.height;
  const rise = mark === undefined ? null : floor - mark;
  const place =
    rise === null
      ? `at ${figures.height(floor)}`
      : `${figures.length(Math.abs(rise))} ${rise < 0 ? "below" : "above"} the mark`;
  const step = topOfWall === null ? 0 : topOfWall - floor;
  const wall =
    Math.abs(step) < 0.001
      ? "top of wall is level with it."
      : `top of wall is ${figures.length(Math.abs(step))} ${step < 0 ? "below" : "above"} it.`;
  return [{ text: "The" }, { text: `finished floor is ${place};`, strong: true }, { text: wall }];
}

/** Heights from the mark, the blank for today's reading, and how to use it. */
export function heightsBlock(project: Project, results: Results, figures: Figures): Block {
  const { mark } = results.survey;
  const { beam, markHeight } = results.setout;
  const paragraphs: Paragraph[] = [
    { runs: [{ text: markSentence(project, results, figures) }, ...floorRuns(results, figures)] },
  ];
  if (mark) {
    paragraphs.push(
      { runs: [{ text: "Reading on the mark today: ______________", strong: true }] },
      paragraph(
        "What is below the mark (−) reads that much more than the mark, what is above it (+) that much less.",
      ),
      ...examples(results, mark.height, figures),
    );
    if (beam !== null && markHeight !== null) {
      paragraphs.push(paragraph(`At the survey's beam the mark read ${figures.reading(beam - markHeight)}.`));
    }
  }
  return proseBlock("heights", mark ? "All heights are told from the mark" : "Heights", paragraphs);
}

/** The two heights asked for most, as what to add to the mark's reading, in the rod's own notation. */
function examples({ floor, trench }: Results, mark: number, figures: Figures): Paragraph[] {
  const [corner] = trench;
  if (floor === null || !corner) return [];
  const than = (z: number) => {
    const less = z - mark;
    if (Math.abs(less) < touching) return "what the mark reads";
    return `${figures.reading(Math.abs(less))} ${less > 0 ? "less" : "more"} than the mark`;
  };
  return [
    paragraph(`So the finished floor reads ${than(floor)}, the bottom of trench ${than(corner.bottom)}.`),
  ];
}

const mostPlaces = 3;

/** Told before all else: nobody can set out from a mark that isn't found. */
const markCodes = ["mark-missing", "mark-unplaced"];
const severities = ["error", "caution", "note"];

/** Problems as the window lists them, gravest first; what keeps one from setting out stands at the head. */
function inOrder({ problems }: Results): Results["problems"] {
  const rank = ({ code, severity }: Results["problems"][number]) =>
    markCodes.includes(code) ? -1 : severities.indexOf(severity);
  return problems
    .map((problem, i) => ({ problem, i }))
    .sort((a, b) => rank(a.problem) - rank(b.problem) || a.i - b.i)
    .map(({ problem }) => problem);
}

interface Fault {
  readonly text: string;
  readonly first: boolean;
}

const inRow = (places: readonly string[]) =>
  places.length > mostPlaces
    ? `${places.slice(0, mostPlaces).join(", ")} and ${places.length - mostPlaces} more`
    : places.join(", ");

/** "shot 4, shot 7 and 2 more: …": the same fault of many things is told once, many faults of one thing together. */
function faults(results: Results): readonly Fault[] {
  const places = new Map<string, string[]>();
  const problems = inOrder(results);
  for (const { where, what } of problems) places.set(what, [...(places.get(what) ?? []), where]);
  const told = new Map<string, string[]>();
  for (const [what, where] of places) {
    const head = inRow(where);
    told.set(head, [...(told.get(head) ?? []), what]);
  }
  const marks = problems.filter(({ code }) => markCodes.includes(code)).map(({ where }) => where);
  return [...told].map(([head, whats]) => ({
    text: `${head}: ${whats.join(" ")}`,
    first: marks.includes(head),
  }));
}

/** Half a millimetre: a floor that near to a limit keeps it. */
const touching = 0.0005;

/** Limits that are on and that the floor doesn't keep. */
function brokenLimits({ band, floor }: Results): readonly string[] {
  if (floor === null) return [];
  return band.rules.flatMap((rule) => {
    if (!rule.on || rule.height === null) return [];
    const over = rule.kind === "notBelow" ? rule.height - floor : floor - rule.height;
    return over > touching ? [`The floor breaks a limit: ${rule.name} (${rule.place}).`] : [];
  });
}

/** Low places that hold water on the finished ground, each told by its depth; one beside the building is a problem already. */
function standingWater(project: Project, results: Results, figures: Figures): readonly string[] {
  const told = results.problems.flatMap(({ code, at }) =>
    code === "pond-at-wall" && at ? [String(at)] : [],
  );
  const untold = results.water.ponds.filter(({ at }) => !told.includes(String(at)));
  return untold.map((pond) => {
    const place = placeFromCorner(pond.at, project, results, figures);
    return `Water stands ${figures.length(pond.depth)} deep${place ? `, ${place}` : ""}.`;
  });
}

/** Every open point: a mark that can't be found, broken limits, what solve found wrong, standing water. */
function openPoints(project: Project, results: Results, figures: Figures): readonly string[] {
  const found = faults(results);
  return [
    ...found.filter(({ first }) => first).map(({ text }) => text),
    ...brokenLimits(results),
    ...found.filter(({ first }) => !first).map(({ text }) => text),
    ...standingWater(project, results, figures),
  ];
}

/** What is still open, so that nobody builds from a sheet with open questions unawares. */
export function openPointsBlock(project: Project, results: Results, figures: Figures): Block | null {
  const items = openPoints(project, results, figures);
  if (items.length === 0) return null;
  return proseBlock(
    "open points",
    "Still open when this was drawn",
    items.map((text) => ({ runs: [{ text }], bullet: true })),
  );
}

/** For the first sheet, when the open points themselves stand on the second. */
export function openNotice(project: Project, results: Results, figures: Figures): Block {
  const count = openPoints(project, results, figures).length;
  return proseBlock(
    "open notice",
    `STILL OPEN: ${count} ${count === 1 ? "point" : "points"}, see sheet 2`,
    [],
  );
}

/** A trench this deep needs protection, m (5 ft). Source: OSHA 29 CFR 1926.652(a)(1). */
const protectedFrom = 1.524;

/** A drive that ends this near to a lot line meets the road there, m. */
const atLotLine = 0.5;

/** Drives that leave the lot, by name. */
function drivesOverLotLine({ lot: { outline }, grading }: Project): string[] {
  if (outline.length < 3) return [];
  const crosses = (line: readonly Point[]) =>
    line.some((to, i) => {
      const from = line[i - 1];
      return outline.some(
        (a, k) => from !== undefined && segmentsMeet(from, to, a, outline[(k + 1) % outline.length] as Point),
      );
    });
  const starts = ([at]: readonly Point[]) =>
    at !== undefined && nearestOnRing(outline, at[0], at[1]).distance <= atLotLine;
  return grading.drives.flatMap(({ name, line }) => (crosses(line) || starts(line) ? [name] : []));
}

/** Cautions for people at work. Sources are named in the text. */
export function cautionsBlock(project: Project, results: Results, figures: Figures): Block {
  const over = drivesOverLotLine(project).map((name): Paragraph["runs"] => [
    { text: `The ${name} crosses the lot line: ask whoever owns the road before work.`, strong: true },
  ]);
  const deepest = Math.max(0, ...results.trench.map((corner) => corner.belowGround));
  const trench =
    deepest >= protectedFrom - 0.001
      ? [{ text: `The trench here is up to ${figures.length(deepest)} deep.`, strong: true }]
      : [];
  const items: Paragraph["runs"][] = [
    ...over,
    [
      {
        text: "Have buried lines located before any digging; private ones (yard lights, gas, drains) aren't marked by the locating service. Keep clear of overhead wires. Don't look into the laser beam.",
      },
    ],
    [
      ...trench,
      {
        text: "No one enters a trench 5′ (1.5 m) or deeper without protection, nor a shallower one in ground that may cave in (OSHA 29 CFR 1926.652). Ladder from 4′ (1.2 m), spoil 2′ (0.6 m) back (1926.651).",
      },
    ],
    [
      {
        text: "Don't backfill a wall before it is cured and braced or floored; then raise both sides together.",
      },
    ],
    [
      {
        text: "Fill in thin layers, each compacted, on stripped ground: no sod, stumps or topsoil under a slab.",
      },
    ],
    [{ text: "Don't send water onto a neighbour, a road or a septic field." }],
    [{ text: "Local code and its inspector decide; lot lines are settled by a licensed surveyor." }],
  ];
  return proseBlock(
    "cautions",
    "Before work and at work",
    items.map((runs) => ({ runs, bullet: true })),
  );
}
