/** What stands beside the foundation's drawings: its corners, what it takes, cautions. */
import { foundationWords } from "../document/foundationWords";
import type { Project } from "../document/schema";
import type { FoundationResult, Results } from "../solve/results";
import { formatArea, formatVolume } from "../units";
import type { Block } from "./block";
import { proseBlock } from "./prose-block";
import { tableBlock } from "./table-block";
import type { Figures, Table } from "./tables";

export function foundationBlocks(
  project: Project,
  foundation: FoundationResult,
  results: Results,
  figures: Figures,
): readonly Block[] {
  return [
    tableBlock("foundation corners", cornerTable(foundation, results, figures)),
    takeOffBlock(project, foundation, figures),
    cautionBlock(foundation, figures),
  ];
}

function cornerTable({ walls, heights }: FoundationResult, results: Results, figures: Figures): Table {
  const right = (head: string) => ({ head, align: "right" as const });
  return {
    title: `Corners${figures.unit}`,
    columns: [
      { head: "corner", align: "left", strong: true },
      right("wall shows"),
      right(figures.fromMark ? "bottom, from the mark" : "bottom"),
      right("below ground"),
      right("below stripped"),
      right("below finished"),
    ],
    rows: results.trench.map((corner, i) => {
      const shows = heights.topOfWall - (walls[i]?.finished[0] ?? Number.NaN);
      return [
        corner.corner,
        ...[figures.length(shows), figures.height(corner.bottom)].map(figures.cell),
        ...[corner.belowGround, corner.belowStripped, corner.belowFinished].map((m) =>
          figures.cell(figures.length(m)),
        ),
      ];
    }),
  };
}

function takeOffBlock(
  project: Project,
  { takeOff, stepped, dig }: FoundationResult,
  figures: Figures,
): Block {
  const { display, building } = project;
  const volume = (m3: number) => formatVolume(m3, display.volume);
  const area = (m2: number) => formatArea(m2, display.area);
  const concrete = (
    [
      ["footing", takeOff.footing],
      ["wall", takeOff.blocks ? 0 : takeOff.wall],
      ["slab", takeOff.slab],
      ["edge", takeOff.edge],
      ["pads", takeOff.pads],
    ] as const
  ).flatMap(([what, m3]) => (m3 > 0 ? [`${what} ${volume(m3)}`] : []));
  const waste = Math.round(100 * (building?.foundation.concreteWaste ?? 0));
  const items = [
    `Concrete: ${concrete.join(", ")}; with ${waste} % waste ${volume(takeOff.withWaste)}.`,
    ...(takeOff.blocks
      ? [`Blocks: ${takeOff.blocks.count}, ${takeOff.blocks.courses} courses of ${takeOff.blocks.perCourse}.`]
      : []),
    ...(takeOff.posts > 0 ? [`Posts: ${takeOff.posts}.`] : []),
    ...(takeOff.steel.total > 0 ? [`Bars with laps: ${figures.length(takeOff.steel.total)}.`] : []),
    ...(takeOff.base > 0 ? [`Base stone: ${volume(takeOff.base)}.`] : []),
    ...(takeOff.vapourSheet > 0 ? [`Vapour sheet with laps: ${area(takeOff.vapourSheet)}.`] : []),
    ...(takeOff.drain
      ? [`Drain: ${figures.length(takeOff.drain.pipe)} of pipe in ${volume(takeOff.drain.stone)} of stone.`]
      : []),
    ...(dig
      ? [`Trench: ${volume(dig.volume)} to dig, ${volume(dig.leftOver)} left over; sides ${dig.sides}.`]
      : []),
    ...(stepped && stepped.steps.length > 0
      ? [
          `Footing: ${stepped.steps.length} steps of ${figures.length(stepped.rise)}, lapped ${figures.length(stepped.overlap)}.`,
        ]
      : []),
  ];
  const title = building ? foundationWords(building.foundation) : "Foundation";
  return proseBlock(
    "take-off",
    title.charAt(0).toUpperCase() + title.slice(1),
    items.map((text) => ({ runs: [{ text }], bullet: true })),
  );
}

function cautionBlock({ unbalanced, slabFill }: FoundationResult, figures: Figures): Block {
  const over = unbalanced.filter(({ passes }) => !passes);
  const items = [
    ...over.map(
      ({ name, worst }) =>
        `Wall ${name} holds ${figures.length(worst)} of fill on one side: ask an engineer.`,
    ),
    ...(slabFill && !slabFill.passes
      ? [
          `Fill under the slab goes to ${figures.length(slabFill.greatest)}, over the published limit: ask an engineer.`,
        ]
      : []),
    "Nobody enters a trench of 5′ (1.5 m) or more without sloped or shored sides, nor a shallower one in bad soil; ladder from 4′ (1.2 m), spoil 2′ (0.6 m) back (29 CFR 1926.651, .652).",
    "Footings stand on undisturbed ground; don't backfill a wall before it is cured and braced, nor one side only.",
    "Sizes and steel are the designer's; the local code and its inspector decide.",
  ];
  return proseBlock(
    "cautions",
    "Before work and at work",
    items.map((text) => ({ runs: [{ text }], bullet: true })),
  );
}
