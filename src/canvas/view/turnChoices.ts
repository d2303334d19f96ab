/** Turns of the plan worth having by name: as it was drawn, north up, a wall level. */
import type { Project } from "../../document";
import { cornerName } from "../select/places";

export interface TurnChoice {
  readonly words: string;
  /** Radians counter-clockwise. */
  readonly turn: number;
}

/** The turn by which a direction lies level, the shorter way. */
function levelling(angle: number): number {
  const turn = -angle;
  return turn - Math.round(turn / Math.PI) * Math.PI;
}

/** The turn at which true north is up. */
export function northUp(project: Project): number {
  return project.lot.north;
}

/** The turn at which the longest wall lies level; null without a building. */
export function buildingLevel(project: Project): number | null {
  const longest = [...wallTurns(project)].sort((a, b) => b.length - a.length)[0];
  return longest ? longest.turn : null;
}

function wallTurns(project: Project): (TurnChoice & { readonly length: number })[] {
  const outline = project.building?.outline ?? [];
  return outline.map((a, i) => {
    const j = (i + 1) % outline.length;
    const b = outline[j] ?? a;
    return {
      words: `wall ${cornerName(i)}–${cornerName(j)} level`,
      turn: levelling(Math.atan2(b[1] - a[1], b[0] - a[0])),
      length: Math.hypot(b[0] - a[0], b[1] - a[1]),
    };
  });
}

/** All choices; of walls that are parallel the first. Names of one and the same turn stand together. */
export function turnChoices(project: Project): readonly TurnChoice[] {
  const same = (a: number, b: number) => Math.abs(Math.sin((a - b) / 2)) < 1e-6;
  const walls = wallTurns(project);
  const levels = walls.filter(({ turn }, i) => walls.findIndex((other) => same(other.turn, turn)) === i);
  const all = [
    { words: "as it was drawn", turn: 0 },
    { words: "north up", turn: northUp(project) },
    ...levels,
  ];
  const first = all.filter(({ turn }, i) => all.findIndex((other) => same(other.turn, turn)) === i);
  return first.map(({ turn }) => ({
    turn,
    words: all
      .filter((other) => same(other.turn, turn))
      .map(({ words }) => words)
      .join(", "),
  }));
}
