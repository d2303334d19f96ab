/** What the hatch on the plan means; it belongs to every key, and stands alone where no map has one. */
import type { Project } from "../../document";
import { drawGuessed } from "../../drawing";
import { oncePer } from "../../solve/once-per";
import type { Results } from "../../solve/results";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { planSlot } from "../view/slots";
import { KeyToAll } from "./KeyToAll";

/** The answer for the last lot on each ground: both change by replacement. */
const known = oncePer(
  (_: NonNullable<Results["ground"]>): { lot?: Project["lot"]; hatched?: boolean } => ({}),
);

function isHatched(project: Project, results: Results): boolean {
  if (results.ground === null) return false;
  const before = known(results.ground);
  if (before.lot !== project.lot || before.hatched === undefined) {
    before.lot = project.lot;
    before.hatched = drawGuessed(project, results).marks.some(({ style }) => style === "guessed-hatch");
  }
  return before.hatched;
}

function useHatch(): boolean {
  return useApp((state) => !state.hidden.has("existing") && isHatched(shownProject(state), state.results));
}

export function HatchKey() {
  return useHatch() ? (
    <p className="hatch-key">
      <span className="hatch-sample" aria-hidden="true" />
      guessed, no shots
    </p>
  ) : null;
}

export function HatchCard() {
  return useHatch() ? (
    <section className="plan-card hatch-card" aria-label="Key of the hatch" data-slot ref={planSlot}>
      <HatchKey />
      <KeyToAll />
    </section>
  ) : null;
}
