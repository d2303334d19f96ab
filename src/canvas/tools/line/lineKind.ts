/** What the drawing of a lot, a drive and a swale differ in. */
import type { Edit, Point } from "../../../document";
import type { DrawingMark } from "../../../drawing/marks";
import type { SnapTie } from "../../snap/targets";
import type { Choices, ToolContext } from "../tool";

export interface LinePoint {
  readonly at: Point;
  readonly tie: SnapTie | null;
}

export interface LineKind {
  /** Closes onto its first point. */
  readonly closed: boolean;
  /** Points it needs. */
  readonly least: number;
  /** The line ends by itself at this many points. */
  readonly most?: number;
  /** Kinds to choose from, shown while the line is drawn. */
  readonly choices?: Choices;
  /** `at` is where the next click would put the first point; null while the pointer is nowhere. */
  hintFirst(context: ToolContext, at: LinePoint | null): string;
  hintNext(context: ToolContext, points: readonly LinePoint[]): string;
  /** What is written along a piece: its length, its fall. */
  pieceText(context: ToolContext, from: Point, to: Point): string;
  /** More to show, beside the line itself. */
  extraMarks?(context: ToolContext, points: readonly Point[]): DrawingMark[];
  /** A point that ends the line by itself. */
  endsAt?(point: LinePoint): boolean;
  /** Puts the line into the project and selects it. */
  commit(context: ToolContext, points: readonly LinePoint[]): Edit;
}
