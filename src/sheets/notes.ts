/** What the sheet says in words: what heights are told from, how much earth moves, what is still open. */
import type { Project } from "../document/schema";
import { nearestOnRing, type Point, segmentsMeet } from "../geometry";
import type { Problem, Results } from "../solve/results";
import { placeFromCorner, toLookAt } from "../solve/to-look-at";
import { wordsFor } from "../solve/words";
import type { Block } from "./block";
import { unprintedPictures } from "./pictures";
import { type Paragraph, proseBlock } from "./prose-block";
import type { Figures } from "./tables";

const paragraph = (text: string): Paragraph => ({ runs: [{ text }] });

function markSentence(project: Project, results: Results, figures: Figures): string {
  const { mark } = results.survey;
  if (!mark) return "No mark has been set yet: heights are told in the project's own datum.";
  const note = project.survey.marks.find((one) => one.id === mark.id)?.note ?? "";
  const place = mark.at ? placeFromCorner(mark.at, results.corners, project.lot.north, figures) : null;
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

/** Half a millimetre: heights that near are told as one. */
const touching = 0.0005;

const mostPlaces = 3;

/** Told before all else: nobody can set out from a mark that isn't found. */
const markCodes = ["mark-missing", "mark-unplaced"];

/** What the window lists, in its order; what keeps one from setting out stands at the head. */
function inOrder(project: Project, results: Results): readonly Problem[] {
  const all = toLookAt(project, results.problems, results, results.floor, wordsFor(project.display));
  const isFirst = ({ code }: Problem) => markCodes.includes(code);
  return [
    ...all.filter(isFirst),
    ...all.filter((problem) => !isFirst(problem)),
    ...unprintedPictures(project),
  ];
}

const inRow = (places: readonly string[]) =>
  places.length > mostPlaces
    ? `${places.slice(0, mostPlaces).join(", ")} and ${places.length - mostPlaces} more`
    : places.join(", ");

/** "shot 4, shot 7 and 2 more: …": the same fault of many things is told once, many faults of one thing together. */
function inSentences(problems: readonly Problem[]): readonly string[] {
  const places = new Map<string, string[]>();
  for (const { where, what } of problems) places.set(what, [...(places.get(what) ?? []), where]);
  const told = new Map<string, string[]>();
  for (const [what, where] of places) {
    const head = inRow(where);
    told.set(head, [...(told.get(head) ?? []), what]);
  }
  return [...told].map(([head, whats]) => `${head}: ${whats.join(" ")}`);
}

/** What is still open, so that nobody builds from a sheet with open questions unawares. */
export function openPointsBlock(project: Project, results: Results): Block | null {
  const items = inSentences(inOrder(project, results));
  if (items.length === 0) return null;
  return proseBlock(
    "open points",
    "Still open when this was drawn",
    items.map((text) => ({ runs: [{ text }], bullet: true })),
  );
}

/** For the first sheet, when the open points themselves stand on the second. */
export function openNotice(project: Project, results: Results): Block {
  const count = inOrder(project, results).length;
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
    [
      {
        text: "Don't send water onto a neighbour, a road or a septic field. A ditch or pipe at a road, wet land or a stream may need a permit. Ditches and pipes here are planning, not an engineer's drainage design.",
      },
    ],
    [{ text: "Local code and its inspector decide; lot lines are settled by a licensed surveyor." }],
  ];
  return proseBlock(
    "cautions",
    "Before work and at work",
    items.map((runs) => ({ runs, bullet: true })),
  );
}
