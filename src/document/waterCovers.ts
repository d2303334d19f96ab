/**
 * Published figures of what rain falls on and what ditches are lined with, to be taken or typed over.
 *
 * Units   C and n without unit; speeds m/s; slopes rise over run.
 * Source  C: the table of the American Society of Civil Engineers for lawns, drives and unimproved ground, Schwab and others, Soil and
 *         Water Conservation Engineering, for woods, pasture and ploughed ground; a range's upper end is taken, on the safe
 *         side. n: FHWA's table as in the code of Winchester, Indiana (table 4). Speeds over grass: SCS-TP-61 as in the
 *         ordinances of Winchester, Indiana (table 7) and Norton, Ohio; where the two differ, the lower for a mixture and the
 *         3.5 ft/s for redtop. Bare beds: Chow, Open-Channel Hydraulics.
 */
const foot = 0.3048;

interface GroundCover {
  readonly words: string;
  /** Upper end of the published range. */
  readonly c: number;
}

export const groundCovers = {
  "lawn-sandy-flat": { words: "lawn on sand, to 2 %", c: 0.1 },
  "lawn-sandy": { words: "lawn on sand, 2 to 7 %", c: 0.15 },
  "lawn-sandy-steep": { words: "lawn on sand, over 7 %", c: 0.2 },
  "lawn-heavy-flat": { words: "lawn on heavy soil, to 2 %", c: 0.17 },
  "lawn-heavy": { words: "lawn on heavy soil, 2 to 7 %", c: 0.22 },
  "lawn-heavy-steep": { words: "lawn on heavy soil, over 7 %", c: 0.35 },
  "woods-flat": { words: "woods on silt, flat", c: 0.3 },
  "woods-rolling": { words: "woods on silt, rolling", c: 0.35 },
  "woods-hilly": { words: "woods on silt, hilly", c: 0.5 },
  "pasture-flat": { words: "pasture on silt, flat", c: 0.3 },
  "pasture-rolling": { words: "pasture on silt, rolling", c: 0.36 },
  "pasture-hilly": { words: "pasture on silt, hilly", c: 0.42 },
  "ploughed-flat": { words: "ploughed silt, flat", c: 0.5 },
  "ploughed-rolling": { words: "ploughed silt, rolling", c: 0.6 },
  "ploughed-hilly": { words: "ploughed silt, hilly", c: 0.72 },
  unimproved: { words: "unimproved ground", c: 0.3 },
  drives: { words: "drives and walks", c: 0.85 },
  asphalt: { words: "asphalt", c: 0.95 },
  roofs: { words: "roofs", c: 0.95 },
} as const satisfies Readonly<Record<string, GroundCover>>;

export type GroundCoverKind = keyof typeof groundCovers;
export const groundCoverKinds = Object.keys(groundCovers) as [GroundCoverKind, ...GroundCoverKind[]];

/** C of ground under several covers, weighted by their parts of it; null without any. */
export function mixedC(
  covers: readonly { readonly cover: GroundCoverKind; readonly part: number }[],
): number | null {
  const whole = covers.reduce((sum, { part }) => sum + part, 0);
  if (!(whole > 0)) return null;
  return covers.reduce((sum, { cover, part }) => sum + groundCovers[cover].c * part, 0) / whole;
}

/** Manning's n of a ditch's bed, s/m^(1/3). */
export const bedRoughness = [
  { words: "earth, short grass", n: 0.025 },
  { words: "earth, some weeds", n: 0.03 },
  { words: "earth, dense weeds", n: 0.035 },
  { words: "grass swale", n: 0.05 },
  { words: "stone, placed", n: 0.03 },
  { words: "stone, dumped", n: 0.035 },
] as const;

interface DitchLining {
  readonly words: string;
  /** Speed it bears up to each fall, m/s, flattest first; steeper than the last it isn't used. */
  readonly bears: readonly { readonly to: number; readonly speed: number }[];
}

/** Feet a second for falls to 5 %, to 10 % and beyond. */
function grass(...speeds: readonly number[]): DitchLining["bears"] {
  const falls = [0.05, 0.1, Number.POSITIVE_INFINITY];
  return speeds.map((speed, i) => ({ to: falls[i] as number, speed: speed * foot }));
}

const bare = (speed: number): DitchLining["bears"] => [{ to: Number.POSITIVE_INFINITY, speed }];

export const ditchLinings = {
  "bermuda-firm": { words: "bermudagrass on firm soil", bears: grass(8, 7, 6) },
  "bermuda-loose": { words: "bermudagrass on soil that washes easily", bears: grass(6, 5, 4) },
  "bluegrass-firm": { words: "bluegrass or brome on firm soil", bears: grass(7, 6, 5) },
  "bluegrass-loose": { words: "bluegrass or brome on soil that washes easily", bears: grass(5, 4, 3) },
  "mixture-firm": { words: "grass mixture on firm soil", bears: grass(5, 4) },
  "mixture-loose": { words: "grass mixture on soil that washes easily", bears: grass(4, 3) },
  "redtop-firm": { words: "redtop or fescue on firm soil", bears: grass(3.5) },
  "redtop-loose": { words: "redtop or fescue on soil that washes easily", bears: grass(2.5) },
  "bare-sand": { words: "bare fine sand or silt loam", bears: bare(0.45) },
  "bare-fine-gravel": { words: "bare fine gravel", bears: bare(0.76) },
  "bare-clay": { words: "bare sandy clay or clay", bears: bare(0.9) },
  "bare-stiff": { words: "bare stiff clay or ordinary gravel soil", bears: bare(1.25) },
  "bare-hardpan": { words: "coarse gravel or hardpan", bears: bare(1.8) },
  rock: { words: "hard rock, or lined", bears: bare(3) },
} as const satisfies Readonly<Record<string, DitchLining>>;

export type DitchLiningKind = keyof typeof ditchLinings;
export const ditchLiningKinds = Object.keys(ditchLinings) as [DitchLiningKind, ...DitchLiningKind[]];

/** Speed that a lining bears at this fall, m/s; null where it isn't used so steep. */
export function liningBears(kind: DitchLiningKind, fall: number): number | null {
  const { bears }: DitchLining = ditchLinings[kind];
  return bears.find(({ to }) => fall <= to + 1e-9)?.speed ?? null;
}
