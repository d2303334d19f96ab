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
import type { Asked, Why, WhyTopic } from "./why";

export { billFigure } from "./bill";
export type { Figures, Why, WhyTopic } from "./why";

export function whyOf(topic: WhyTopic, asked: Asked): Why | null {
  switch (topic.kind) {
    case "beam":
      return beamWhy(asked, topic.setup);
    case "shot":
      return shotWhy(asked, topic.shot);
    case "area":
      return areaWhy(asked);
    case "lot area":
      return lotAreaWhy(asked);
    case "corner":
      return cornerWhy(asked, topic.corner);
    case "limit":
      return limitWhy(asked, topic.rule);
    case "trench":
      return trenchWhy(asked);
    case "drive":
      return driveWhy(asked, topic.drive);
    case "swale":
      return swaleWhy(asked, topic.swale);
    case "wall":
      return wallWhy(asked, topic.wall);
    case "bill":
      return billWhy(asked, topic.item);
    case "setout":
      return setoutWhy(asked, topic.row);
  }
}
