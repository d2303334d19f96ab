/** Which mark, set-up or shot an id names, and where a shot stands; what names nothing becomes a problem. */
import { type PlaceResolver, placeResolver } from "../document/places";
import type { Mark, Point, Setup, Shot, Survey } from "../document/schema";
import type { Problem } from "../solve/results";
import type { LengthNotation } from "../units";
import { type MisclosureClass, misclosureClass } from "./misclosure";

export interface References {
  readonly marks: ReadonlyMap<string, Mark>;
  readonly setups: ReadonlyMap<string, Setup>;
  /** Without the shots set aside. */
  readonly shots: ReadonlyMap<string, Shot>;
  /** Ids of shots set aside. */
  readonly aside: ReadonlySet<string>;
  /** Row of a shot in the table, counted from 1, for shots without a name. */
  readonly rows: Pick<ReadonlyMap<Shot, number>, "get">;
  readonly place: PlaceResolver;
  /** How small distances are told; null: both ways. */
  readonly notation: LengthNotation | null;
  /** How exact runs must be. */
  readonly judged: MisclosureClass;
}

export function collectReferences(
  survey: Survey,
  corners: readonly Point[],
  problems: Problem[],
  notation: LengthNotation | null = null,
): References {
  const live = survey.shots.filter((shot) => !shot.aside);
  const aside = new Set(survey.shots.filter((shot) => shot.aside).map((shot) => shot.id));
  return {
    marks: firstOfEach(survey.marks, "mark", problems),
    setups: firstOfEach(survey.setups, "set-up", problems),
    shots: firstOfEach(live, "shot", problems),
    aside,
    rows: rowsOf(survey.shots),
    place: placeResolver(survey, corners),
    notation,
    judged: misclosureClass(survey.misclosureClass),
  };
}

/** Few shots are ever named by their row: the rows are counted when the first is asked for. */
function rowsOf(shots: readonly Shot[]): References["rows"] {
  let rows: Map<Shot, number> | null = null;
  return {
    get(shot) {
      rows ??= new Map(shots.map((each, i) => [each, i + 1]));
      return rows.get(shot);
    },
  };
}

function firstOfEach<T extends { readonly id: string; readonly name: string }>(
  items: readonly T[],
  noun: string,
  problems: Problem[],
): Map<string, T> {
  const byId = new Map<string, T>();
  for (const item of items) {
    if (!byId.has(item.id)) {
      byId.set(item.id, item);
      continue;
    }
    problems.push({
      code: "duplicate-id",
      severity: "error",
      where: `${noun} ${named(item)}`,
      what: `There are two of this kind with the id "${item.id}"; whatever names it means the first.`,
      how: "Delete one of the two and enter it again.",
      ids: [item.id],
    });
  }
  return byId;
}

/** `shot "NE stake"`, or its row while it has no name. */
export function shotInWords(shot: Shot, refs: References): string {
  return shot.name === "" ? `shot in row ${refs.rows.get(shot)}` : `shot "${shot.name}"`;
}

export function named(item: { readonly id: string; readonly name: string }): string {
  return `"${item.name === "" ? item.id : item.name}"`;
}

/**
 * Place of a shot on the plan, m: its own, else that of the mark it was taken on, or for a second look that of
 * the mark or shot looked at. Null while it has none.
 */
/** Where the rod stood: the shot's own place, else that of what it reads again. */
export function stoodAt(shot: Shot, refs: References): Point | null {
  return placeOf(shot, refs) ?? againAt(shot, refs);
}

function againAt({ of }: Shot, refs: References): Point | null {
  const again = of === null ? undefined : refs.shots.get(of);
  return again === undefined ? null : placeOf(again, refs);
}

/** What a second look looked at: the reading of its own set-up on that point where there is one, else the shot it names. */
export function lookedAt(check: Shot, refs: References): Shot | undefined {
  const first = refs.shots.get(check.of ?? "");
  if (first === undefined || first.setup === check.setup) return first;
  for (const shot of refs.shots.values())
    if (shot.setup === check.setup && shot.kind === "turning" && shot.of === first.id) return shot;
  return first;
}

export function placeOf(shot: Shot, refs: References): Point | null {
  const own = ownPlace(shot, refs);
  if (own !== null || shot.of === null) return own;
  if (shot.kind === "mark") return refs.marks.get(shot.of)?.at ?? null;
  if (shot.kind !== "check") return null;
  const first = refs.shots.get(shot.of);
  return refs.marks.get(shot.of)?.at ?? (first === undefined ? null : ownPlace(first, refs));
}

function ownPlace({ place }: Shot, refs: References): Point | null {
  return refs.place(place).at;
}

/** Problems of single shots: a set-up that isn't there, a place that can't be found. */
export function checkShot(shot: Shot, refs: References, problems: Problem[]): void {
  if (!refs.setups.has(shot.setup)) {
    problems.push({
      code: "shot-without-setup",
      severity: "error",
      where: shotInWords(shot, refs),
      what: `It belongs to a set-up "${shot.setup}" that isn't there, so it has no height.`,
      how: "Choose the set-up that it was read from, or set the shot aside.",
      ids: [shot.id],
    });
  }
  const { fault } = refs.place(shot.place);
  if (fault === null) return;
  problems.push({
    code: fault.code === "no-corner" ? "shot-without-corner" : "shot-without-place",
    severity: "error",
    where: shotInWords(shot, refs),
    what: fault.what,
    how: fault.how,
    ids: [shot.id],
  });
}
