/** A hand on a plan without a screen: moves, presses and types like a person, and keeps the project it makes. */

import { Machine } from "../../../src/canvas/tools/machine";
import { toolStarts } from "../../../src/canvas/tools/starts";
import type {
  Choices,
  LengthQuestion,
  PlanPointer,
  Reading,
  ToolContext,
  WordsQuestion,
} from "../../../src/canvas/tools/tool";
import { toScreen, type View } from "../../../src/canvas/view/view";
import { type Edit, type EditCommand, newProject, type Point, type Project } from "../../../src/document";
import { createSolver } from "../../../src/solve/pipeline";
import { type Snapping, usualSnapping } from "../../../src/store/snapping";
import type { Selected, ToolName } from "../../../src/store/state";

export interface Hand {
  project: Project;
  /** What is shown while something is under the hand; null when nothing is. */
  shown: Project | null;
  selection: readonly Selected[];
  snapping: Snapping;
  /** Between the lines of the grid, m; null: none. */
  grid: number | null;
  tool: ToolName;
  readonly labels: string[];
  readonly said: string[];
  readonly panned: [number, number];
  /** Places that were brought into sight. */
  readonly shownPlaces: Point[];
  question: LengthQuestion | null;
  words: WordsQuestion | null;
  hint(): string;
  /** What stands typed in the fields, and whether it was refused: what is typed next takes its place. */
  typed(): { readonly texts: readonly string[]; readonly refused: boolean };
  state(): string;
  /** Where the tool shows signs. */
  signs(): readonly (readonly [number, number])[];
  snapWord(): string | null;
  texts(): string[];
  reading(): Reading | null;
  choices(): Choices | null;
  choose(value: string): void;
  /** Makes what the reading offers. */
  makeUse(): void;
  use(tool: ToolName): void;
  move(x: number, y: number, how?: Partial<PlanPointer>): void;
  press(x: number, y: number, how?: Partial<PlanPointer>): void;
  release(x: number, y: number, how?: Partial<PlanPointer>): void;
  click(x: number, y: number, how?: Partial<PlanPointer>): void;
  doubleClick(x: number, y: number): void;
  /** Presses at the first place and lets go at the last. */
  drag(places: readonly Point[], how?: Partial<PlanPointer>): void;
  key(key: string, shift?: boolean): void;
  type(text: string): void;
  /** Types over a figure of what is being drawn. */
  typeOver(key: string, m: number): Edit;
  lose(): void;
}

/** Ten pixels a metre, the origin in the middle: one pixel is 0.1 m. */
export const view: View = { centre: [0, 0], scale: 10, angle: 0, width: 1200, height: 900 };

export function handOn(start: Project = newProject(), tool: ToolName = "select"): Hand {
  const solver = createSolver();
  const take = (edit: Edit): Edit => {
    if (edit.ok) {
      hand.project = edit.project;
      hand.labels.push(edit.label);
    } else hand.said.push(edit.why);
    return edit;
  };
  const context: ToolContext = {
    project: () => hand.project,
    results: () => solver.solve(hand.shown ?? hand.project),
    bandOf: (project) => createSolver().solve(project, { detail: "band" }).band,
    view: () => view,
    selection: () => hand.selection,
    select: (selection) => {
      hand.selection = selection;
    },
    nudgeStep: () => null,
    snapping: () => ({ ...hand.snapping, grid: hand.grid }),
    run: (command, args) => take(command.run(hand.project, args)),
    nudge: (command, args) => take(command.run(hand.project, args)),
    runTogether(label, edits) {
      let project = hand.project;
      for (const step of edits) {
        const edit = step(project);
        if (!edit.ok) return take(edit);
        project = edit.project;
      }
      return take({ ok: true, project, label });
    },
    preview(command, args) {
      const edit = command.run(hand.project, args);
      if (edit.ok) hand.shown = edit.project;
      return edit;
    },
    drop<Args>(command: EditCommand<Args>, args: Args) {
      hand.shown = null;
      return take(command.run(hand.project, args));
    },
    cancelPreview: () => {
      hand.shown = null;
    },
    setTool: (next) => hand.use(next),
    pan: (dx, dy) => {
      hand.panned[0] += dx;
      hand.panned[1] += dy;
    },
    show: (at) => {
      hand.shownPlaces.push(at);
    },
    ask: (question) => {
      hand.question = question;
    },
    askWords: (words) => {
      hand.words = words;
    },
    say: (text) => hand.said.push(text),
  };
  const begin = (name: ToolName) => new Machine(toolStarts[name], context, () => undefined);
  let machine: Machine;
  const pointer = (x: number, y: number, how: Partial<PlanPointer> = {}): PlanPointer => ({
    at: [x, y],
    screen: toScreen(view, [x, y]),
    free: false,
    adds: false,
    copies: false,
    touch: false,
    ...how,
  });
  const hand: Hand = {
    project: start,
    shown: null,
    selection: [],
    snapping: usualSnapping,
    grid: null,
    tool,
    labels: [],
    said: [],
    panned: [0, 0],
    shownPlaces: [],
    question: null,
    words: null,
    hint: () => machine.state().hint,
    typed: () => ({ texts: machine.entry().texts, refused: machine.entry().refused === true }),
    state: () => machine.state().name,
    snapWord: () => machine.state().snap?.word ?? null,
    signs: () =>
      (machine.state().marks ?? []).flatMap((mark) =>
        mark.kind === "symbol" ? [[mark.at[0], mark.at[1]]] : [],
      ),
    texts: () => (machine.state().marks ?? []).flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])),
    reading: () => machine.state().reading ?? null,
    choices: () => machine.state().choices ?? null,
    choose: (value) => machine.choose(value),
    makeUse: () => machine.use(),
    use(name) {
      if (name === hand.tool) return;
      hand.tool = name;
      if (!["select", "turn", "mirror", "place"].includes(name)) hand.selection = [];
      machine = begin(name);
    },
    move: (x, y, how) => machine.move(pointer(x, y, how)),
    press: (x, y, how) => machine.press(pointer(x, y, how)),
    release: (x, y, how) => machine.release(pointer(x, y, how)),
    click(x, y, how) {
      hand.move(x, y, how);
      hand.press(x, y, how);
      hand.release(x, y, how);
    },
    doubleClick(x, y) {
      hand.click(x, y);
      hand.click(x, y);
      machine.doublePress(pointer(x, y));
    },
    drag(places, how) {
      const [first, last] = [places[0] as Point, places.at(-1) as Point];
      hand.move(first[0], first[1], how);
      hand.press(first[0], first[1], how);
      for (const [x, y] of places.slice(1)) hand.move(x, y, how);
      hand.release(last[0], last[1], how);
    },
    key: (key, shift = false) => void machine.key(key, shift),
    type: (text) => {
      for (const key of text) machine.key(key, false);
    },
    typeOver: (key, m) => machine.setDimension(key, m),
    lose: () => machine.lost(),
  };
  machine = begin(tool);
  return hand;
}

/** Metres, so that lengths in tests read as they are. */
export function metricProject(): Project {
  const project = newProject();
  return { ...project, display: { ...project.display, length: "m", reading: "m", rounding: 3 } };
}
