/** Paper sizes and how a site plan is laid out on each. All in millimetres. */
import type { Display } from "../document/schema";

export type PaperName = Display["paper"];

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Width and height with the long side across. ANSI and ISO 216 sizes. */
const sizes: Readonly<Record<PaperName, readonly [number, number]>> = {
  letter: [279.4, 215.9],
  tabloid: [431.8, 279.4],
  a4: [297, 210],
  a3: [420, 297],
};

export const paperWords: Readonly<Record<PaperName, string>> = {
  letter: "letter",
  tabloid: "tabloid (11 × 17 in)",
  a4: "A4",
  a3: "A3",
};

export interface SheetLayout {
  readonly portrait: boolean;
  /** The page. */
  readonly page: { readonly width: number; readonly height: number };
  /** The border. */
  readonly frame: Rect;
  /** Where the plan is drawn and clipped. */
  readonly plan: Rect;
  /** Strip below the plan for scale bar, check bar and north arrow. */
  readonly strip: Rect;
  /** The title block. */
  readonly title: Rect;
  /** Columns for texts and tables on the first page, in reading order. */
  readonly columns: readonly Rect[];
  /** Room for one wide block between plan and strip; null where the plan takes it all. */
  readonly shelf: Rect | null;
  /** Columns on every further page, few wide ones or more narrow ones. */
  readonly furtherColumns: readonly (readonly Rect[])[];
  /** The title block on further pages. */
  readonly furtherTitle: Rect;
}

const border = 9;
const stripHeight = 17;
/** Height of the title block below a column, and of the strip that it becomes along the foot of a page. */
const titleHeight = 41;
/** Where the title block is wider its notes take fewer lines. */
const uprightTitleHeight = 38;
const titleStrip = 12;

/** Paper that the plan doesn't need, given to texts, mm. */
export interface Given {
  /** To the columns beside the plan, on upright paper to the band below it. */
  readonly columns: number;
  /** To a shelf under the plan. */
  readonly shelf: number;
}

const nothingGiven: Given = { columns: 0, shelf: 0 };

/** Narrowest column that tables read well in. */
const narrowest = { large: 84, small: 74 } as const;

export const isLarge = (paper: PaperName) => paper === "a3" || paper === "tabloid";

function furtherPage(
  frame: Rect,
  paper: PaperName,
  portrait: boolean,
): Pick<SheetLayout, "furtherColumns" | "furtherTitle"> {
  const counts = isLarge(paper) ? (portrait ? [2] : [2, 3]) : portrait ? [1] : [2];
  const height = frame.height - titleStrip;
  return {
    furtherColumns: counts.map((count) => {
      const width = frame.width / count;
      return Array.from({ length: count }, (_, i) => ({ x: frame.x + i * width, y: frame.y, width, height }));
    }),
    furtherTitle: { x: frame.x, y: frame.y + height, width: frame.width, height: titleStrip },
  };
}

type FirstPage = Pick<SheetLayout, "plan" | "strip" | "title" | "columns" | "shelf">;

function shelfOf(plan: Rect, height: number): Rect | null {
  return height > 0 ? { x: plan.x, y: plan.y + plan.height, width: plan.width, height } : null;
}

function landscape(frame: Rect, paper: PaperName, given: Given): FirstPage {
  const beside = (isLarge(paper) ? 116 : 74) + given.columns;
  const count = beside >= 2 * narrowest[isLarge(paper) ? "large" : "small"] ? 2 : 1;
  const column = beside / count;
  const width = frame.width - beside;
  const x = frame.x + width;
  const height = frame.height - titleHeight;
  const last = x + (count - 1) * column;
  const plan = { x: frame.x, y: frame.y, width, height: frame.height - stripHeight - given.shelf };
  return {
    plan,
    shelf: shelfOf(plan, given.shelf),
    strip: { x: frame.x, y: frame.y + frame.height - stripHeight, width, height: stripHeight },
    columns: [
      ...(count === 2 ? [{ x, y: frame.y, width: column, height: frame.height }] : []),
      { x: last, y: frame.y, width: column, height },
    ],
    title: { x: last, y: frame.y + height, width: column, height: titleHeight },
  };
}

function upright(frame: Rect, paper: PaperName, given: Given): FirstPage {
  const band = (isLarge(paper) ? 84 : 76) + given.columns;
  const planHeight = frame.height - band - stripHeight;
  const y = frame.y + frame.height - band;
  const half = frame.width / 2;
  return {
    plan: { x: frame.x, y: frame.y, width: frame.width, height: planHeight },
    shelf: null,
    strip: { x: frame.x, y: frame.y + planHeight, width: frame.width, height: stripHeight },
    columns: [
      { x: frame.x, y, width: half, height: band },
      { x: frame.x + half, y, width: half, height: band - uprightTitleHeight },
    ],
    title: { x: frame.x + half, y: y + band - uprightTitleHeight, width: half, height: uprightTitleHeight },
  };
}

/** Where everything goes on a paper: columns beside the plan, or on upright paper a band below it. */
export function sheetLayout(paper: PaperName, portrait: boolean, given: Given = nothingGiven): SheetLayout {
  const [long, short] = sizes[paper];
  const page = portrait ? { width: short, height: long } : { width: long, height: short };
  const frame = { x: border, y: border, width: page.width - 2 * border, height: page.height - 2 * border };
  const first = portrait ? upright(frame, paper, given) : landscape(frame, paper, given);
  return { portrait, page, frame, ...first, ...furtherPage(frame, paper, portrait) };
}
