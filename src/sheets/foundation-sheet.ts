/** The foundation on one sheet: walls in elevation, sections with their dimensions, corners, what it takes, cautions. */
import type { Project } from "../document/schema";
import {
  type DrawingMark,
  dimensionMarks,
  type ElevationStrip,
  foundationSection,
  type SectionCut,
  type SectionFigures,
  sectionCuts,
  elevationRows as sideRows,
} from "../drawing";
import type { Bounds } from "../geometry";
import type { FoundationResult, Results } from "../solve/results";
import type { Block } from "./block";
import { foundationBlocks } from "./foundation-blocks";
import { drawCheckBar } from "./furniture";
import { inks } from "./inks";
import { type Projection, paintMark } from "./paint";
import { isLarge, type PaperName, paperWords, type Rect, sheetLayout } from "./papers";
import { Pen } from "./pen";
import { inInches, type Scale, standardScales } from "./scales";
import type { SitePlanOptions } from "./site-plan";
import { type Figures, figuresFor } from "./tables";
import { drawTitleStrip, type Title, titleFor } from "./title-block";

const twoDigits = (n: number) => String(n).padStart(2, "0");
/** Air round a drawing, and the line of words over it, mm. */
const air = 4;
const headLine = 6;
/** Most of the sheet's height that the elevations take. */
const elevationShare = 0.56;
/** Column of tables beside the sections, mm. */
const columnWidth = { large: 122, small: 96 } as const;

/** A section at this scale is read well. */
const goodRatio = 40;

/** Scales for sections, largest drawing first. */
const sectionScales = {
  feet: [
    { ratio: 12, words: "1″ = 1′" },
    { ratio: 16, words: "¾″ = 1′" },
    { ratio: 24, words: "½″ = 1′" },
    { ratio: 32, words: "⅜″ = 1′" },
    { ratio: 48, words: "¼″ = 1′" },
    { ratio: 96, words: "⅛″ = 1′" },
  ],
  metric: [10, 20, 25, 40, 50, 100].map((ratio) => ({ ratio, words: `1:${ratio}` })),
} as const;

/**
 * Draws the foundation as a PDF of one page: vectors at true scales, text as text, fonts embedded.
 *
 * Units  the PDF's own; each drawing is true to the scale named over it.
 * Method the sides unrolled in rows at the largest standard scale that leaves room for the sections. Figures come from the
 *        results. No clock and no chance: same input, same bytes.
 */
export async function foundationSheet(
  project: Project,
  results: Results,
  options: SitePlanOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const { year, month, day } = options.date;
  const paper = options.paper ?? project.display.paper;
  const layout = sheetLayout(paper, false);
  const pen = new Pen(options.fonts, {
    title: `${project.name}: foundation`,
    subject: `Foundation in elevation and section on ${paperWords[paper]}`,
    date: new Date(Date.UTC(year, month - 1, day)),
    compress: options.compress ?? true,
  });
  pen.page(layout.page.width, layout.page.height);
  const { frame, furtherTitle } = layout;
  const area = { ...frame, height: frame.height - furtherTitle.height };
  const { foundation } = results;
  if (foundation && project.building) drawAll(pen, area, project, results, foundation, paper);
  else {
    const look = { size: 4, colour: inks.soft, anchor: "middle" } as const;
    pen.text(
      "There is no building on a ground yet.",
      area.x + area.width / 2,
      area.y + area.height / 2,
      look,
    );
  }
  const rule = { colour: inks.ink, width: 0.35 };
  pen.line([furtherTitle.x, furtherTitle.y, furtherTitle.x + furtherTitle.width, furtherTitle.y], rule);
  const facts = {
    scale: "as named",
    paper: paperWords[paper],
    date: `${year}-${twoDigits(month)}-${twoDigits(day)}`,
    page: 1,
    pages: 1,
    heightsFrom: results.survey.mark ? "the mark" : "the datum",
  };
  const title: Title = { ...titleFor(project, facts, { note: "", next: "" }), sheet: "Foundation" };
  drawTitleStrip(pen, title, furtherTitle);
  pen.rectangle(frame.x, frame.y, frame.width, frame.height, null, { colour: inks.ink, width: 0.7 });
  return pen.finish();
}

