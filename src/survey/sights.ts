/** What is to be said of sights by their length: corrections that are asked for but can't be made, or could be. */
import type { Setup, Shot, Survey } from "../document/schema";
import type { Problem } from "../solve/results";
import { apart } from "./limits";
import { curvatureAndRefraction, type Readings } from "./readings";
import { named, type References, shotInWords } from "./references";

/** Less than the finest reading of a rod isn't worth a word, m. */
const WORTH_A_WORD = 0.001;

export function sightProblems(
  survey: Survey,
  shots: readonly Shot[],
  refs: References,
  readings: Readings,
): Problem[] {
  const bySetup = new Map<string, Shot[]>();
  for (const shot of shots) {
    const setup = refs.setups.get(shot.setup);
    // How far a rod stood from a laser without a place isn't known: nothing to say but that an error stays.
    if (!setup || (setup.at === null && setup.collimation === 0) || readings.get(shot) === undefined)
      continue;
    const own = bySetup.get(shot.setup);
    if (own === undefined) bySetup.set(shot.setup, [shot]);
    else own.push(shot);
  }
  return [...bySetup].flatMap(([id, own]) => {
    const setup = refs.setups.get(id);
    if (setup === undefined) return [];
    return [
      ...uncorrected(setup, own, readings),
      ...(survey.longSights ? [] : longest(setup, own, refs, readings)),
    ];
  });
}

/** A beam's known error can only come off where it is known how far the rod stood. */
function uncorrected(setup: Setup, own: readonly Shot[], readings: Readings): Problem[] {
  if (setup.collimation === 0) return [];
  const loose = own.filter((shot) => readings.get(shot)?.distance == null);
  if (loose.length === 0) return [];
  return [
    {
      code: "setup-error-stays",
      severity: "caution",
      where: `set-up ${named(setup)}`,
      what: `The beam's error is to be taken off, but how far ${loose.length === 1 ? "one shot was" : `${loose.length} shots were`} from the laser isn't known: ${loose.length === 1 ? "it is" : "they are"} left as read.`,
      how: "Say where the laser stood, and place the shots.",
      ids: [setup.id, ...loose.map(({ id }) => id)],
    },
  ];
}

function longest(setup: Setup, own: readonly Shot[], refs: References, readings: Readings): Problem[] {
  let farthest: Shot | null = null;
  let most = WORTH_A_WORD;
  for (const shot of own) {
    const by = curvatureAndRefraction(readings.get(shot)?.distance ?? 0);
    if (by <= most) continue;
    most = by;
    farthest = shot;
  }
  if (farthest === null) return [];
  return [
    {
      code: "shot-far",
      severity: "note",
      where: `set-up ${named(setup)}, ${shotInWords(farthest, refs)}`,
      what: `It was read from so far off that the earth's curvature makes it ${apart(most, refs.notation)} too low.`,
      how: "Let long sights be corrected, or set the laser up nearer.",
      ids: [farthest.id, setup.id],
    },
  ];
}
