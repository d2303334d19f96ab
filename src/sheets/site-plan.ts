/** The site plan: a drawing to scale and what people on site need beside it. */
import type { Project } from "../document/schema";
import { createDrawContext, type DrawContext, drawPlan, sheetBounds } from "../drawing";
import type { MarkLayer } from "../drawing/marks";
import type { Bounds } from "../geometry";
import type { Results } from "../solve/results";
import { type Arrangement, arrange, importance, pourInto, type Texts } from "./arrange";
import type { Block } from "./block";
import { diagonalTable } from "./diagonal-table";
import type { Placed } from "./flow";
import { drawStrip } from "./furniture";
import { inks } from "./inks";
import { keyBlock } from "./key-block";
import { cautionsBlock, heightsBlock, openNotice, openPointsBlock } from "./notes";
import { centred, type Projection, paintMark } from "./paint";
import { type PaperName, paperWords, type Rect } from "./papers";
import { Pen, type SheetFonts } from "./pen";
import { paintPictures } from "./pictures";
import { type Sheet, sheetChoices } from "./scales";
import { withSiteNotes } from "./site-notes";
import { tableBlock } from "./table-block";
import { cornerTable, earthTable, figuresFor, routeTable, setoutTable, type Table, tieTable } from "./tables";
import { drawTitle, drawTitleStrip, type TitleFacts, titleFor } from "./title-block";

export interface SitePlanOptions {
  readonly fonts: SheetFonts;
  /** The day it is drawn; it goes into the title block and the file, so that the same day gives the same bytes. */
  readonly date: { readonly year: number; readonly month: number; readonly day: number };
  readonly paper?: PaperName;
  /** Metres on the ground for a metre of paper; chosen to fit where not given. */
  readonly scale?: number;
  /** False leaves the pictures under the plan away (default true). */
  readonly pictures?: boolean;
  /** False keeps the page's drawing readable in the file (default true). */
  readonly compress?: boolean;
}

/** An empty project is drawn as a plot of 20 m, so that the sheet has a scale. */
const emptyBounds = { minX: -10, minY: -10, maxX: 10, maxY: 10 };

/** Keeps labels off the edge of the plan: what sticks out of the frame would be cut. */
function fence(context: DrawContext, plan: Rect, projection: Projection): void {
  const thick = 60;
  const [left, right] = [plan.x - projection.page[0], plan.x + plan.width - projection.page[0]];
  const [top, bottom] = [projection.page[1] - plan.y, projection.page[1] - plan.y - plan.height];
  const ox = projection.plan[0] / context.metresPerMm;
  const oy = projection.plan[1] / context.metresPerMm;
  const [c, s] = [Math.cos(projection.turn), Math.sin(projection.turn)];
  const take = (right: number, up: number, width: number, height: number) => {
    const [x, y] = [ox + right * c + up * s, oy + up * c - right * s];
    context.labels.take("frame", { x, y, width, height, angle: -projection.turn });
  };
  const inset = 1;
  const middleX = (left + right) / 2;
  const middleY = (top + bottom) / 2;
  take(left + inset - thick / 2, middleY, thick, top - bottom + 2 * thick);
  take(right - inset + thick / 2, middleY, thick, top - bottom + 2 * thick);
  take(middleX, top - inset + thick / 2, right - left + 2 * thick, thick);
  take(middleX, bottom + inset - thick / 2, right - left + 2 * thick, thick);
}

interface Drawing {
  readonly sheet: Sheet;
  readonly projection: Projection;
  readonly layers: readonly MarkLayer[];
}

interface Extent {
  readonly bounds: Bounds;
  readonly paper: PaperName;
}

function drawOn(project: Project, results: Results, sheet: Sheet, bounds: Bounds): Drawing {
  const { turn } = project.drawing;
  const projection = centred(bounds, sheet.layout.plan, sheet.scale.ratio, turn);
  const drawOptions = {
    metresPerMm: sheet.scale.ratio / 1000,
    heightsFrom: "mark",
    medium: "paper",
    turn,
  } as const;
  const context = createDrawContext(drawOptions);
  fence(context, sheet.layout.plan, projection);
  return { sheet, projection, layers: drawPlan(project, results, drawOptions, context) };
}

