/** Where the beam's height, a shot's height and a reading to look for come from. */
import type { Setup, Shot } from "../../document/schema";
import type { SetupResult } from "../../solve/results";
import { type Asked, firstPrinciples, type Why, type WhyInput } from "./why";

/** The beam of a set-up; null while it has none. */
export function beamWhy(asked: Asked, id: string): Why | null {
  const { project, results, figures } = asked;
  const setup = project.survey.setups.find((each) => each.id === id);
  const result = results.survey.setups.find((each) => each.id === id);
  if (!setup || !result || result.beam === null) return null;
  const ties = project.survey.shots.filter(
    ({ id: shot, setup: of, aside, reading }) =>
      of === id && !aside && reading !== null && !result.keptOut?.some((out) => out.shot === shot),
  );
  const inputs = ties.flatMap((shot) => tieInputs(shot, asked));
  const share = adjustment(ties, asked);
  const byAssumption = inputs.length === 0 && setup.assumedBeam !== null;
  return {
    title: `Height of the beam, ${result.name}`,
    figure: figures.length(result.beam),
    inputs: byAssumption
      ? [{ name: "Assumed beam", figure: assumed(setup) }]
      : [
          ...distinct(inputs),
          ...offsetInput(setup),
          ...adjusted(share, inputs.length > 2, figures),
          ...correction(result.beam - plainBeam(ties, setup, asked) - share, figures),
          ...keptOut(result, figures),
        ],
    rule: byAssumption
      ? "No reading ties this set-up, so the height that you assumed is taken."
      : `The beam passes its reading above the foot of the rod, so a point of known height gives it. Tied by: ${result.tie}.`,
    formula: byAssumption ? "beam = assumed height" : beamFormula(setup, inputs.length > 2),
    source: `${firstPrinciples}: height of instrument = known height + backsight`,
  };
}

function beamFormula(setup: Setup, several: boolean): string {
  const up = setup.rod.reads === "up";
  const one = up ? "beam = known height − reading" : `beam = known height + reading${plusOffset(setup)}`;
  return several ? `${one}; adjusted where several points tie it` : one;
}

function assumed(setup: Setup): string {
  return setup.assumedBeam?.text ?? "";
}

/** What a shot that ties a set-up was read on; null for the others. */
function tieOf(shot: Shot, { project, results }: Asked): { name: string; height: number } | null {
  if (shot.kind !== "mark" && shot.kind !== "turning") return null;
  const mark = project.survey.marks.find((each) => each.id === shot.of);
  const point = results.survey.points.find((each) => each.shot === shot.of);
  const height = mark?.height.m ?? point?.height ?? null;
  return height === null ? null : { name: mark?.name ?? point?.name ?? "", height };
}

/** The known height and the reading on it, for a shot that ties a set-up. */
function tieInputs(shot: Shot, asked: Asked): WhyInput[] {
  const tie = tieOf(shot, asked);
  if (tie === null || shot.reading === null) return [];
  return [
    { name: `Height of ${tie.name}`, figure: asked.figures.length(tie.height) },
    { name: `Reading on ${tie.name}`, figure: asked.figures.reading(shot.reading.m) },
  ];
}

/** The beam by the one tie alone, without any correction. */
function plainBeam(shots: readonly Shot[], setup: Setup, asked: Asked): number {
  const shot = shots.find((each) => tieOf(each, asked) !== null);
  return shot ? (tieOf(shot, asked)?.height ?? 0) + plainDown(shot, setup) : 0;
}

/** How far the ground lies below the beam by the reading alone; up for a rod that reads up. */
function plainDown(shot: Shot, setup: Setup): number {
  const reading = shot.reading?.m ?? 0;
  return setup.rod.reads === "up" ? -reading : reading + (setup.rod.offset?.m ?? 0);
}

function plusOffset({ rod }: Setup): string {
  return rod.offset === null ? "" : " + receiver's offset";
}

function offsetInput({ rod }: Setup): WhyInput[] {
  return rod.offset === null || rod.reads === "up"
    ? []
    : [{ name: "Receiver's offset", figure: rod.offset.text }];
}

/** Below this a difference is rounding, m. */
const rounding = 5e-5;

/** What the survey put right beside the reading itself, where it did. */
function correction(metres: number, figures: Asked["figures"]): WhyInput[] {
  if (Math.abs(metres) < rounding) return [];
  return [{ name: "Corrections: tilt, long sights, a moved laser", figure: figures.signed(metres) }];
}

/** The same point read once more has a name of its own; what is said twice is said once. */
function distinct(inputs: readonly WhyInput[]): WhyInput[] {
  const kept: WhyInput[] = [];
  const looks = new Map<string, number>();
  for (const { name, figure } of inputs) {
    const said = kept.some((each) => each.figure === figure && each.name.startsWith(name));
    if (said) continue;
    const look = (looks.get(name) ?? 0) + 1;
    looks.set(name, look);
    kept.push({ name: look === 1 ? name : `${name}, look ${look}`, figure });
  }
  return kept;
}

/** Set-ups adjusted together move off their own ties: by the share of a run's misclosure, or to the middle of several ties. */
function adjustment(ties: readonly Shot[], asked: Asked): number {
  const first = ties.find((shot) => tieOf(shot, asked) !== null);
  return asked.results.survey.points.find(({ shot }) => shot === first?.id)?.shift ?? 0;
}

function adjusted(metres: number, several: boolean, figures: Asked["figures"]): WhyInput[] {
  if (Math.abs(metres) < rounding) return [];
  const name = several ? "From its first tie to the middle of all" : "Share of what the run misses a mark by";
  return [{ name, figure: figures.signed(metres) }];
}

function keptOut({ keptOut: out = [], spread }: SetupResult, figures: Asked["figures"]): WhyInput[] {
  if (out.length > 0)
    return out.map(({ by }) => ({
      name: "Kept out: another tie would move it by",
      figure: figures.signed(by),
    }));
  return spread > 0 ? [{ name: "Its ties differ by", figure: figures.length(spread) }] : [];
}

/** The height of a shot; null while it has none. */
export function shotWhy({ project, results, figures }: Asked, id: string): Why | null {
  const shot = project.survey.shots.find((each) => each.id === id);
  const point = results.survey.points.find((each) => each.shot === id);
  const setup = results.survey.setups.find((each) => each.id === shot?.setup);
  const own = project.survey.setups.find((each) => each.id === shot?.setup);
  if (!shot?.reading || !own || !point || point.height === null || !setup || setup.beam === null) return null;
  const up = own.rod.reads === "up";
  return {
    title: `Height of ${point.name || "this shot"}`,
    figure: figures.length(point.height),
    inputs: [
      { name: `Beam of ${setup.name}`, figure: figures.length(setup.beam) },
      { name: "Reading", figure: figures.reading(shot.reading.m) },
      ...offsetInput(own),
      ...correction(point.height - (setup.beam - plainDown(shot, own)), figures),
    ],
    rule: up
      ? "This rod reads upwards: a bigger reading is higher ground."
      : "A reading goes down from the beam: a bigger reading is lower ground.",
    formula: up
      ? "height = where the rod reads zero + reading"
      : `height = beam − reading${plusOffset(own).replace("+", "−")}`,
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
