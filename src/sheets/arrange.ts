/** How the paper is shared between the plan and what people read beside it. */
import type { Bounds } from "../geometry";
import type { Block } from "./block";
import { chooseFirst, firstFit, type Placed, pour } from "./flow";
import { type Given, isLarge, type PaperName, type Rect, type SheetLayout, sheetLayout } from "./papers";
import { paperNeeded, type Sheet } from "./scales";

/** Text sizes, mm: in a column on large and on small paper. */
const textSizes = { large: 2.9, small: 2.65 } as const;
/** On further pages: the largest that needs no page more than the smallest does. */
const furtherSizes = [4.2, 3.9, 3.6, 3.3, 3.1, 2.9, 2.75] as const;
const least = furtherSizes[furtherSizes.length - 1] as number;

/** Blocks of the first page, the most important first. */
export const importance = [
  "open notice",
  "heights",
  "open points",
  "corners",
  "key",
  "cautions",
  "ties",
  "diagonals",
  "setout",
  "routes",
  "earth",
];

export interface Texts {
  /** Everything beside the drawing, in reading order. */
  readonly blocks: readonly Block[];
  /** Stands at the head of the first page where the open points have no room there. */
  readonly openNotice: Block;
}

export interface Page {
  readonly placed: readonly Placed[];
  readonly rest: readonly Block[];
}

export interface Further {
  readonly columns: readonly Rect[];
  readonly size: number;
  readonly pages: readonly (readonly Placed[])[];
}

export interface Arrangement {
  readonly sheet: Sheet;
  /** Text size on the first page, mm. */
  readonly size: number;
  readonly first: Page;
  readonly further: Further;
}

const isOpen = ({ name }: Block) => name === "open points";

/** The widest block that may be left to a shelf under the plan, and the first page without it. */
function shelved(blocks: readonly Block[], { shelf }: SheetLayout, size: number): readonly Placed[] {
  const key = blocks.find(({ name }) => name === "key");
  if (!shelf || !key || key.height(shelf.width, size) > shelf.height + 1e-6) return [];
  return [{ block: key, x: shelf.x, y: shelf.y, width: shelf.width }];
}

/** The first page; where the open points have no room there, a notice of them stands at its head. */
function firstPage({ blocks, openNotice }: Texts, layout: SheetLayout, size: number): Page {
  const onShelf = shelved(blocks, layout, size);
  const others = blocks.filter((block) => onShelf.every((one) => one.block !== block));
  const choose = (list: readonly Block[]) => chooseFirst(list, importance, layout.columns, size);
  const first = choose(others);
  if (!first.rest.some(isOpen)) return { placed: [...first.placed, ...onShelf], rest: first.rest };
  const noticed = choose([openNotice, ...others.filter((block) => !isOpen(block))]);
  return { placed: [...noticed.placed, ...onShelf], rest: [...others.filter(isOpen), ...noticed.rest] };
}

/** Read before the rest of a further page. */
const firstOfAll = ["open points", "cautions"];

/** The next page: blocks whole, in the first column that holds them, or broken from column to column. */
function nextPage(blocks: readonly Block[], columns: readonly Rect[], size: number, whole: boolean): Page {
  const [first] = blocks;
  const [column] = columns;
  const fitted = whole ? firstFit(blocks, columns, size) : null;
  const page = fitted && fitted.placed.length > 0 ? fitted : pour(blocks, columns, size, true);
  if (page.placed.length > 0 || !first || !column) return page;
  // A block too tall for an empty page and not to be broken is shown as far as it goes.
  const alone = { block: first, x: column.x, y: column.y, width: column.width };
  return { placed: [alone], rest: blocks.slice(1) };
}

function pagesOf(
  blocks: readonly Block[],
  columns: readonly Rect[],
  size: number,
  whole: boolean,
): Further["pages"] {
  const pages: (readonly Placed[])[] = [];
  let rest = blocks;
  while (rest.length > 0) {
    const page = nextPage(rest, columns, size, whole);
    pages.push(page.placed);
    rest = page.rest;
  }
  return pages;
}

