/** The book's rows in another order, for the eye: the document keeps the order in which they were read. Pure. */
import type { Project, Shot } from "../../document";
import type { LevelledPoint } from "../../solve/results";
import type { Notation } from "../notation";
import { ordered, type SortKey, sortKeyOf } from "../table/order";
import { type ColumnId, cellText } from "./columns";

export interface BookOrder {
  readonly column: number;
  readonly down: boolean;
  /** Shots as they stood in order when the head was pressed: a cell typed since then doesn't make its row jump away. */
  readonly ids: readonly string[];
}

export function shotsBy(
  id: ColumnId,
  down: boolean,
  project: Project,
  points: ReadonlyMap<string, LevelledPoint>,
  notation: Notation,
): readonly string[] {
  const keyOf = (shot: Shot): SortKey => {
    if (id === "reading") return shot.reading?.m ?? null;
    if (id === "height") return points.get(shot.id)?.height ?? null;
    return sortKeyOf(cellText(id, shot, project, notation));
  };
  return ordered(project.survey.shots, keyOf, down).map((shot) => shot.id);
}

/** Each seen row's row in the document: in the order, with shots that came later at the end. */
export function rowsIn(order: BookOrder | null, shots: readonly Shot[]): readonly number[] {
  if (order === null) return shots.map((_, row) => row);
  const place = new Map(order.ids.map((id, at) => [id, at]));
  return ordered(
    shots.map((_, row) => row),
    (row) => place.get(shots[row]?.id ?? "") ?? order.ids.length,
    false,
  );
}

/** Seen rows that hold the words in one of their cells. */
export function rowsWith(
  find: string,
  shots: readonly Shot[],
  project: Project,
  notation: Notation,
): readonly number[] {
  const wanted = find.trim().toLowerCase();
  if (wanted === "") return [];
  const holds = (shot: Shot) =>
    searched.some((id) => cellText(id, shot, project, notation).toLowerCase().includes(wanted));
  return shots.flatMap((shot, row) => (holds(shot) ? [row] : []));
}

const searched: readonly ColumnId[] = ["setup", "name", "reading", "kind", "of", "place", "note"];
