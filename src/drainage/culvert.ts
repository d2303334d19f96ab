/**
 * A round pipe under a drive: how high water stands before it to push a flow through, and the least pipe that does.
 *
 * Units   metres, m3/s; fall rise over run. Heads are told from the pipe's invert at the inlet.
 * Source  FHWA HDS-5: submerged inlet control HW/D = c (Q/(A √D))2 + Y − 0.5 S with Q/(A √D) in US units, and full flow
 *         H = (1 + ke + 29 n2 L/R^1.333) V2/2g (US units). Inlet control by this form holds from Q/(A √D) = 4 on; below that
 *         it errs to the safe side. Constants of inlets from memory, tested against the handbook's printed examples.
 */

const foot = 0.3048;
const gravityUs = 32.174;

export interface PipeKind {
  readonly id: "concrete-square" | "concrete-groove" | "metal-headwall" | "metal-projecting";
  readonly words: string;
  readonly c: number;
  readonly y: number;
  /** Loss at the inlet, times the head of speed. */
  readonly ke: number;
  readonly n: number;
}

export const pipeKinds: readonly PipeKind[] = [
  {
    id: "concrete-square",
    words: "concrete, square edge in a headwall",
    c: 0.0398,
    y: 0.67,
    ke: 0.5,
    n: 0.012,
  },
  {
    id: "concrete-groove",
    words: "concrete, groove end in a headwall",
    c: 0.0292,
    y: 0.74,
    ke: 0.2,
    n: 0.012,
  },
  { id: "metal-headwall", words: "corrugated metal in a headwall", c: 0.0379, y: 0.69, ke: 0.5, n: 0.024 },
  { id: "metal-projecting", words: "corrugated metal that projects", c: 0.0553, y: 0.54, ke: 0.9, n: 0.024 },
];

export interface Culvert {
  readonly diameter: number;
  readonly length: number;
  /** Of the pipe. */
  readonly fall: number;
  readonly kind: PipeKind;
}

/** Head of water before the inlet where the inlet governs, m above its invert. */
export function inletHead({ diameter, fall, kind }: Culvert, flow: number): number {
  const d = diameter / foot;
  const area = (Math.PI * d * d) / 4;
  const q = flow / foot ** 3 / (area * Math.sqrt(d));
  return diameter * (kind.c * q * q + kind.y - 0.5 * fall);
}

/** What the pipe loses when it runs full, m of head. */
export function fullLoss({ diameter, length, kind }: Culvert, flow: number): number {
  const d = diameter / foot;
  const speed = flow / foot ** 3 / ((Math.PI * d * d) / 4);
  const friction = (29 * kind.n ** 2 * (length / foot)) / (d / 4) ** (4 / 3);
  return ((1 + kind.ke + friction) * speed * speed * foot) / (2 * gravityUs);
}

/** Head before the inlet, m above its invert: the greater of both; an open outlet counts as running full to its top. */
export function headwater(
  culvert: Culvert,
  flow: number,
): { readonly head: number; readonly by: "inlet" | "outlet" } {
  const inlet = inletHead(culvert, flow);
  const outlet = fullLoss(culvert, flow) + culvert.diameter - culvert.length * culvert.fall;
  return outlet > inlet ? { head: outlet, by: "outlet" } : { head: inlet, by: "inlet" };
}

/** Usual round sizes, in inches of bore. */
export const standardPipes = [12, 15, 18, 21, 24, 30, 36, 42, 48] as const;

/** The least standard pipe whose head stays within what is allowed, m; null where none does. */
export function leastPipe(
  flow: number,
  like: Omit<Culvert, "diameter">,
  allowed: (diameter: number) => number,
): number | null {
  const sizes = standardPipes.map((inches) => inches * 0.0254);
  return sizes.find((diameter) => headwater({ ...like, diameter }, flow).head <= allowed(diameter)) ?? null;
}
