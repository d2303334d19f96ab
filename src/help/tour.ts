/** The tour through the window, on a demo: where each stop points, and what it tells. */
import type { GuideStep } from "./guides";

export interface TourStop {
  readonly id: string;
  /** The step whose panel is open at this stop. */
  readonly step: GuideStep;
  /** The part of the window it points at: the value of its `data-tour`. */
  readonly anchor: string;
  readonly title: string;
  readonly text: string;
}

export const tourDemo = "pottery-studio";

export const tourStops: readonly TourStop[] = [
  {
    id: "plan",
    step: "floor",
    anchor: "plan",
    title: "The site from above",
    text: "Ground, building, drive and water on one plan. Drag it along, turn the wheel to come nearer, and click to choose what lies there.",
  },
  {
    id: "steps",
    step: "floor",
    anchor: "steps",
    title: "The job in its order",
    text: "Ten steps from the lot to the sheets. Each shows how far it has come; none locks the next. Go where you like.",
  },
  {
    id: "tools",
    step: "floor",
    anchor: "tools",
    title: "What draws",
    text: "Choose, measure, shoot, draw: each tool says below the plan what the next click does, and takes lengths typed in your own notation. The magnet holds to corners and lines.",
  },
  {
    id: "book",
    step: "shots",
    anchor: "dock",
    title: "What the laser read",
    text: "The level book: type each reading as the rod shows it. A bigger reading is lower ground. Heights appear as you type.",
  },
  {
    id: "rod",
    step: "floor",
    anchor: "rod",
    title: "The floor in your hand",
    text: "Drag the flag and everything follows. The bars show which heights keep all the limits.",
  },
  {
    id: "sentence",
    step: "floor",
    anchor: "sentence",
    title: "How things stand",
    text: "One sentence tells what this floor means: the corners, the water, the drive, the loads.",
  },
  {
    id: "panel",
    step: "floor",
    anchor: "panel",
    title: "What limits it",
    text: "Each step has its panel of figures. The small “i” beside a figure tells where it comes from; the question mark opens the step's guide.",
  },
  {
    id: "section",
    step: "floor",
    anchor: "dock",
    title: "From the side",
    text: "A cut through the building: the ground as it is, the ground as it will be, and the floor between.",
  },
  {
    id: "setout",
    step: "setout",
    anchor: "panel",
    title: "Back onto the ground",
    text: "One reading on the mark in the morning, and each height becomes a reading to look for.",
  },
  {
    id: "sheets",
    step: "sheets",
    anchor: "sheets",
    title: "Onto paper",
    text: "The site plan at a true scale, with every height told from the mark, for those who dig and pour.",
  },
  {
    id: "help",
    step: "sheets",
    anchor: "help",
    title: "When a word is strange",
    text: "Guides, words of the trade, shortcuts and this tour are here. F1 opens the guide of the step you are in.",
  },
];
