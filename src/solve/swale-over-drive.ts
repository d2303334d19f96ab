/** Where a swale and a drive change each other's ground because they cross. */
import { distance } from "../geometry";
import { crossings, type GradingPlan, reachOverPipe } from "../grading";
import type { GradingConflict } from "./results";

/** Lines at a flatter angle (its sine) run along each other more than that they cross: what they do is told. */
const crossesSquarely = 0.35;

/** A swale that crosses a drive has a note of its own: what it does elsewhere along the drive is told. */
export function crossesDrive({ first, second, at, by }: GradingConflict, plan: GradingPlan): boolean {
  const swale = plan.swales.find(({ swale: one }) => one.id === second || one.id === first);
  const drive = plan.drives.find(({ drive: one }) => one.id === first || one.id === second);
  if (!swale || !drive) return false;
  const across = drive.drive.width / 2 + drive.drive.shoulder.width;
  const dip = swale.swale.bottomWidth / 2 + Math.abs(by) * swale.swale.sideSlope;
  return crossings(swale, drive).some((crossing) => {
    if (crossing.square < crossesSquarely) return false;
    const reach = plan.piped ? reachOverPipe(crossing, drive, swale) : (across + dip) / crossing.square;
    return distance(crossing.at, at) <= reach;
  });
}