/** The drawing and the texts on the sheet they share best. Where the plan gave paper away it is drawn again. */
function arranged(
  project: Project,
  results: Results,
  { bounds, paper }: Extent,
  scale: number | undefined,
): { readonly drawn: Drawing; readonly arrangement: Arrangement } {
  const choices = sheetChoices(bounds, paper, project.display, scale);
  const tried = drawOn(project, results, choices[0], bounds);
  const { sheet } = arrange(choices, bounds, paper, textsFor(project, results, tried.layers));
  const drawn = sameRect(sheet.layout.plan, choices[0].layout.plan)
    ? tried
    : drawOn(project, results, sheet, bounds);
  return { drawn, arrangement: pourInto(textsFor(project, results, drawn.layers), sheet, paper) };
}

const sameRect = (a: Rect, b: Rect) => a.width === b.width && a.height === b.height;

function textsFor(project: Project, results: Results, layers: readonly MarkLayer[]): Texts {
  return { blocks: blocksFor(project, results, layers), openNotice: openNotice(project, results) };
}

/** Everything beside the drawing, in reading order. */
function blocksFor(project: Project, results: Results, layers: readonly MarkLayer[]): readonly Block[] {
  const figures = figuresFor(project, results);
  const table = (name: string, found: Table | null) => found && tableBlock(name, found);
  return [
    heightsBlock(project, results, figures),
    openPointsBlock(project, results),
    table("corners", cornerTable(project, results, figures)),
    table("ties", tieTable(project, results, figures)),
    table("diagonals", diagonalTable(project, figures)),
    table("setout", setoutTable(results, figures)),
    table("routes", routeTable(project, results, figures)),
    table("earth", earthTable(project, results, figures)),
    keyBlock(layers, project.display, results.contourInterval),
    cautionsBlock(project, results, figures),
  ].filter((block): block is Block => block !== null);
}

/** How the title block names what is on further pages. */
const pageWords: Readonly<Record<string, string>> = {
  cautions: "cautions (read before work)",
  "open points": "points still open",
  setout: "set-out",
  ties: "tapes",
  diagonals: "diagonals",
  routes: "drive and swale",
  corners: "corners and trench",
  earth: "earth",
  key: "key",
  heights: "heights",
};

/** "Next sheet: cautions to read before work, set-out." */
function nextSheet(rest: readonly Block[]): string {
  if (rest.length === 0) return "";
  const names = importance.filter((name) => rest.some((block) => block.name === name));
  return `Next sheet: ${names.map((name) => pageWords[name] ?? name).join(", ")}.`;
}

function drawFrame(pen: Pen, frame: Rect): void {
  pen.rectangle(frame.x, frame.y, frame.width, frame.height, null, { colour: inks.ink, width: 0.7 });
}

/** Blocks with a hairline under each but the last of its column. */
function drawBlocks(pen: Pen, placed: readonly Placed[], size: number): void {
  for (const [i, { block, x, y, width }] of placed.entries()) {
    block.draw(pen, x, y, width, size);
    const next = placed[i + 1];
    if (next?.x !== x) continue;
    pen.line([x, next.y, x + width, next.y], { colour: inks.ink, width: 0.25 });
  }
}

function drawPlanArea(pen: Pen, { sheet, projection, layers }: Drawing, project: Project): void {
  const { plan, shelf, strip } = sheet.layout;
  const ring = [plan.x, plan.y, plan.x + plan.width, plan.y, plan.x + plan.width, plan.y + plan.height];
  pen.clipped([[...ring, plan.x, plan.y + plan.height]], () => {
    paintPictures(pen, project, projection);
    for (const layer of layers) for (const mark of layer.marks) paintMark(pen, mark, projection);
  });
  if (layers.every((layer) => layer.marks.length === 0)) {
    const look = { size: 4, colour: inks.soft, anchor: "middle" } as const;
    pen.text("Nothing has been drawn or shot yet.", plan.x + plan.width / 2, plan.y + plan.height / 2, look);
  }
  if (shelf) pen.line([shelf.x, shelf.y, shelf.x + shelf.width, shelf.y], { colour: inks.ink, width: 0.25 });
  pen.line([strip.x, strip.y, strip.x + strip.width, strip.y], { colour: inks.ink, width: 0.25 });
  drawStrip(pen, strip, sheet.scale, project.display, project.lot.north - project.drawing.turn);
}

