/** Swales: the bed line with chevrons downhill, its fall, and where it comes out. */
import type { Project, Swale } from "../document/schema";
import { between, type Point, pointAlong, polylineLength, signedArea } from "../geometry";
import type { Results, SwaleResult } from "../solve/results";
import { routeStations } from "../solve/route-stations";
import { leastFallWords, swaleVerdict } from "../solve/swale-verdict";
import { formatBore } from "../units";
import { along, besidePoint, capOf, longestName, sizeOf } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, readable } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { offsetLine } from "./offset";
import { reserveLines } from "./reserve";
import { swaleChevron } from "./sizes";
import { stationMarks } from "./stations";
import { ellipsize } from "./text-width";
import { gradeText } from "./words";

/** One chevron every so many mm. */
const pitch = 15;

/** Chevrons point the way the bed falls at their place; against the line where it runs backwards. */
function chevrons(swale: Swale, result: SwaleResult | undefined, context: DrawContext): DrawingMark[] {
  const length = polylineLength(swale.line);
  const count = Math.max(1, Math.round(length / context.metresPerMm / pitch));
  return Array.from({ length: count }, (_, i): DrawingMark => {
    const distance = (length * (i + 0.5)) / count;
    const { at, direction } = pointAlong(swale.line, distance);
    const piece = result?.stations.filter((station) => station.distance <= distance).at(-1);
    const backwards = (piece?.fall ?? 0) < 0;
    const angle = Math.atan2(direction[1], direction[0]) + (backwards ? Math.PI : 0);
    return { kind: "symbol", at, symbol: "chevron", size: swaleChevron, angle, style: "swale-mark" };
  });
}

/** "swale falls 2.0 %", "swale falls 0.2 %, too little", "swale doesn't drain". */
export function swaleText(swale: Swale, result: SwaleResult | undefined, project: Project): string {
  if (!result) return swale.name;
  const falls = result.stations.flatMap((station) => (station.fall === null ? [] : [station.fall]));
  const verdict = swaleVerdict(result, project.rules.leastSwaleFall);
  const slope = (fall: number) => gradeText(fall, project.display);
  const worst = leastFallWords(result, { slope });
  if (!worst.startsWith("falls")) return `${swale.name} ${worst}, ${verdict}`;
  const [least, most] = [result.leastFall, Math.max(result.leastFall, ...falls)].map((fall) =>
    gradeText(fall, project.display),
  );
  const range = least === most ? least : `${least?.replace(/ %$/, "")} to ${most}`;
  const said = verdict === "falls too little" ? "too little" : verdict;
  return verdict === "drains" ? `${swale.name} falls ${range}` : `${swale.name} falls ${range}, ${said}`;
}

/** Beside each piece, longest first, on either side. */
function placesBeside(swale: Swale, text: string): readonly LabelTexts[] {
  const pieces = swale.line.slice(1).map((to, i) => {
    const from = swale.line[i] as Point;
    return { from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]) };
  });
  const off = 1.9 + capOf("swale-label") / 2;
  return pieces
    .sort((a, b) => b.length - a.length)
    .flatMap(({ from, to }) =>
      [0.5, 0.3, 0.7, 0.1, 0.9].flatMap((t) =>
        [off, -off].map((side) => {
          const angle = readable(Math.atan2(to[1] - from[1], to[0] - from[0]));
          return along(between(from, to, t), text, "swale-label", angle, side);
        }),
      ),
    );
}

function shortNamed(swale: Swale): Swale {
  return { ...swale, name: ellipsize(swale.name, longestName, sizeOf("swale-label")) };
}

/** All swales. */
export function drawSwales(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("swales");
  const { swales } = project.grading;
  reserveLines(project, results, context);
  const paper = context.medium === "paper";
  const told = paper ? routeStations(project.grading, [], results.water.swales).swales : null;
  const marks = swales.flatMap((swale): DrawingMark[] => {
    const result = results.water.swales.find((one) => one.id === swale.id);
    const end = swale.line[swale.line.length - 1] as Point;
    const pegs = stationMarks(swale.line, told?.get(swale.id) ?? [], 0, "swales", context);
    return [
      { kind: "line", points: swale.line.flat(), style: "swale" },
      ...chevrons(swale, result, context),
      ...placeLabel(context, "swales", placesBeside(swale, swaleText(shortNamed(swale), result, project))),
      ...placeLabel(context, "swales", besidePoint(end, "outlet", "swale-label", swaleChevron)),
      ...pegs,
    ];
  });
  return {
    id: "swales",
    marks: [...marks, ...pipeMarks(project, results, context), ...drainMarks(project, results, context)],
  };
}

/** Pipes under drives: a line from inlet to outlet, and its size. */
function pipeMarks({ display }: Project, { water }: Results, context: DrawContext): DrawingMark[] {
  return water.pipes.flatMap(({ ends: [inlet, outlet], bore }): DrawingMark[] => {
    const size = bore === null ? "pipe" : `${formatBore(bore, display.area === "ft2")} pipe`;
    return [
      { kind: "line", points: [...inlet, ...outlet], style: "pipe" },
      ...placeLabel(context, "swales", besidePoint(outlet, size, "swale-label", swaleChevron)),
    ];
  });
}

/** The drain lies so far outside the wall on the plan, mm of paper: told apart from it, not measured. */
const drainOff = 1.2;

/** The drain round the footing, and its way to where it comes out. */
function drainMarks({ building }: Project, { water }: Results, context: DrawContext): DrawingMark[] {
  const { footingDrain } = water;
  const [first] = building?.outline ?? [];
  if (!footingDrain || !building || !first) return [];
  const outwards = signedArea(building.outline) > 0 ? -1 : 1;
  const round = offsetLine([...building.outline, first], outwards * drainOff * context.metresPerMm);
  const { outlet } = footingDrain;
  return [
    { kind: "line", points: round.flat(), style: "footing-drain" },
    ...(outlet
      ? ([
          { kind: "line", points: [...outlet.from, ...outlet.at], style: "footing-drain" },
          ...placeLabel(
            context,
            "swales",
            besidePoint(outlet.at, "drain comes out", "swale-label", swaleChevron),
          ),
        ] as const)
      : []),
  ];
}
