/** How a place was measured in, as typed, and the place that makes of it. */
import {
  type Anchor,
  type Measure,
  type Place,
  type Project,
  placeResolver,
  type Shot,
} from "../../document";
import { cornerName } from "../../grading";
import { formatAngle, parseAngle, parseLength } from "../../units";
import { readPlace } from "../levelbook/typing";
import type { Notation } from "../notation";

export type PlaceKind = "at" | "corner" | "wall" | "tapes" | "baseline" | "polar" | "none";

export interface PlaceDraft {
  readonly kind: PlaceKind;
  readonly coordinates: string;
  readonly corner: string;
  readonly wall: string;
  readonly along: string;
  readonly out: string;
  /** Known points, by their values in `anchorOptions`. */
  readonly first: string;
  readonly second: string;
  readonly firstTape: string;
  readonly secondTape: string;
  readonly side: "left" | "right";
  /** Off a baseline to the right of it; a minus is to the left. */
  readonly right: string;
  readonly angle: string;
  readonly distance: string;
}

export const placeKinds: readonly { readonly value: PlaceKind; readonly words: string }[] = [
  { value: "at", words: "east and north" },
  { value: "corner", words: "a building corner" },
  { value: "wall", words: "off a wall line" },
  { value: "tapes", words: "two tapes" },
  { value: "baseline", words: "off a baseline" },
  { value: "polar", words: "angle and distance" },
  { value: "none", words: "not placed yet" },
];

export interface AnchorOption {
  readonly value: string;
  readonly words: string;
}

/** A list of more isn't read through. */
const mostPoints = 300;

/** Known points: the building's corners, marks and other shots that have a place. */
export function anchorOptions({ building, survey }: Project, but: string): readonly AnchorOption[] {
  const corners = (building?.outline ?? []).map((_, i) => ({
    value: `corner ${i}`,
    words: `corner ${cornerName(i)}`,
  }));
  const marks = survey.marks.flatMap(({ id, name, at }) =>
    at ? [{ value: `mark ${id}`, words: name }] : [],
  );
  const shots = survey.shots.flatMap(({ id, name, place }, row) =>
    id === but || place.kind === "none" ? [] : [{ value: `shot ${id}`, words: name || `row ${row + 1}` }],
  );
  return [...corners, ...marks, ...shots].slice(0, mostPoints);
}

export function anchorOf(value: string): Anchor | null {
  const [kind, id = ""] = value.split(" ");
  if (kind === "corner" && id !== "") return { kind, corner: Number(id) };
  if (kind === "mark") return { kind, mark: id };
  return kind === "shot" ? { kind, shot: id } : null;
}

function anchorValue(anchor: Anchor | null): string {
  if (anchor === null || anchor.kind === "at") return "";
  if (anchor.kind === "corner") return `corner ${anchor.corner}`;
  return anchor.kind === "mark" ? `mark ${anchor.mark}` : `shot ${anchor.shot}`;
}

/** The form as the shot's present place fills it. */
export function draftOf({ id, place }: Shot, project: Project, notation: Notation): PlaceDraft {
  const [first = "", second = ""] = anchorOptions(project, id).map(({ value }) => value);
  const empty: PlaceDraft = {
    kind: place.kind === "stake" || place.kind === "none" ? "at" : place.kind,
    coordinates: "",
    corner: "0",
    wall: "0",
    along: "",
    out: "",
    first,
    second,
    firstTape: "",
    secondTape: "",
    side: "left",
    right: "",
    angle: "",
    distance: "",
  };
  switch (place.kind) {
    case "at":
      return { ...empty, coordinates: `${notation.length(place.x)}, ${notation.length(place.y)}` };
    case "corner":
      return { ...empty, corner: String(place.corner) };
    case "wall":
      return { ...empty, wall: String(place.wall), along: place.along.text, out: place.out.text };
    case "tapes": {
      const [firstTape, secondTape] = place.lengths.map(({ text }) => text) as [string, string];
      const [a, b] = place.from.map(anchorValue) as [string, string];
      return { ...empty, first: a, second: b, firstTape, secondTape, side: place.side };
    }
    case "baseline":
      return {
        ...empty,
        first: anchorValue(place.from),
        second: anchorValue(place.to),
        along: place.along.text,
        right: place.right.text,
      };
    case "polar":
      return {
        ...empty,
        first: anchorValue(place.from),
        second: anchorValue(place.back),
        angle: place.angle.text || formatAngle(place.angle.radians),
        distance: place.distance.text,
      };
    default:
      return empty;
  }
}

