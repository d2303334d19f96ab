/**
 * Limits from levels and wishes that the user types: the road's gutter, a flood, the least wall out of the ground.
 *
 * Units   metres.
 * Method  Each is linear in the floor; T, the top of wall, is floor + topOfWallAboveFloor.
 */
import { type AdviceFacts, type Rule, spot } from "./facts";

/** IRC R403.1.7.3 (2012): what the top of the foundation rises for the way to the gutter, rise over run. */
const riseToRoad = 0.02;

/** T ≥ level of the road's gutter + value + 2 % of the way to it. */
export function aboveRoad({ rules, topOfWallAboveFloor }: AdviceFacts): Rule {
  const value = rules.aboveRoad + riseToRoad * rules.toRoad;
  return {
    id: "aboveRoad",
    kind: "notBelow",
    name: "top of wall above the road's gutter",
    height: rules.roadLevel === null ? null : rules.roadLevel + value - topOfWallAboveFloor,
    place:
      rules.roadLevel === null ? "no level of the road has been typed" : "the level you typed for the road",
    value,
    source:
      "International Residential Code R403.1.7.3 (2012): 12 in, plus 2 % of the way to the gutter, where the lot drains to it",
  };
}

/** Floor ≥ level of the flood + value. */
export function aboveFlood({ rules }: AdviceFacts): Rule {
  return {
    id: "aboveFlood",
    kind: "notBelow",
    name: "floor above the flood",
    height: rules.floodLevel === null ? null : rules.floodLevel + rules.aboveFlood,
    place: rules.floodLevel === null ? "no flood level has been typed" : "the flood level you typed",
    value: rules.aboveFlood,
    source: "the freeboard you typed; the local flood map and its official say which level counts",
  };
}

/** T − highest ground along the walls, as it is ≥ value. */
export function leastOut({ highestAtWalls, rules, topOfWallAboveFloor }: AdviceFacts): Rule {
  const rule = {
    id: "leastOut",
    kind: "notBelow" as const,
    name: "wall out of the ground as it is, at the high side",
    source: "your own limit; a high corner about a foot out of the ground is common practice",
  };
  if (rules.leastOut === null) return { ...rule, height: null, place: "no limit has been typed", value: 0 };
  return {
    ...rule,
    height: highestAtWalls.height + rules.leastOut - topOfWallAboveFloor,
    ...spot(highestAtWalls),
    value: rules.leastOut,
  };
}