function drawAll(
  pen: Pen,
  area: Rect,
  project: Project,
  results: Results,
  foundation: FoundationResult,
  paper: PaperName,
): void {
  const large = isLarge(paper);
  const figures = figuresFor(project, results);
  const rows = elevationRows(area, project, foundation, figures, standardScales(project.display, paper));
  const used = drawElevations(pen, area, rows);
  const column = large ? columnWidth.large : columnWidth.small;
  const below = { x: area.x, y: area.y + used, width: area.width, height: area.height - used };
  pen.line([below.x, below.y, below.x + below.width, below.y], { colour: inks.ink, width: 0.35 });
  const tables = { ...below, x: below.x + below.width - column, width: column };
  pen.line([tables.x, tables.y, tables.x, tables.y + tables.height], { colour: inks.ink, width: 0.35 });
  drawTables(pen, tables, foundationBlocks(project, foundation, results, figures), large);
  const scales = sectionScales[inInches(project.display, paper) ? "feet" : "metric"];
  drawSections(pen, { ...below, width: below.width - column }, project, foundation, figures, scales);
}

interface ElevationRows {
  readonly scale: Scale;
  readonly strips: readonly ElevationStrip[];
}

/** The sides in rows, at the largest standard scale at which they take no more than their share. */
function elevationRows(
  area: Rect,
  project: Project,
  foundation: FoundationResult,
  figures: Figures,
  scales: readonly Scale[],
): ElevationRows {
  let last: ElevationRows | null = null;
  for (const scale of scales) {
    last = { scale, strips: stripsAt(scale, area.width - 2 * air, project, foundation, figures) };
    if (heightOf(last) <= area.height * elevationShare && fitsAcross(last, area.width - 2 * air)) return last;
  }
  return last as ElevationRows;
}

function stripsAt(
  scale: Scale,
  width: number,
  project: Project,
  foundation: FoundationResult,
  figures: Figures,
): readonly ElevationStrip[] {
  const metresPerMm = scale.ratio / 1000;
  return sideRows(
    foundation,
    { metresPerMm, figures, frostDepth: project.building?.foundation.frostDepth ?? null },
    width * metresPerMm,
  );
}

const acrossMm = ({ minX, maxX }: Bounds, { ratio }: Scale) => ((maxX - minX) * 1000) / ratio;
const downMm = ({ minY, maxY }: Bounds, { ratio }: Scale) => ((maxY - minY) * 1000) / ratio;

function heightOf({ strips, scale }: ElevationRows): number {
  return strips.reduce((sum, { bounds }) => sum + downMm(bounds, scale), headLine + 2 * air);
}

function fitsAcross({ strips, scale }: ElevationRows, width: number): boolean {
  return strips.every(({ bounds }) => acrossMm(bounds, scale) <= width);
}

/** Draws the rows from the top of the area; answers the height that they took. */
function drawElevations(pen: Pen, area: Rect, rows: ElevationRows): number {
  heading(pen, `Walls in elevation, unrolled, ${rows.scale.words}`, area.x + air, area.y + headLine);
  drawKey(pen, area.x + area.width - air, area.y + headLine);
  let y = area.y + headLine + air / 2;
  for (const { marks, bounds } of rows.strips) {
    paintAt(pen, marks, bounds, rows.scale, area.x + air, y);
    y += downMm(bounds, rows.scale);
  }
  return Math.min(area.height, heightOf(rows));
}

function heading(pen: Pen, text: string, x: number, y: number): void {
  pen.text(text, x, y, { size: 3.4, weight: 600, colour: inks.ink });
}

/** What the lines mean, from the right. */
function drawKey(pen: Pen, right: number, y: number): void {
  const entries = [
    ["frost depth", inks.water, [2.4, 0.9]],
    ["floor", inks.accent, [4, 0.9, 0.8, 0.9]],
    ["ground as it is", inks.soft, [1.6, 0.9]],
    ["finished ground", inks.ink, []],
  ] as const;
  let x = right;
  for (const [words, colour, dash] of entries) {
    pen.text(words, x, y, { size: 2.6, colour: inks.ink, anchor: "end" });
    x -= 2.6 * 0.5 * words.length + 3;
    pen.line([x - 9, y - 0.9, x, y - 0.9], { colour, width: 0.35, dash });
    x -= 13;
  }
}

