/** Section lines: where the ground is cut and which way it is looked at, with a name at both ends. */
import type { Project, SectionLine } from "../document/schema";
import { distance, type Point } from "../geometry";
import type { Results } from "../solve/results";
import { longestName, sizeOf } from "./beside";
import { capHeight, type DrawContext, type LabelTexts, onPaper, placeLabel, seenWay } from "./context";
import type { DrawingMark, MarkLayer, XY } from "./marks";
import { reserveLines } from "./reserve";
import { ellipsize } from "./text-width";

const group = "sections";
/** The heavy stroke at each end, and the arrow that says which way one looks, mm. */
const heavy = 4;
const arrow = 3.4;

/** What is written at the ends: "P" for "section P". */
export function sectionLetter(name: string): string {
  return name.replace(/^section\s+/i, "");
}

/** Beyond the end of the line, then to its sides. */
function letterPlaces(at: XY, away: Point, look: Point, text: string, turn: number): readonly LabelTexts[] {
  const cap = sizeOf("section-label") * capHeight;
  return [away, [-look[0], -look[1]], [away[0] - look[0], away[1] - look[1]], look].map((way) => {
    const [right, up] = seenWay(Math.atan2(way[1] as number, way[0] as number), turn);
    const anchor = right > 0.4 ? "start" : right < -0.4 ? "end" : "middle";
    const shift: XY = [right * 1.6, up * (1.6 + cap / 2) - cap / 2];
    return [{ kind: "text", at, text, style: "section-label", anchor, shift, halo: true }];
  });
}

/** One section line. One looks to the left of the way from its first place to its second, so the first is on the left. */
function sectionMarks({ name, line: [a, b] }: Omit<SectionLine, "id">, context: DrawContext): DrawingMark[] {
  const length = distance(a, b);
  if (length < 1e-6) return [];
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const look: Point = [-along[1], along[0]];
  const text = ellipsize(sectionLetter(name), longestName, sizeOf("section-label"), 600);
  const stroke = Math.min(heavy * context.metresPerMm, length / 3);
  context.labels.takeLine(group, onPaper([...a, ...b], context.metresPerMm), 0.4);
  const ends = [
    { at: a, inward: along },
    { at: b, inward: [-along[0], -along[1]] as Point },
  ].flatMap(({ at, inward }): DrawingMark[] => {
    const inner = [at[0] + inward[0] * stroke, at[1] + inward[1] * stroke];
    const half = (arrow / 2) * context.metresPerMm;
    const tip: XY = [at[0] + look[0] * half, at[1] + look[1] * half];
    const angle = Math.atan2(look[1], look[0]);
    return [
      { kind: "line", points: [...at, ...inner], style: "section-end" },
      { kind: "symbol", at: tip, symbol: "arrow", size: arrow, angle, style: "section-arrow" },
      ...placeLabel(
        context,
        group,
        letterPlaces(at, [-inward[0], -inward[1]], look, text, context.turn),
        true,
      ),
    ];
  });
  return [{ kind: "line", points: [...a, ...b], style: "section-line" }, ...ends];
}

/** All section lines that a person drew. */
export function drawSectionLines(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  reserveLines(project, results, context);
  return {
    id: "sections",
    marks: project.drawing.sections.flatMap((section) => sectionMarks(section, context)),
  };
}
