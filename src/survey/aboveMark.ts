/** Heights as they are told in the field: against the reference mark, which is the first of the survey. */
import type { Survey } from "../document/schema";

/** Height above the reference mark, m; null without one, or without a height. */
export function aboveMark(height: number | null, marks: Survey["marks"]): number | null {
  const mark = marks[0];
  return height === null || mark === undefined ? null : height - mark.height.m;
}
