/** The lot as figures may lean on it: one that has no inside is drawn as it was typed, and counts in nothing. */
import { lotFault, soundLot } from "../document/lot";
import type { Lot, Project } from "../document/schema";
import type { StageMaker } from "./memo";
import type { Problem } from "./results";

export interface SoundLot {
  readonly project: Project;
  readonly problems: readonly Problem[];
}

export function soundLotStage(stage: StageMaker): (project: Project) => SoundLot {
  const checked = stage((lot: Lot) => {
    const problems = lotShape(lot);
    return { problems, lot: soundLot(lot) };
  });
  return stage((project: Project) => {
    const { lot, problems } = checked(project.lot);
    return { project: lot === project.lot ? project : { ...project, lot }, problems };
  });
}

function lotShape({ outline }: Lot): Problem[] {
  const fault = lotFault(outline);
  if (fault === null) return [];
  const crosses = fault === "crosses";
  return [
    {
      code: `lot-${fault}`,
      severity: "caution",
      where: "the lot",
      what: crosses
        ? "Its lines cross or touch each other, so inside and outside can't be told apart. It counts in no figure until then."
        : "It encloses no ground, so it counts in no figure.",
      how: "Move its corners, or draw it again going round once.",
    },
  ];
}
