/** Going to a step of the job, found by what it holds. */
import type { AppCommand } from "../panels/command";
import { stepTitles } from "../panels/steps";
import { setStep } from "../store/actions";
import { type StepName, stepNames } from "../store/state";
import { appStore } from "../store/store";
import { onPlan } from "./whyNot";

/** What a step holds, in words that people look for. */
const stepWords: Readonly<Record<StepName, string>> = {
  lot: "property boundary deed setback bearings features trees picture north",
  shots: "survey laser level book readings marks benchmark datum set-up ground points elevation",
  building: "house garage size footprint walls door window squaring diagonals corners",
  drive:
    "driveway road grade slope steepness gravel parking pad terrace berm retaining wall side slopes earth",
  water:
    "drainage swale ditch rain storm flood gutter downspout roof culvert pipe under drive pond low place fall slope silt barrier neighbour catchment footing drain",
  floor: "height level elevation limits rules slab finished cut fill balance curve frost band",
  foundation: "footing frost slab stem wall concrete rebar posts piers trench depth crawl space dig",
  quantities:
    "volumes amounts dirt soil earth gravel stone concrete loads truck haul price cost bill stump topsoil swell",
  setout: "set out stakes string batter boards laser reading mark layout pegs",
  sheets: "print pdf paper scale site plan export drawing",
};

export const stepCommands: readonly AppCommand[] = [
  ...stepNames.map(
    (name): AppCommand => ({
      id: `step.${name}`,
      name: `Go to ${stepTitles[name].toLowerCase()}`,
      place: "Steps",
      also: `step panel ${stepWords[name]}`,
      whyNot: onPlan,
      run: () => setStep(name),
    }),
  ),
  { id: "step.next", name: "Next step", place: "Steps", keys: ["]"], whyNot: onPlan, run: () => stepBy(1) },
  {
    id: "step.previous",
    name: "Previous step",
    place: "Steps",
    keys: ["["],
    whyNot: onPlan,
    run: () => stepBy(-1),
  },
];

function stepBy(by: number): void {
  const next = stepNames[stepNames.indexOf(appStore.getState().step) + by];
  if (next) setStep(next);
}
