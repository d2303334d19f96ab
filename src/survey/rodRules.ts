/** The rule of each kind of rod, in one sentence, for beside the column where it is read. */
import type { Rod } from "../document/schema";

export interface RodRule {
  readonly name: string;
  readonly rule: string;
}

/** What the rod is called, and how its reading becomes a height. */
export function rodRule({ kind, reads, offset }: Rod): RodRule {
  const moved = offset === null ? "" : ` The receiver's ${offset.text} is added to each reading.`;
  const sense =
    reads === "down"
      ? "a bigger number is lower ground"
      : "a bigger number is higher ground, as if the ground itself were read";
  switch (kind) {
    case "plain":
      return {
        name: "tape or story pole",
        rule: `It stands on the ground and is read where the beam hits it: ${sense}.${moved}`,
      };
    case "direct":
      return {
        name: "direct-elevation rod",
        rule: `Its tape is set to the mark's height and shows heights: ${sense}.`,
      };
    case "cut-fill":
      return {
        name: "cut and fill rod",
        rule:
          reads === "up"
            ? "Zero is grade: plus is ground above it, to cut; minus is ground below it, to fill. Makers differ: try it on a point you know."
            : "Zero is grade: plus is ground below it, to fill; minus is ground above it, to cut. Makers differ: try it on a point you know.",
      };
    case "line":
      return {
        name: "laser line",
        rule: `Measured from the line on the wall or post: down is plus, up is minus, so ${sense}.${moved}`,
      };
  }
}
