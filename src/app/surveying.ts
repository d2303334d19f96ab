/** Acts of the survey: its page, its checks, its grids and places. */
import type { AppCommand } from "../panels/command";
import { askBook } from "../panels/survey/bookRequest";
import { openPlaceCard } from "../panels/survey/placeCard";
import { openSurveyDialog } from "../panels/survey/surveyDialogs";
import { setStep } from "../store/actions";
import type { AppState } from "../store/state";
import { shownProject } from "../store/store";
import { onPlan } from "./whyNot";

const withReadings = (state: AppState) =>
  onPlan(state) ?? (shownProject(state).survey.shots.length > 0 ? null : "Type readings first.");
const withShot = (state: AppState) =>
  onPlan(state) ??
  (state.selection.length === 1 && state.selection[0]?.kind === "shot"
    ? null
    : "Select one shot, on the plan or in the level book.");

export const surveyCommands: readonly AppCommand[] = [
  {
    id: "survey.type",
    name: "Type in the level book",
    place: "Steps",
    keys: ["Alt+L"],
    also: "readings rows keyboard cursor focus next shot",
    whyNot: onPlan,
    run: () => {
      setStep("shots");
      askBook(null);
    },
  },
  {
    id: "survey.run",
    name: "Level run…",
    place: "Steps",
    also: "rise and fall height of instrument misclosure page check class long sights",
    whyNot: withReadings,
    run: () => openSurveyDialog({ kind: "run" }),
  },
  {
    id: "survey.pegs",
    name: "Two-peg check…",
    place: "Steps",
    also: "collimation beam error laser calibrate",
    whyNot: onPlan,
    run: () => openSurveyDialog({ kind: "pegs", setup: null }),
  },
  {
    id: "survey.stakes",
    name: "Grid of stakes…",
    place: "Draw",
    also: "shots rows columns spacing serpentine paces",
    whyNot: onPlan,
    run: () => openSurveyDialog({ kind: "stakes" }),
  },
  {
    id: "survey.place",
    name: "Place the selected shot…",
    place: "Draw",
    keys: ["Alt+P"],
    also: "two tapes baseline wall offset angle distance coordinates corner",
    whyNot: withShot,
    run: () => {
      setStep("shots");
      openPlaceCard();
    },
  },
];