/**
 * Further pages: what didn't fit on the first, on as few pages as may be; then with blocks whole, then in text as large
 * as the pages allow, in as few columns.
 */
function furtherPages(unsorted: readonly Block[], layouts: SheetLayout["furtherColumns"]): Further {
  const early = (block: Block) => firstOfAll.includes(block.name);
  const rest: readonly Block[] = [...unsorted.filter(early), ...unsorted.filter((block) => !early(block))];
  const tries = [true, false].flatMap((whole) =>
    furtherSizes.flatMap((size) => layouts.map((columns) => ({ whole, size, columns }))),
  );
  const smallest = tries.filter(({ size }) => size === least);
  const fewest = Math.min(
    ...smallest.map(({ whole, size, columns }) => pagesOf(rest, columns, size, whole).length),
  );
  for (const { whole, size, columns } of tries) {
    const pages = pagesOf(rest, columns, size, whole);
    if (pages.length === fewest) return { columns, size, pages };
  }
  throw new Error("The smallest size gives the fewest pages.");
}

/** Shares of the paper that the plan doesn't need which are tried for texts. */
const shares = [0, 0.25, 0.5, 0.75, 1] as const;
/** Air about the plan that a shelf may take, mm. */
const shelfSlack = 2;
/** The plan and the strip under it stay at least so wide, mm. */
const narrowestPlan = 172;

/** The ways to lay out one sheet: what the plan doesn't need may go to the columns, and to a shelf under it. */
function layoutsOf(
  { layout, scale }: Sheet,
  bounds: Bounds,
  paper: PaperName,
  shelfHeight: (width: number) => number,
): readonly SheetLayout[] {
  const { portrait, plan } = layout;
  const needed = paperNeeded(bounds, scale.ratio);
  const narrowestHere = portrait ? 0 : narrowestPlan;
  const spare = portrait ? plan.height - needed.height : plan.width - Math.max(needed.width, narrowestHere);
  const spares = spare > 1 ? shares : [0 as const];
  return spares.flatMap((share) => {
    const bare: Given = { columns: share * Math.max(0, spare), shelf: 0 };
    const width = plan.width - bare.columns;
    const shelf = shelfHeight(width);
    const withShelf = !portrait && shelf > 0 && plan.height - shelf >= needed.height - shelfSlack;
    return [bare, ...(withShelf ? [{ ...bare, shelf }] : [])].map((given) =>
      sheetLayout(paper, portrait, given),
    );
  });
}

/** Texts poured into a sheet that is laid out already. */
export function pourInto(texts: Texts, sheet: Sheet, paper: PaperName): Arrangement {
  const size = isLarge(paper) ? textSizes.large : textSizes.small;
  const first = firstPage(texts, sheet.layout, size);
  return { sheet, size, first, further: furtherPages(first.rest, sheet.layout.furtherColumns) };
}

/**
 * The sheet on which texts and plan share the paper best: the fewest pages, then the largest text on further ones,
 * then the most on the first; the plan keeps what doesn't help the texts.
 *
 * Units  bounds in metres, paper in mm.
 * Method a handful of layouts are tried: the ways round that allow the scale, and shares of what the plan leaves free.
 */
export function arrange(
  choices: readonly [Sheet, ...Sheet[]],
  bounds: Bounds,
  paper: PaperName,
  texts: Texts,
): Arrangement {
  const size = isLarge(paper) ? textSizes.large : textSizes.small;
  const key = texts.blocks.find(({ name }) => name === "key");
  const sheets = choices.flatMap(({ layout, scale }) =>
    layoutsOf({ layout, scale }, bounds, paper, (width) => key?.height(width, size) ?? 0).map((one) => ({
      layout: one,
      scale,
    })),
  );
  return sheets
    .map((sheet) => pourInto(texts, sheet, paper))
    .reduce((best, one) => (isBetter(one, best) ? one : best));
}

function isBetter(a: Arrangement, b: Arrangement): boolean {
  const pages = b.further.pages.length - a.further.pages.length;
  if (pages !== 0) return pages > 0;
  const onFirst = b.first.rest.length - a.first.rest.length;
  return onFirst !== 0 ? onFirst > 0 : a.further.size > b.further.size;
}
