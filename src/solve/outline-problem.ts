/** What is wrong with a building's outline, in words. */
import { between, crossingShares, type Point } from "../geometry";
import { cornerName, type FootprintFault } from "../grading";
import type { Problem } from "./results";

export function outlineProblem(fault: FootprintFault, outline: readonly Point[]): Problem {
  const first = placeOf(fault, outline);
  return {
    code: `outline-${fault.why}`,
    severity: "error",
    where: "the building's outline",
    ...faultInWords(fault),
    ...(first ? { at: [...first] as [number, number] } : {}),
  };
}

/** Where walls cross; else the first corner that it is about. */
function placeOf({ why, corners }: FootprintFault, outline: readonly Point[]): Point | undefined {
  const [a, b, c, d] = corners.map((i) => outline[i]);
  if (why !== "crosses" || !a || !b || !c || !d) return a ?? outline[0];
  const share = crossingShares(a, b, c, d)?.[0];
  return share === undefined || share < 0 || share > 1 ? c : between(a, b, share);
}

function faultInWords({ why, corners }: FootprintFault): { what: string; how: string } {
  const names = corners.map(cornerName);
  if (why === "too-few") return { what: "It has fewer than three corners.", how: "Draw the building again." };
  if (why === "repeated")
    return {
      what: `Corners ${names.join(" and ")} stand at one place.`,
      how: "Move one of them or take it out.",
    };
  if (why === "crosses")
    return {
      what: `Walls ${names[0]}-${names[1]} and ${names[2]}-${names[3]} cross or touch each other, so inside and outside can't be told apart.`,
      how: "Move the corners until no wall crosses another.",
    };
  return { what: "It encloses no ground.", how: "Move its corners apart." };
}