function paintAt(
  pen: Pen,
  marks: readonly DrawingMark[],
  { minX, maxY }: Bounds,
  { ratio }: Scale,
  x: number,
  y: number,
): void {
  const projection: Projection = { mmPerMetre: 1000 / ratio, plan: [minX, maxY], page: [x, y], turn: 0 };
  for (const mark of marks) paintMark(pen, mark, projection);
}

/** Sections side by side at one scale: as many as find room, the low corner first. */
function drawSections(
  pen: Pen,
  area: Rect,
  project: Project,
  foundation: FoundationResult,
  figures: Figures,
  scales: readonly Scale[],
): void {
  const cuts = sectionCuts(project, foundation);
  const room = { width: area.width, height: area.height - 2 * air - 8 };
  const scaleOf = (count: number) =>
    scales.find((scale) => placeSections(cuts.slice(0, count), scale, room) !== null);
  // As many as find room at a good scale; else as many as the best one lets stand.
  const counts = cuts.map((_, i) => cuts.length - i);
  const best = Math.min(...counts.map((count) => scaleOf(count)?.ratio ?? Infinity));
  const count = counts.find((one) => (scaleOf(one)?.ratio ?? Infinity) <= Math.max(best, goodRatio)) ?? 1;
  const scale = scaleOf(count) ?? scales[scales.length - 1];
  if (!scale) return;
  const told = {
    height: (above: number) => figures.height(foundation.heights.floor + above),
    length: figures.length,
  };
  const places = placeSections(cuts.slice(0, count), scale, room) ?? [];
  for (const { cut, x, y } of places) drawSection(pen, cut, scale, area.x + x, area.y + y, figures, told);
  drawCheckBar(pen, project.display, area.x + air, area.y + area.height - 6.5);
}

interface PlacedSection {
  readonly cut: SectionCut;
  readonly x: number;
  readonly y: number;
}

/** Sections in rows from the left, each row as high as its highest; null where they don't find room, mm. */
function placeSections(
  cuts: readonly SectionCut[],
  scale: Scale,
  room: { readonly width: number; readonly height: number },
): readonly PlacedSection[] | null {
  const placed: PlacedSection[] = [];
  let [x, y, high] = [air, 0, 0];
  for (const cut of cuts) {
    const { bounds } = foundationSection(cut.facts, scale.ratio / 1000);
    const width = acrossMm(bounds, scale);
    if (x > air && x + width + air > room.width) [x, y, high] = [air, y + high, 0];
    if (x + width + air > room.width) return null;
    high = Math.max(high, headLine + air + downMm(bounds, scale));
    if (y + high > room.height) return null;
    placed.push({ cut, x, y });
    x += width + 3 * air;
  }
  return placed;
}

function drawSection(
  pen: Pen,
  cut: SectionCut,
  scale: Scale,
  x: number,
  y: number,
  figures: Figures,
  told: SectionFigures,
): void {
  const { marks, dimensions, measures, bounds } = foundationSection(cut.facts, scale.ratio / 1000, told);
  heading(pen, `Section ${cut.words}, ${scale.words}`, x, y + headLine);
  const lines = [...dimensions, ...measures].flatMap((each) =>
    dimensionMarks(each, (m) => figures.cell(figures.length(m))),
  );
  paintAt(pen, [...marks, ...lines], bounds, scale, x, y + headLine + air / 2);
}

function drawTables(pen: Pen, area: Rect, blocks: readonly Block[], large: boolean): void {
  const most = large ? 2.9 : 2.5;
  const total = (size: number) => blocks.reduce((sum, block) => sum + block.height(area.width, size), 0);
  const sizes = [most, 2.7, 2.5, 2.3, 2.1].filter((size) => size <= most);
  const size = sizes.find((one) => total(one) <= area.height) ?? (sizes[sizes.length - 1] as number);
  let y = area.y;
  for (const block of blocks) {
    const height = block.height(area.width, size);
    if (y + height > area.y + area.height + 0.01) break;
    block.draw(pen, area.x, y, area.width, size);
    y += height;
  }
}
