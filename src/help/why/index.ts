/**
 * Why a figure is what it is: its inputs with their values, the rule in words, the formula and the source.
 *
 * Units   whatever the notation that is passed in writes.
 * Method  Read from the project and its results; nothing of the trade is computed anew. Null while the figure
 *         isn't known, or for an id that isn't there.
 */
import { billWhy } from "./bill";
import { areaWhy, cornerWhy, lotAreaWhy, trenchWhy } from "./building";
import { limitWhy } from "./limits";
import { driveWhy, swaleWhy, wallWhy } from "./lines";
import { beamWhy, setoutWhy, shotWhy } from "./survey";
import { pipeWhy, swaleDepthWhy, swalePeakWhy, swaleSpeedWhy } from "./water";
import { catchmentWhy, footingDrainWhy, leavingWhy, pondWhy, roofWhy } from "./water-on-plan";
import type { Asked, Why, WhyKind, WhyTopic } from "./why";

export { billFigure } from "./bill";
export type { Figures, Why, WhyKind, WhyTopic } from "./why";

const answers: Readonly<Record<WhyKind, (asked: Asked, id: string) => Why | null>> = {
  beam: beamWhy,
  shot: shotWhy,
  area: areaWhy,
  "lot area": lotAreaWhy,
  corner: cornerWhy,
  limit: limitWhy,
  trench: trenchWhy,
  drive: driveWhy,
  swale: swaleWhy,
  "swale peak": swalePeakWhy,
  "swale depth": swaleDepthWhy,
  "swale speed": swaleSpeedWhy,
  pipe: pipeWhy,
  "swale catchment": catchmentWhy,
  pond: pondWhy,
  leaving: leavingWhy,
  "roof side": roofWhy,
  "footing drain": footingDrainWhy,
  wall: wallWhy,
  bill: billWhy,
  setout: setoutWhy,
};

export function whyOf({ kind, id }: WhyTopic, asked: Asked): Why | null {
  return answers[kind](asked, id);
}
