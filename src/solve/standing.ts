/** What every floor of a layout shares: places to read, drives laid out, the volume curve. Remembered part by part. */
import { earthBelowFloor } from "../document/foundationMeasures";
import type { Point, Project } from "../document/schema";
import { type DriveProfile, driveProfile, type Places, type Prepared, placesAt, prepare } from "../grading";
import { pitSpots, pitSummary } from "../survey";
import { groundAt } from "../terrain";
import { type StandingFacts, standingFacts } from "./advice-facts";
import { volumeAgainstFloor } from "./earthwork";
import { type FoundationPlaces, foundationPlaces } from "./foundation";
import { guessedShares } from "./guessed-shares";
import type { StageMaker } from "./memo";
import type { CurvePoint, GuessedShares, SwaleResult } from "./results";
import { type SectionPlaces, sectionPlaces } from "./section";
import type { BuildingSite } from "./site";
import { swaleResults, type WallReadings, wallReadings } from "./water";
import type { Words } from "./words";

/** What every floor of a layout shares. */
export interface Standing {
  readonly corners: {
    readonly places: Places;
    readonly prepared: Prepared;
    readonly guessed: readonly boolean[];
  };
  readonly drives: readonly DriveProfile[];
  readonly walls: WallReadings;
  readonly swales: readonly SwaleResult[];
  readonly section: { readonly places: SectionPlaces; readonly prepared: Prepared };
  readonly curve: readonly CurvePoint[];
  readonly guessed: GuessedShares;
  readonly facts: StandingFacts;
  readonly foundation: FoundationPlaces;
  /** Least and most topsoil that test pits met, m; null without such pits. */
  readonly topsoilMet: readonly [number, number] | null;
}

/** `carriedCurve`: shown while the layout itself is under the hand. It lags then, as finished contours do. */
export function standingStages(
  stage: StageMaker,
): (site: BuildingSite, project: Project, words: Words, carriedCurve?: readonly CurvePoint[]) => Standing {
  const corners = stage(
    (
      { ring }: BuildingSite["footprint"],
      ground: BuildingSite["ground"],
      height: BuildingSite["height"],
      plan: BuildingSite["plan"],
      range: BuildingSite["range"],
    ) => {
      const places = placesAt(ring, height);
      const guessed = ring.map(([x, y]) => groundAt(ground, x, y)?.guessed ?? true);
      return { places, prepared: prepare(places, plan, range), guessed };
    },
  );
  const drives = stage((plan: BuildingSite["plan"], height: BuildingSite["height"]) =>
    plan.drives.map((line) => driveProfile(line, height)),
  );
  const walls = stage(wallReadings);
  const swales = stage(swaleResults);
  const section = stage(
    (
      footprint: BuildingSite["footprint"],
      ground: BuildingSite["ground"],
      height: BuildingSite["height"],
      plan: BuildingSite["plan"],
      range: BuildingSite["range"],
      reach: BuildingSite["reach"],
    ) => {
      const places = sectionPlaces(footprint, ground, height, reach.bounds);
      return { places, prepared: prepare(places.places, plan, range) };
    },
  );
  const curve = stage(volumeAgainstFloor);
  const guesses = stage(guessedShares);
  const footing = stage(foundationPlaces);
  const topsoil = stage((survey: Project["survey"], outline: readonly Point[]) => {
    const met = pitSummary(pitSpots(survey, outline), "topsoil");
    return met && ([met.least, met.most] as const);
  });
  return (site, project, words, carriedCurve) => {
    const { footprint, ground, height, plan, range, reach, building } = site;
    const below = earthBelowFloor(building);
    const { kind, wallThickness } = building.foundation;
    const strip = kind === "stem-wall" ? wallThickness : null;
    return {
      corners: corners(footprint, ground, height, plan, range),
      drives: drives(plan, height),
      walls: walls(plan, ground, height, range),
      swales: swales(plan, height, project.rules.leastSwaleFall, words),
      section: section(footprint, ground, height, plan, range, reach),
      curve: carriedCurve ?? curve(site.coarse(), site.curve, below, range.low, range.high),
      guessed: guesses(plan, footprint, ground),
      facts: standingFacts(site, project, words),
      topsoilMet: topsoil(project.survey, building.outline),
      foundation: footing(footprint, ground, height, plan, range, project.survey, building.doors, strip),
    };
  };
}
