/** Water on the page that solve prints. */
import type { Project } from "../document/schema";
import { pipeWords } from "../solve/pipe-words";
import type { Results, WallWater } from "../solve/results";
import { leastFallWords, swaleVerdict } from "../solve/swale-verdict";
import { flowUnit, formatBore, formatRate } from "../units";

export interface WaterFigures {
  readonly length: (m: number) => string;
  readonly area: (m2: number) => string;
  readonly volume: (m3: number) => string;
  readonly slope: (ratio: number) => string;
}

/** Less ground than this over a lot line isn't worth a line, m2. */
const worthTelling = 5;

/** Rows of the walls, and lines of all else. */
export function waterLines(
  project: Project,
  { water }: Results,
  words: WaterFigures,
): { readonly walls: readonly string[][]; readonly lines: readonly string[] } {
  const feet = project.display.area === "ft2";
  const flow = (rate: number | null) => (rate === null ? null : formatRate(rate, flowUnit(feet)));
  return {
    walls: water.walls.map((wall) => [
      `  wall ${wall.name}`,
      wall.fallAway < 0
        ? `rises ${words.length(-wall.fallAway)}`
        : `falls away ${words.length(wall.fallAway)}`,
      wallWords(wall, words),
    ]),
    lines: [
      ...swaleLines(project, water, words, flow),
      ...pondLines(water, words),
      ...water.pipes.map(
        (pipe) =>
          `  ${pipe.name}: ${words.length(pipe.length)} long, inverts ${words.length(pipe.inverts[0])} and ${words.length(pipe.inverts[1])}. ${pipeWords(pipe, { length: words.length, bore: (m) => formatBore(m, feet) })}`,
      ),
      ...roofLines(water, words, flow),
      ...drainLines(water, words),
      ...leavingLines(water, words, flow),
    ],
  };
}

type Water = Results["water"];
type Flow = (rate: number | null) => string | null;

function wallWords({ verdict, needed, standing, fallsEnough }: WallWater, { length }: WaterFigures): string {
  const wanted = `${length(needed)} wanted`;
  if (!fallsEnough) return `too little, ${wanted}`;
  const guess = standing?.guessed ? ", if the guessed ground is right" : "";
  const water = standing ? `; water stands ${length(standing.off)} off${guess}` : "";
  const few = verdict === "too few shots" ? "; too few shots there to say that it stays dry" : "";
  return `enough (${wanted})${water}${few}`;
}

function swaleLines({ rules }: Project, { swales, flows }: Water, words: WaterFigures, flow: Flow): string[] {
  return swales.flatMap((swale) => {
    const verdict = swaleVerdict(swale, rules.leastSwaleFall);
    const fall = `${words.length(swale.length)} long; where it falls least it ${leastFallWords(swale, words)}`;
    const comes = flows.find(({ id }) => id === swale.id);
    const peak = flow(comes?.peak ?? null);
    return [
      `  ${swale.name}: ${fall}; ${verdict}. ${swale.why}`.trimEnd(),
      ...(comes
        ? [
            `  ${swale.name}: ${words.area(comes.catchment)} drains to it${peak ? `, peak ${peak}; ${swale.drains ? `in the storm it ${stormWords(comes.verdict)}` : "what it does in the storm is told once it drains"}` : "; no rain is typed"}`,
          ]
        : []),
    ];
  });
}

function stormWords(verdict: Water["flows"][number]["verdict"]): string {
  return verdict ?? "can't be judged";
}

function pondLines({ ponds }: Water, words: WaterFigures): string[] {
  return ponds.map(
    ({ depth, area, guessed }) =>
      `  a low place holds water ${words.length(depth)} deep over ${words.area(area)}${guessed ? " (on guessed ground)" : ""}`,
  );
}

function roofLines({ roof }: Water, words: WaterFigures, flow: Flow): string[] {
  return (roof ?? []).map(({ name, area, peak, volume, outlet, joins }) => {
    const rate = flow(peak);
    const parts = [
      `${words.area(area)} of roof`,
      ...(rate ? [`peak ${rate}`] : []),
      ...(volume === null ? [] : [`${words.volume(volume)} in the whole storm`]),
      outlet ? "led to an outlet" : "drips along its eave",
      ...(joins ? [`joins ${joins}`] : []),
    ];
    return `  roof over wall ${name}: ${parts.join(", ")}`;
  });
}

function drainLines({ footingDrain }: Water, words: WaterFigures): string[] {
  if (!footingDrain) return [];
  const { length, high, low, highCorner, lowCorner, outlet, looked, pits } = footingDrain;
  const comesOut = outlet
    ? `it comes out ${words.length(outlet.distance)} from corner ${lowCorner}, at ${words.length(outlet.invert)}`
    : `it can't come out within ${words.length(looked)}`;
  return [
    `  drain round the footing: ${words.length(length)}, invert ${words.length(high)} at ${highCorner} to ${words.length(low)} at ${lowCorner}; ${comesOut}${pits ? `; water in the pits stands ${words.length(Math.abs(pits.above))} ${pits.above > 0 ? "above" : "below"} it at corner ${pits.corner}` : ""}`,
  ];
}

function leavingLines({ leaving }: Water, words: WaterFigures, flow: Flow): string[] {
  return leaving
    .filter(({ before, after }) => Math.max(before, after) >= worthTelling)
    .map(({ line, before, after, peakBefore, peakAfter, rises }) => {
      const [was, is] = [flow(peakBefore), flow(peakAfter)];
      const peaks = was && is ? `, peak ${was}, then ${is}` : "";
      return `  over lot line ${line + 1}: from ${words.area(before)} as it is, ${words.area(after)} as planned${peaks}${rises ? "; more comes to the neighbour than before" : ""}`;
    });
}
