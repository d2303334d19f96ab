/** What the window knows: the document's history, what is being dragged, the last results, and the view's own state. */
import type { History, Project, RuleSet, Thing } from "../document";
import type { Results } from "../solve/results";
import type { LayerState } from "./layers";

/** A thing that is, or can be, selected. */
export type Selected = Thing;

export const toolNames = [
  "select",
  "measure",
  "shot",
  "mark",
  "breakline",
  "pit",
  "lot",
  "feature",
  "building",
  "door",
  "window",
  "drive",
  "swale",
  "earth",
  "note",
  "dimension",
  "section",
] as const;
/** Tools that lay a picture under the plan: they are begun from the picture, not from the tool strip. */
export const pictureTools = ["picture-points", "picture-distance"] as const;
/** Tools that propose something: they are begun from the panel of its step. */
export const proposingTools = ["swale-route"] as const;
/** Tools that work on what is selected: they are begun from the menu of the selected things. */
export const arrangeTools = ["turn", "mirror", "place", "stakes"] as const;
export type ToolName =
  | (typeof toolNames)[number]
  | (typeof pictureTools)[number]
  | (typeof proposingTools)[number]
  | (typeof arrangeTools)[number];

/** Steps of the job, in its order. */
export const stepNames = [
  "lot",
  "shots",
  "building",
  "drive",
  "water",
  "floor",
  "foundation",
  "quantities",
  "setout",
  "sheets",
] as const;
export type StepName = (typeof stepNames)[number];

export { type PlanLayer, planLayers } from "./layers";

export type ThemeChoice = "light" | "dark" | "system";

/** How large the window's words are set; 1 is 100 %. */
export const textSizes = [1, 1.15, 1.3, 1.5] as const;
export type TextSize = (typeof textSizes)[number];

/** A person's own choices beside the theme: kept outside the plan, from one time to the next. */
export interface Preferences {
  readonly textSize: TextSize;
  /** "less": nothing glides; "system": as the system is set. */
  readonly motion: "system" | "less";
  /** What the window begins with. */
  readonly opens: "start" | "last";
  /** Sets of limits of one's own. */
  readonly ruleSets: readonly RuleSet[];
}

/** A message: an error stays until it is read, a caution until the next edit or for a while, good news a moment. */
export interface Message {
  readonly id: number;
  readonly tone: "error" | "caution" | "done";
  readonly text: string;
  /** How often it was said since it came. */
  readonly times: number;
  /** What to do about it, or more detail. */
  readonly more?: string;
}

export interface OpenFile {
  readonly name: string | null;
  /** By which the host saves to it again; null for a new plan or a demo. */
  readonly token: string | null;
  /** Where it came from, if it can't be saved back there: a demo, or a file handed over as a copy. */
  readonly origin?: "demo" | "copy";
}

export interface AppState extends LayerState {
  readonly screen: "start" | "plan";
  readonly history: History;
  /** The project as it was last saved or opened; another one means unsaved work. */
  readonly saved: Project;
  readonly file: OpenFile;
  /** A drag that is not yet an edit: the project as it would be. */
  readonly preview: Project | null;
  /** The floor under the hand, m; null when it isn't being dragged. */
  readonly floorDrag: number | null;
  /** Things are moved by keys: the edits are done, what lags behind is worked out once the keys rest. */
  readonly nudging: boolean;
  /** Results for the present project, or for the drag. */
  readonly results: Results;
  readonly selection: readonly Selected[];
  readonly tool: ToolName;
  readonly step: StepName;
  readonly theme: ThemeChoice;
  readonly preferences: Preferences;
  readonly messages: readonly Message[];
  /** The dialog that is open, by name. */
  readonly dialog:
    | "commands"
    | "objects"
    | "shortcuts"
    | "history"
    | "export"
    | "export-ground"
    | "import-ground"
    | "settings"
    | "preferences"
    | "tables"
    | "options"
    | "new"
    | "guide"
    | "glossary"
    | "signs"
    | "answers"
    | null;
  /** The word of the trade that the glossary should show first. */
  readonly term: string | null;
  /** The stop of the tour that is shown; null: no tour. */
  readonly tour: number | null;
  /** Copied things, and the plan as it was when they were copied. */
  readonly clip: { readonly from: Project; readonly things: readonly Selected[] } | null;
  /** How far an arrow key moves what is selected, m; null: a usual step of the plan's units. A personal choice. */
  readonly nudgeStep: number | null;
  /** The menu of what is under the pointer is open: px in the window, and the place on the plan. */
  readonly planMenu: {
    readonly x: number;
    readonly y: number;
    readonly at: readonly [number, number];
    /** It is about what is selected, or about the plan beside it. */
    readonly of: "selection" | "plan";
  } | null;
  /** A place the view should bring into sight; a new object each time. */
  readonly goTo: { readonly at: readonly [number, number] } | null;
  /** Pointer's place on the plan, m. */
  readonly pointer: readonly [number, number] | null;
}
