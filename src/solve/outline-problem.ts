/** What is wrong with a building's outline, in words. */
import type { Point } from "../geometry";
import { cornerName, type FootprintFault } from "../grading";
import type { Problem } from "./results";

export function outlineProblem(fault: FootprintFault, outline: readonly Point[]): Problem {
  const first = outline[fault.corners[0] ?? 0];
  return {
    code: `outline-${fault.why}`,
    severity: "error",
    where: "the building's outline",
    ...faultInWords(fault),
    ...(first ? { at: [...first] as [number, number] } : {}),
  };
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
      what: "Its walls cross or touch each other, so inside and outside can't be told apart.",
      how: "Move the corners until no wall crosses another.",
    };
  return { what: "It encloses no ground.", how: "Move its corners apart." };
}
