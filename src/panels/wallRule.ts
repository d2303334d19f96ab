/** What fall away from the walls is asked, and why one wall may have less, in the plan's own notation. */
import type { WallWater } from "../solve/results";
import type { Notation } from "./notation";

/** Full width over which the rule asks its fall: 10 ft, m; a hair less is the same. */
const fullWidth = 3.048 - 0.005;

type Asked = Pick<WallWater, "needed" | "within" | "paved" | "source">;

/** The rule and its source, from the walls that it was asked of. */
export function wallRule(walls: readonly Asked[], notation: Notation): string {
  const earth = walls.find(({ paved, within }) => !paved && within >= fullWidth);
  const paved = walls.find((wall) => wall.paved);
  const asked = [
    ...(earth ? [`${over(earth, notation)} over earth or grass`] : []),
    ...(paved ? [`${notation.slope(paved.needed / paved.within)} over a drive or other hard surface`] : []),
  ];
  const source = `Source: ${walls[0]?.source ?? ""}. Your local code decides.`;
  return asked.length === 0 ? source : `Wanted: ${asked.join(", ")}. ${source}`;
}

/** Why this wall needs less than the full fall, or null where it needs all of it. */
export function whyLess(wall: Asked, notation: Notation): string | null {
  if (wall.within <= 0) return "Another wall stands right before it: nothing to ask.";
  const short = wall.within < fullWidth;
  const another = `another wall stands ${notation.length(wall.within)} off, so the fall is asked up to there`;
  if (wall.paved) {
    const enough = `A drive or landing lies against it: on a hard surface ${notation.slope(wall.needed / wall.within)} is enough`;
    return short ? `${enough}; ${another}.` : `${enough}.`;
  }
  return short ? `${another.charAt(0).toUpperCase()}${another.slice(1)}.` : null;
}

function over({ needed, within }: Asked, notation: Notation): string {
  return `${notation.length(needed)} within ${notation.length(within)} of the wall`;
}
