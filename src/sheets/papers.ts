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
  /** Columns on every further page. */
  readonly furtherColumns: readonly Rect[];
  /** The title block on further pages. */
  readonly furtherTitle: Rect;
}

const border = 9;
const stripHeight = 17;
/** Height of the title block below a column, and of the strip that it becomes along the foot of a page. */
const titleHeight = 41;
const titleStrip = 12;

const isLarge = (paper: PaperName) => paper === "a3" || paper === "tabloid";

function furtherPage(
  frame: Rect,
  paper: PaperName,
  portrait: boolean,
): Pick<SheetLayout, "furtherColumns" | "furtherTitle"> {
  const count = isLarge(paper) ? (portrait ? 2 : 3) : portrait ? 1 : 2;
  const width = frame.width / count;
  const height = frame.height - titleStrip;
  return {
    furtherColumns: Array.from({ length: count }, (_, i) => ({
      x: frame.x + i * width,
      y: frame.y,
      width,
      height,
    })),
    furtherTitle: { x: frame.x, y: frame.y + height, width: frame.width, height: titleStrip },
  };
}

function landscape(frame: Rect, paper: PaperName): Pick<SheetLayout, "plan" | "strip" | "title" | "columns"> {
  const column = isLarge(paper) ? 116 : 74;
  const width = frame.width - column;
  const x = frame.x + width;
  const height = frame.height - titleHeight;
  return {
    plan: { x: frame.x, y: frame.y, width, height: frame.height - stripHeight },
    strip: { x: frame.x, y: frame.y + frame.height - stripHeight, width, height: stripHeight },
    columns: [{ x, y: frame.y, width: column, height }],
    title: { x, y: frame.y + height, width: column, height: titleHeight },
  };
}

function upright(frame: Rect, paper: PaperName): Pick<SheetLayout, "plan" | "strip" | "title" | "columns"> {
  const band = isLarge(paper) ? 84 : 76;
  const planHeight = frame.height - band - stripHeight;
  const y = frame.y + frame.height - band;
  const half = frame.width / 2;
  return {
    plan: { x: frame.x, y: frame.y, width: frame.width, height: planHeight },
    strip: { x: frame.x, y: frame.y + planHeight, width: frame.width, height: stripHeight },
    columns: [
      { x: frame.x, y, width: half, height: band },
      { x: frame.x + half, y, width: half, height: band - titleHeight },
    ],
    title: { x: frame.x + half, y: y + band - titleHeight, width: half, height: titleHeight },
  };
}

/** Where everything goes on a paper: a column beside the plan, or on upright paper a band below it. */
export function sheetLayout(paper: PaperName, portrait: boolean): SheetLayout {
  const [long, short] = sizes[paper];
  const page = portrait ? { width: short, height: long } : { width: long, height: short };
  const frame = { x: border, y: border, width: page.width - 2 * border, height: page.height - 2 * border };
  const first = portrait ? upright(frame, paper) : landscape(frame, paper);
  return { portrait, page, frame, ...first, ...furtherPage(frame, paper, portrait) };
}
