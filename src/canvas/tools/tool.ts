/**
 * What a tool is made of: states that answer to the hand. A state is a value; each answer is the state that
 * follows (itself when nothing changed). Nothing here knows the screen, so tools run in tests without one.
 */
import type { Edit, EditCommand, Point, Project } from "../../document";
import type { DrawingMark } from "../../drawing/marks";
import type { Results } from "../../solve/results";
import type { Snapping } from "../../store/snapping";
import type { Selected, ToolName } from "../../store/state";
import type { Handle } from "../select/handles";
import type { Lock } from "../snap/lock";
import type { Snap } from "../snap/snap";
import type { Field, TypedValues } from "../typed/typedEntry";
import type { View, XY } from "../view/view";

/** The pointer on the plan. */
export interface PlanPointer {
  readonly at: Point;
  readonly screen: XY;
  /** Shift: no snapping, right angles and steps let go. */
  readonly free: boolean;
  /** Ctrl or Cmd: adds to the selection. */
  readonly adds: boolean;
  /** Alt: what is dragged stays, a copy of it goes. */
  readonly copies: boolean;
  /** A finger needs larger targets than a mouse. */
  readonly touch: boolean;
  /** A direction that is held by a key. */
  readonly lock?: Lock;
}

/** What a tool can see and do. */
export interface ToolContext {
  /** The project without what is under the hand. */
  project(): Project;
  results(): Results;
  /** The floor heights that the rules would leave a plan that isn't in the window. */
  bandOf(project: Project): Results["band"];
  view(): View;
  selection(): readonly Selected[];
  select(selection: readonly Selected[]): void;
  /** How far an arrow key moves things, m, as the person set it; null: not set. */
  nudgeStep(): number | null;
  /** What can be snapped to, and whether walls that are pulled keep right angles. */
  snapping(): Snapping & {
    /** Between the lines of the grid, m; null: not snapped to. */
    readonly grid: number | null;
  };
  run<Args>(command: EditCommand<Args>, args: Args): Edit;
  /** As `run`, for a key that may be held: light while keys come, and one undo step by the edit's merge key. */
  nudge<Args>(command: EditCommand<Args>, args: Args): Edit;
  runTogether(label: string, edits: readonly ((project: Project) => Edit)[]): Edit;
  preview<Args>(command: EditCommand<Args>, args: Args): Edit;
  drop<Args>(command: EditCommand<Args>, args: Args): Edit;
  cancelPreview(): void;
  setTool(tool: ToolName): void;
  /** Moves the view by screen pixels. */
  pan(dx: number, dy: number): void;
  /** Brings a place into sight with all that is being drawn; the view stays where it is in sight already. */
  show(at: Point): void;
  /** Asks for a length beside a place of the plan; the answer is the act. */
  ask(question: LengthQuestion): void;
  /** Asks for words at a place of the plan. */
  askWords(question: WordsQuestion): void;
  /** A refusal or a remark, in words. */
  say(text: string): void;
}

export interface LengthQuestion {
  readonly at: Point;
  /** What is asked for: "wall B–C". */
  readonly label: string;
  readonly m: number;
  /** The field lies over this place of the screen instead, px. */
  readonly over?: XY;
  answer(m: number): Edit;
}

export interface WordsQuestion {
  readonly at: Point;
  /** What is asked for: "words of the note". */
  readonly label: string;
  readonly text: string;
  /** A name: one line of it. */
  readonly oneLine?: boolean;
  answer(text: string): Edit;
}

/** Things to choose one of. */
export interface Ways {
  readonly label: string;
  readonly chosen: string;
  readonly items: readonly { readonly value: string; readonly words: string }[];
}

/** Kinds to choose from while a tool is at work. */
export interface Choices extends Ways {
  /** The ways to draw the chosen kind, where there are several. */
  readonly ways?: Ways;
  /** What can be typed, and what to mind about the chosen kind. */
  readonly typed: string;
  readonly caution: string | null;
}

/** A length of what is being drawn: its figure can be clicked and typed over. */
export interface DrawnDimension {
  readonly key: string;
  /** What is measured: "width". */
  readonly label: string;
  readonly m: number;
  readonly ends: readonly [Point, Point];
  /** The field that takes what is typed; else `set` does. */
  readonly field?: string;
  set?(m: number): ToolState;
}

/** What was measured: stays in sight until it is let go. */
export interface Reading {
  readonly title: string;
  /** More places are still being clicked. */
  readonly live: boolean;
  readonly rows: readonly { readonly name: string; readonly value: string }[];
  /** Places that it is about: it stands where they can be seen. */
  readonly about?: readonly Point[];
  /** What can be made of it, in words; null for nothing. */
  readonly act: string | null;
}

export type Cursor =
  | "default"
  | "crosshair"
  | "move"
  | "grab"
  | "grabbing"
  | "pointer"
  | "ew-resize"
  | "ns-resize"
  | "nesw-resize"
  | "nwse-resize"
  | "not-allowed";

export interface ToolState {
  readonly name: string;
  /** What the next click does, in one line. */
  readonly hint: string;
  readonly cursor: Cursor;
  /** Values that can be typed now; the first takes the first digit. */
  readonly fields?: readonly Field[];
  /** Drawn over the plan. */
  readonly marks?: readonly DrawingMark[];
  /** Word of the snap and where it is. */
  readonly snap?: Snap | null;
  /** The handle and the thing under the pointer, to show that they would answer. */
  readonly hot?: Handle | null;
  readonly hovered?: Selected | null;
  /** Handles of the selection are shown and can be pulled. */
  readonly handles?: boolean;
  /** What is drawn goes on from here: its direction can be locked. */
  readonly locksFrom?: Point | undefined;
  readonly dimensions?: readonly DrawnDimension[];
  readonly choices?: Choices;
  readonly reading?: Reading;
  move?(pointer: PlanPointer): ToolState;
  press?(pointer: PlanPointer): ToolState;
  release?(pointer: PlanPointer): ToolState;
  doublePress?(pointer: PlanPointer): ToolState;
  /** One of the choices was picked. */
  choose?(value: string): ToolState;
  /** The reading's act was asked for. */
  use?(): ToolState;
  /** What was typed changed; missing fields follow the pointer again. */
  typed?(values: TypedValues): ToolState;
  /** Enter. */
  finish?(): ToolState;
  /** Backspace: takes the last point back. */
  back?(): ToolState;
  /** Delete. */
  remove?(): ToolState;
  /** An arrow key: direction on the screen, and whether the step is the large one. */
  nudge?(direction: XY, large: boolean): ToolState;
  /** Esc: one step back, or "leave" for the select tool. */
  cancel(): ToolState | "leave";
  /** The pointer was lost (window left, second finger, dialog): nothing half-done may stay. */
  lost(): ToolState;
}

/** Starts a tool. */
export type ToolStart = (context: ToolContext) => ToolState;
