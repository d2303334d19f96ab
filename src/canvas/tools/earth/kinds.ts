/** The shapes of the ground to choose from, and how each is drawn. */
import { type Edit, gradingEdits, type Point } from "../../../document";
import { centroid } from "../../../geometry";
import type { Selected } from "../../../store/state";
import { downhill, groundHeight } from "../ground";
import type { LineKind, LinePoint } from "../line/lineKind";
import { lengthWords } from "../liveMarks";
import type { RectangleKind } from "../rectangle/kind";
import { asRectangle, firstHint, type RingWay, ringWayChoices } from "../rectangle/ways";
import type { Choices, ToolContext } from "../tool";

export type EarthKind = "parking" | "turning" | "terrace" | "berm" | "wall" | "point";

export const earthWords: Readonly<Record<EarthKind, string>> = {
  parking: "parking pad",
  turning: "turning pad",
  terrace: "terrace",
  berm: "berm",
  wall: "retaining wall",
  point: "grade point",
};

export function isEarthKind(value: string): value is EarthKind {
  return value in earthWords;
}

const cautions: Partial<Record<EarthKind, string>> = {
  wall: "Over 4 ft (1.22 m) from the bottom of its footing, or with any load above it, a wall usually needs a permit and an engineer.",
};

/** With the ways to draw it, where it is an area. */
export function earthChoices(kind: EarthKind, way: RingWay): Choices {
  return {
    label: "What is drawn",
    chosen: kind,
    items: (Object.keys(earthWords) as EarthKind[]).map((value) => ({ value, words: earthWords[value] })),
    typed: "its figures are typed in the drive step",
    caution: cautions[kind] ?? null,
    ...(isArea(kind) && { ways: ringWayChoices(way) }),
  };
}

const hints = {
  berm: "Click along the berm; Enter ends it",
  wall: "Click along the retaining wall; Enter ends it",
  point: "Click the place to hold at a height; it begins at the ground as it is",
} as const;

/** It has an outline of its own. */
export function isArea(kind: EarthKind): kind is Exclude<EarthKind, keyof typeof hints> {
  return !(kind in hints);
}

export function earthHint(context: ToolContext, kind: EarthKind, way: RingWay): string {
  return isArea(kind) ? firstHint(context, earthWords[kind], way, true) : hints[kind];
}

/** An area as a rectangle. */
export function earthRectangle(kind: Exclude<EarthKind, "point">): RectangleKind {
  return asRectangle(earthLine(kind), earthWords[kind], (way) => earthChoices(kind, way));
}

/** How a shape with corners is drawn; a grade point takes one click. */
export function earthLine(kind: Exclude<EarthKind, "point">): LineKind {
  const closed = isArea(kind);
  return {
    closed,
    least: closed ? 3 : 2,
    choices: earthChoices(kind, "outline"),
    hintFirst: (context) => earthHint(context, kind, "outline"),
    hintNext: (context) => earthHint(context, kind, "outline"),
    pieceText: (context, a, b) => lengthWords(Math.hypot(b[0] - a[0], b[1] - a[1]), context.project()),
    commit(context, points) {
      const edit = add(context, kind, points);
      chooseNew(context, kind, edit);
      return edit;
    },
  };
}

/** What was drawn is chosen, so that its figures stand beside the plan; a refusal is said. */
export function chooseNew(context: ToolContext, kind: EarthKind, edit: Edit): void {
  if (!edit.ok) {
    context.say(edit.why);
    return;
  }
  context.setTool("select");
  if (edit.made !== undefined) context.select([{ kind: thingOf[kind], id: edit.made }]);
}

const thingOf = {
  parking: "pad",
  turning: "pad",
  terrace: "pad",
  berm: "berm",
  wall: "retaining-wall",
  point: "grade-point",
} as const satisfies Readonly<Record<EarthKind, Selected["kind"]>>;

function add(context: ToolContext, kind: Exclude<EarthKind, "point">, points: readonly LinePoint[]): Edit {
  const places = points.map(({ at }): [number, number] => [at[0], at[1]]);
  if (kind === "berm") return context.run(gradingEdits.addBerm, { line: places });
  if (kind === "wall") return context.run(gradingEdits.addRetainingWall, { line: places });
  return context.run(gradingEdits.addPad, {
    outline: places,
    use: kind,
    towards: downhill(context.results(), centroid(places)),
  });
}

/** A grade point begins at the ground as it is. */
export function addPoint(context: ToolContext, at: Point): Edit {
  const height = groundHeight(context.results(), at);
  if (height === null)
    return { ok: false, why: "There is no ground there yet to begin from: shoot it first." };
  return context.run(gradingEdits.addGradePoint, { at: [at[0], at[1]], height });
}