function notASurvey(results: Results): string {
  const shots = results.survey.points.filter((point) => point.height !== null).length;
  const setups = results.survey.setups.length;
  const from = `${shots} readings from ${setups} ${setups === 1 ? "set-up" : "set-ups"}`;
  return `Not a survey: lot lines are as typed. ${from}; hatched ground is a guess. For building by the owner.`;
}

function withoutPictures(project: Project): Project {
  return { ...project, drawing: { ...project.drawing, underlays: [] } };
}

const twoDigits = (n: number) => String(n).padStart(2, "0");

/**
 * Draws the site plan as a PDF: vectors at a true scale, text as text, fonts embedded.
 *
 * Units  the PDF's own; lengths on paper are true to the scale named in the title block.
 * Method the plan's marks at the largest standard scale that fits; tables that don't fit beside it flow to further
 *        pages at full size. Figures come from the results. No clock and no chance: same input, same bytes.
 */
export async function sitePlan(
  whole: Project,
  results: Results,
  options: SitePlanOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const { year, month, day } = options.date;
  const project = options.pictures === false ? withoutPictures(whole) : whole;
  const paper = options.paper ?? project.display.paper;
  const bounds = sheetBounds(project, results) ?? emptyBounds;
  const { drawn, arrangement } = arranged(project, results, { bounds, paper }, options.scale);
  const { layout, scale } = drawn.sheet;
  const { first, further, size } = arrangement;
  const pen = new Pen(options.fonts, {
    title: `${project.name}: site plan`,
    subject: `Site plan at ${scale.words} on ${paperWords[paper]}`,
    date: new Date(Date.UTC(year, month - 1, day)),
    compress: options.compress ?? true,
  });
  const titleOn = (page: number) => {
    const facts: TitleFacts = {
      scale: scale.words,
      paper: paperWords[paper],
      date: `${year}-${twoDigits(month)}-${twoDigits(day)}`,
      page,
      pages: 1 + further.pages.length,
      heightsFrom: results.survey.mark ? "the mark" : "the datum",
    };
    return titleFor(project, facts, { note: notASurvey(results), next: nextSheet(first.rest) });
  };

  pen.page(layout.page.width, layout.page.height);
  drawPlanArea(pen, drawn, project);
  drawColumns(pen, layout.columns, layout.title);
  drawBlocks(pen, withSiteNotes(first.placed, layout.columns, size), size);
  drawTitle(pen, titleOn(1), layout.title);
  drawFrame(pen, layout.frame);
  for (const [i, placed] of further.pages.entries()) {
    pen.page(layout.page.width, layout.page.height);
    drawColumns(pen, further.columns, layout.furtherTitle);
    drawBlocks(pen, withSiteNotes(placed, further.columns, further.size), further.size);
    drawTitleStrip(pen, titleOn(i + 2), layout.furtherTitle);
    drawFrame(pen, layout.frame);
  }
  return pen.finish();
}

/** Rules between columns and over the title block. */
function drawColumns(pen: Pen, columns: readonly Rect[], title: Rect): void {
  const stroke = { colour: inks.ink, width: 0.35 };
  for (const column of columns) {
    pen.line([column.x, column.y, column.x + column.width, column.y], stroke);
    pen.line([column.x, column.y, column.x, column.y + column.height], stroke);
  }
  pen.line([title.x, title.y, title.x + title.width, title.y], stroke);
  pen.line([title.x, title.y, title.x, title.y + title.height], stroke);
}
