/**
 * Does a swale run? Its bed at stations, its least fall, and whether it comes out at the surface.
 *
 * Units   metres; falls rise over run, positive runs towards the outlet.
 * Source  First principles; the least fall is the user's rule.
 */
import { type Point, pointAlong } from "../geometry";
import { bedFall, bedHeight, type SwaleLine, stations } from "../grading";
import type { SwaleResult, SwaleStation } from "../solve/results";

/** How deep the bed may lie under the ground at its outlet and still count as coming out, m. */
const outletTolerance = 0.02;

/** Flatter than 1 in 10,000 is level: no one digs closer (our own choice). */
export const levelBed = 1e-4;

/** Prints a length and a slope in the project's notation. */
export interface Words {
  readonly length: (metres: number) => string;
  readonly slope: (slope: number) => string;
}

export function swaleResult(
  line: SwaleLine,
  groundHeight: (at: Point) => number,
  leastFall: number,
  words: Words,
): SwaleResult {
  const distances = stations(line.length, [...line.distances, ...line.swale.beds.map(({ at }) => at)]);
  const list = distances.map((distance, i): SwaleStation => {
    const at = pointAlong(line.line, distance).at;
    return {
      distance,
      at: [...at],
      existing: groundHeight(at),
      bed: bedHeight(line, distance),
      fall: i + 1 < distances.length ? bedFall(line, (distance + (distances[i + 1] as number)) / 2) : null,
    };
  });
  return {
    id: line.swale.id,
    name: line.swale.name,
    length: line.length,
    leastFall: line.fall,
    ...judge(line, list, leastFall, words),
    stations: list,
  };
}

/** Whether it drains and why, in words. */
function judge(
  line: SwaleLine,
  list: readonly SwaleStation[],
  leastFall: number,
  words: Words,
): { drains: boolean; why: string } {
  const outlet = list[list.length - 1] as SwaleStation;
  const buried = outlet.existing - outlet.bed;
  if (line.fall < levelBed) {
    const runs =
      line.fall > -levelBed ? "is level" : `rises towards its outlet by ${words.slope(-line.fall)}`;
    return {
      drains: false,
      why: `The bed ${runs}: water stands in it or runs back. Take the outlet to lower ground or start it shallower.`,
    };
  }
  if (buried > outletTolerance)
    return {
      drains: false,
      why: `The bed lies ${words.length(buried)} under the ground at its outlet: it can't come out there. Carry it on to lower ground, or give it less fall.`,
    };
  if (line.fall < leastFall - 1e-9)
    return {
      drains: false,
      why: `The bed falls ${words.slope(line.fall)}, less than the ${words.slope(leastFall)} wanted: it will lie wet and silt up.`,
    };
  const low = list.find(({ existing, bed }) => existing < bed - outletTolerance);
  if (!low)
    return {
      drains: true,
      why: `The bed falls ${words.slope(line.fall)} all along and comes out at its outlet.`,
    };
  const covered = list.some(
    ({ distance, existing, bed }) => distance > low.distance && existing > bed + outletTolerance,
  );
  if (covered)
    return {
      drains: false,
      why: `${words.length(low.distance)} from its high end the ground already lies under the bed: water leaves the swale there. Move the line uphill or start it deeper.`,
    };
  return {
    drains: true,
    why: `The bed falls ${words.slope(line.fall)} and comes out ${words.length(low.distance)} from its high end.`,
  };
}