export type PlaceMade =
  | { readonly ok: true; readonly place: Place }
  | { readonly ok: false; readonly why: string };

const refuse = (why: string): PlaceMade => ({ ok: false, why });

/** The place that the form says, or what is missing in it. */
export function placeFrom(draft: PlaceDraft, project: Project): PlaceMade {
  switch (draft.kind) {
    case "none":
      return { ok: true, place: { kind: "none" } };
    case "at": {
      const read = readPlace(draft.coordinates, project);
      if (!read.ok) return refuse(read.message);
      return read.place.kind === "none" ? refuse("Type east and north.") : read;
    }
    case "corner":
      return { ok: true, place: { kind: "corner", corner: Number(draft.corner) } };
    case "wall":
      return measured(
        project,
        [draft.along, draft.out],
        ["Along the wall", "Out from it"],
        ([along, out]) => ({
          kind: "wall",
          wall: Number(draft.wall),
          along,
          out,
        }),
      );
    default:
      return fromPoints(draft, project);
  }
}

/** Why a place that is typed to its end is nowhere: tapes that don't meet, a point that has none. Null while something is missing. */
export function whyNowhere(draft: PlaceDraft, project: Project, shot: string): string | null {
  const made = placeFrom(draft, project);
  return made.ok ? faultOf(made.place, project, shot) : null;
}

/** What keeps the shot from such a place. It can't be measured from itself. */
export function faultOf(place: Place, { survey, building }: Project, shot: string): string | null {
  const others = { ...survey, shots: survey.shots.filter(({ id }) => id !== shot) };
  const { fault } = placeResolver(others, building?.outline ?? [])(place);
  return fault && `${fault.what} ${fault.how}`;
}

function fromPoints(draft: PlaceDraft, project: Project): PlaceMade {
  const first = anchorOf(draft.first);
  const second = anchorOf(draft.second);
  if (!first) return refuse("Choose a known point to measure from.");
  if (draft.kind === "polar") {
    const angle = parseAngle(draft.angle);
    if (!angle.ok) return refuse(angle.message);
    return measured(project, [draft.distance, "0"], ["Distance", ""], ([distance]) => ({
      kind: "polar",
      from: first,
      back: second,
      angle: { text: draft.angle.trim(), radians: angle.radians },
      distance,
    }));
  }
  if (!second || draft.first === draft.second) return refuse("Choose two different points.");
  if (draft.kind === "tapes")
    return measured(
      project,
      [draft.firstTape, draft.secondTape],
      ["First tape", "Second tape"],
      (lengths) => ({ kind: "tapes", from: [first, second], lengths, side: draft.side }),
    );
  return measured(project, [draft.along, draft.right], ["Along the line", "Off it"], ([along, right]) => ({
    kind: "baseline",
    from: first,
    to: second,
    along,
    right,
  }));
}

function measured(
  { display }: Project,
  texts: readonly [string, string],
  names: readonly [string, string],
  make: (measures: [Measure, Measure]) => Place,
): PlaceMade {
  const [a, b] = texts.map((text) => parseLength(text, display.length));
  if (!a?.ok) return refuse(`${names[0]}: ${a?.message}`);
  if (!b?.ok) return refuse(`${names[1]}: ${b?.message}`);
  return {
    ok: true,
    place: make([
      { text: texts[0].trim(), m: a.m },
      { text: texts[1].trim(), m: b.m },
    ]),
  };
}
