/** Names beside the rod's scale: shortened to the room that there is, and gathered where they are too many. */
import { ellipsize, textWidth } from "../../drawing";
import type { RodTick } from "./rodMarks";

/** Most lines of a limit's name: the panel says it in full. */
const mostLines = 3;

/** A limit's name as lines of a word each, none wider than `room` px, at 11 px. */
export function rodLines(name: string, room: number): readonly string[] {
  const words = name.split(" ");
  const shown = words.slice(0, mostLines);
  if (words.length > mostLines) shown[mostLines - 1] += "…";
  return shown.map((word) => fitted(word, room, 11));
}

/** A tick's name, no wider than `room` px, at 12 px. */
export function tickLabel({ label, guessed, kind }: RodTick, room: number): string {
  return fitted(guessed ? `${label}?` : label, room, kind === "corner" ? 13 : 12);
}

function fitted(text: string, room: number, size: number): string {
  return textWidth(text, size, 600) <= room ? text : ellipsize(text, room, size, 600);
}

/**
 * At most `most` ticks: corners that lie nearest to each other in height share a name ("A B") at their middle, the nearest
 * pair first. Other heights keep names of their own, however many.
 */
export function gathered(ticks: readonly RodTick[], most: number): readonly RodTick[] {
  const others = ticks.filter(({ kind }) => kind !== "corner");
  const groups = ticks
    .filter(({ kind }) => kind === "corner")
    .sort((a, b) => a.z - b.z)
    .map((tick) => [tick]);
  while (groups.length > 1 && groups.length + others.length > most) {
    const gaps = groups.slice(1).map((group, i) => middle(group) - middle(groups[i] as RodTick[]));
    const at = gaps.indexOf(Math.min(...gaps));
    groups.splice(at, 2, [...(groups[at] as RodTick[]), ...(groups[at + 1] as RodTick[])]);
  }
  return [...groups.map(asOne), ...others];
}

const middle = (group: readonly RodTick[]) => group.reduce((sum, { z }) => sum + z, 0) / group.length;

function asOne(group: readonly RodTick[]): RodTick {
  const [first] = group as readonly [RodTick];
  if (group.length === 1) return first;
  const names = group.map(({ label, guessed }) => (guessed ? `${label}?` : label)).sort();
  return {
    ...first,
    id: `corners ${names.join(" ")}`,
    label: names.join(" "),
    z: middle(group),
    guessed: false,
  };
}
