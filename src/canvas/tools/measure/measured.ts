/** What was measured stays in sight until Esc; its last piece can become a dimension. */
import type { Snap } from "../../snap/snap";
import { endOf, standingOff } from "../dimension/standingOff";
import type { ToolContext, ToolState } from "../tool";
import { begin, measureMarks, ready } from "./measuring";
import { readMeasured } from "./reading";

interface Ended {
  readonly points: readonly Snap[];
  readonly closed: boolean;
}

export function measured(context: ToolContext, ended: Ended): ToolState {
  const places = ended.points.map(({ at }) => at);
  const reading = readMeasured(
    { points: places, closed: ended.closed },
    context.project(),
    context.results(),
  );
  const [from, to] = ended.points.slice(-2);
  const act = ended.closed
    ? null
    : places.length > 2
      ? "Make the last piece a dimension"
      : "Make it a dimension";
  const again = () => measured(context, ended);
  const use = (): ToolState =>
    from && to && !ended.closed ? standingOff(context, { from: endOf(from), to: endOf(to) }, again) : again();
  return {
    name: "measured",
    hint: act
      ? "Enter makes it a dimension; click to measure anew, Esc lets it go"
      : "Click to measure anew; Esc lets it go",
    cursor: "crosshair",
    marks: measureMarks(context, places, ended.closed),
    ...(reading ? { reading: { ...reading, live: false, act } } : {}),
    press: (pointer) => begin(context, pointer),
    use,
    ...(act ? { finish: use } : {}),
    cancel: () => ready(context),
    lost: again,
  };
}
