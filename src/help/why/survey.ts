/** Where the beam's height, a shot's height and a reading to look for come from. */
import type { Setup, Shot } from "../../document/schema";
import { type Asked, firstPrinciples, type Why, type WhyInput } from "./why";

/** The beam of a set-up; null while it has none. */
export function beamWhy({ project, results, figures }: Asked, id: string): Why | null {
  const setup = project.survey.setups.find((each) => each.id === id);
  const result = results.survey.setups.find((each) => each.id === id);
  if (!setup || !result || result.beam === null) return null;
  const ties = project.survey.shots.filter(
    (shot) => shot.setup === id && !shot.aside && shot.reading !== null,
  );
  const inputs = ties.flatMap((shot) => tieInputs(shot, { project, results, figures }));
  const byAssumption = inputs.length === 0 && setup.assumedBeam !== null;
  return {
    title: `Height of the beam, ${result.name}`,
    figure: figures.length(result.beam),
    inputs: byAssumption
      ? [{ name: "Assumed beam", figure: assumed(setup) }]
      : [...inputs, ...spread(result.spread, figures)],
    rule: byAssumption
      ? "No reading ties this set-up, so the height that you assumed is taken."
      : `The beam passes its reading above the foot of the rod, so a point of known height gives it. Tied by: ${result.tie}.`,
    formula: byAssumption ? "beam = assumed height" : beamFormula(setup, inputs.length > 2),
    source: `${firstPrinciples}: height of instrument = known height + backsight`,
  };
}

function beamFormula(setup: Setup, several: boolean): string {
  const one = setup.rod.reads === "up" ? "beam = known height − reading" : "beam = known height + reading";
  return several ? `${one}; the mean where several points tie it` : one;
}

function assumed(setup: Setup): string {
  return setup.assumedBeam?.text ?? "";
}

/** The known height and the reading on it, for a shot that ties a set-up. */
function tieInputs(shot: Shot, { project, results, figures }: Asked): WhyInput[] {
  if (shot.kind !== "mark" && shot.kind !== "turning") return [];
  const mark = project.survey.marks.find((each) => each.id === shot.of);
  const point = results.survey.points.find((each) => each.shot === shot.of);
  const name = mark?.name ?? point?.name ?? "";
  const height = mark?.height.m ?? point?.height ?? null;
  if (height === null || shot.reading === null) return [];
  return [
    { name: `Height of ${name}`, figure: figures.length(height) },
    { name: `Reading on ${name}`, figure: figures.reading(shot.reading.m) },
  ];
}

function spread(metres: number, figures: Asked["figures"]): WhyInput[] {
  return metres > 0 ? [{ name: "Its ties differ by", figure: figures.length(metres) }] : [];
}

/** The height of a shot; null while it has none. */
export function shotWhy({ project, results, figures }: Asked, id: string): Why | null {
  const shot = project.survey.shots.find((each) => each.id === id);
  const point = results.survey.points.find((each) => each.shot === id);
  const setup = results.survey.setups.find((each) => each.id === shot?.setup);
  const up = project.survey.setups.find((each) => each.id === shot?.setup)?.rod.reads === "up";
  if (!shot?.reading || !point || point.height === null || !setup || setup.beam === null) return null;
  return {
    title: `Height of ${point.name || "this shot"}`,
    figure: figures.length(point.height),
    inputs: [
      { name: `Beam of ${setup.name}`, figure: figures.length(setup.beam) },
      { name: "Reading", figure: figures.reading(shot.reading.m) },
    ],
    rule: up
      ? "This rod reads upwards: a bigger reading is higher ground."
      : "A reading goes down from the beam: a bigger reading is lower ground.",
    formula: up ? "height = beam + reading" : "height = beam − reading",
    source: firstPrinciples,
  };
}

/** One height to set out: the reading to look for, or the height itself while there is no beam. */
export function setoutWhy({ results, figures }: Asked, index: string): Why | null {
  const { setout } = results;
  const row = setout.rows[Number(index)];
  if (!row) return null;
  const height = { name: "Height wanted", figure: figures.length(row.height) };
  const title = row.where ? `${row.what}, ${row.where}` : row.what;
  if (row.reading === null || setout.beam === null)
    return {
      title,
      figure: height.figure,
      inputs:
        setout.markHeight === null
          ? []
          : [{ name: `Height of ${setout.mark}`, figure: figures.length(setout.markHeight) }],
      rule: "The height in this plan. Type today's reading on the mark to have the reading to look for.",
      formula: "reading = beam − height",
      source: firstPrinciples,
    };
  return {
    title,
    figure: figures.reading(row.reading),
    inputs: [{ name: "Beam", figure: figures.length(setout.beam) }, height],
    rule: "The rod stands right when the beam meets it at this reading. A bigger reading is too low.",
    formula: "reading = beam − height wanted",
    source: firstPrinciples,
  };
}
