/**
 * How far walls show above the finished ground, as limits of the floor.
 *
 * Units   metres.
 * Method  Each floor tried is read from the same elevations as the foundation's table of walls. A wall that no floor helps
 *         (the apron leaves its own showing, whatever the floor) is named and left out, so that it can't hide the others.
 * Source  Stands beside each rule. A code's figure is a model: the local edition and its official decide.
 */
import { practice, type Rule } from "../advice";
import type { Reading } from "./floor-search";
import type { WallElevation, WallPlace } from "./results";
import { found, type Head, least, type SearchInput, silent } from "./search-rule";

/** Earth isn't graded closer than this: an apron 15 cm down counts as 6 in. */
const buildable = 0.003;

export function wallLimits(input: SearchInput): Rule[] {
  const { leastShowing, sidingClearance, sidingLap } = input.project.rules;
  return [
    shown(input, sidingless(leastShowing), 0),
    shown(input, sided(sidingClearance), sidingLap),
    aboveDrives(input),
  ];
}

const sidingless = (value: number): Head => ({
  id: "leastShowing",
  kind: "notBelow",
  name: "wall showing above the finished ground",
  value,
  source: "International Residential Code R404.1.6 (2012): 6 in, 4 in with masonry veneer",
});

const sided = (value: number): Head => ({
  id: "sidingClearance",
  kind: "notBelow",
  name: "siding above the finished ground",
  value,
  source: "International Residential Code R317.1 (2012): wood siding at least 6 in above the ground",
});

/** Top of wall, less a lap, ≥ finished ground + value; at doors and beside them on their drive there is neither. */
function shown(input: SearchInput, head: Head, lap: number): Rule {
  const { range, words } = input;
  const wallsAt = (floor: number) => input.partsAt(floor).foundation.walls;
  const margin = ({ wall, leastShowing }: WallElevation) =>
    leastShowing - lap - head.value + allowance(input, wall, head.value + lap);
  const looked = [range.low, (range.low + range.high) / 2, range.high].map(wallsAt);
  const { mended, never } = splitBy(wallsAt(range.low), (wall) =>
    looked.some((walls) => walls.some((one) => one.wall === wall && margin(one) >= -1e-9)),
  );
  const shows = ({ leastShowing }: WallElevation) => words.length(Math.max(0, leastShowing - lap));
  const told = never.map((wall) => `${wall.leastShowingAt?.place ?? wall.name} (${shows(wall)})`);
  const mend = "whatever the floor: lower the ground there, not the floor";
  if (mended.size === 0) return { ...silent(head, `${told.join(", ")} ${mend}`), atAnyFloor: "broken" };
  const reading = (floor: number): Reading =>
    least(
      wallsAt(floor).flatMap((wall) =>
        mended.has(wall.wall) && wall.leastShowingAt
          ? [{ margin: margin(wall), ...placeOf(wall.leastShowingAt) }]
          : [],
      ),
    ) ?? { margin: 0, place: "no wall" };
  const rule = found(head, reading, input);
  return told.length === 0
    ? rule
    : { ...rule, place: `${rule.place}; too little at ${told.join(", ")} ${mend}` };
}

/** What an apron may lack of the value because nobody grades closer. */
function allowance({ site: { plan, building } }: SearchInput, wall: number, value: number): number {
  if (plan.pad.leave[wall] === 1) return 0;
  const { edgeAboveFloor } = plan.pad.sides?.[wall] ?? plan.pad;
  const lacking = value - (building.topOfWallAboveFloor - edgeAboveFloor);
  return lacking > 0 && lacking <= buildable ? lacking : 0;
}

function splitBy(walls: readonly WallElevation[], everKept: (wall: number) => boolean) {
  return {
    mended: new Set(walls.flatMap(({ wall }) => (everKept(wall) ? [wall] : []))),
    never: walls.filter(({ wall }) => !everKept(wall)),
  };
}

const placeOf = ({ place, at }: WallPlace) => ({ place, at });

/** Top of wall ≥ the earth of a drive beside its door: above that stands wood. */
function aboveDrives(input: SearchInput): Rule {
  const head: Head = {
    id: "besideDrive",
    kind: "notBelow",
    name: "top of wall above the drive beside its door",
    value: 0,
    source: `${practice}; siding 2 in above paving: International Residential Code R317.1 (2012)`,
  };
  const readings = (floor: number) =>
    input
      .partsAt(floor)
      .foundation.walls.flatMap(({ besideDrive }) =>
        besideDrive ? [{ margin: besideDrive.showing + buildable, ...placeOf(besideDrive.at) }] : [],
      );
  if (readings(input.range.low).length === 0) return silent(head, "no drive comes to a door");
  const rule = found(head, (floor) => least(readings(floor)) ?? { margin: 0, place: "no drive" }, input);
  if (rule.atAnyFloor !== "broken") return rule;
  const worst = least(readings((input.range.low + input.range.high) / 2));
  const buried = input.words.length(buildable - (worst?.margin ?? 0));
  const place = `${worst?.place ?? "the drive's door"}: the drive's earth stands ${buried} over the top of wall at any floor; lower that door's sill, raise the wall, or end the drive at a step`;
  return { ...rule, place };
}
