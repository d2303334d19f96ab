/**
 * A round pipe under a drive: how high water stands before it to push a flow through, and the least pipe that does.
 *
 * Units   metres, m3/s; fall rise over run. Heads are told from the pipe's invert at the inlet.
 * Method  The greater of two heads. Inlet control: up to Q/(A √D) = 3.5 (US units) the inlet is a weir, from 4 on it is under
 *         water, between them in proportion. Outlet control: the energy of the water followed up the pipe from critical depth at its
 *         outlet, or from what stands below it, and what the inlet loses.
 * Source  FHWA HDS-5: unsubmerged HW/D = Hc/D + K (Q/(A √D))^M − 0.5 S, submerged HW/D = c (Q/(A √D))2 + Y − 0.5 S, full flow
 *         H = (1 + ke + 29 n2 L/R^1.333) V2/2g; gradually varied flow by the energy equation and
 *         Manning. Constants of inlets from memory; c, Y and full flow are tested against the handbook's printed examples.
 */
import { gravity, halved } from "./channel";

const foot = 0.3048;
const gravityUs = 32.174;

export interface PipeKind {
  readonly id: "concrete-square" | "concrete-groove" | "metal-headwall" | "metal-projecting";
  readonly words: string;
  /** Of the inlet under water. */
  readonly c: number;
  readonly y: number;
  /** Of the inlet as a weir. */
  readonly k: number;
  readonly m: number;
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
    k: 0.0098,
    m: 2,
    ke: 0.5,
    n: 0.012,
  },
  {
    id: "concrete-groove",
    words: "concrete, groove end in a headwall",
    c: 0.0292,
    y: 0.74,
    k: 0.0018,
    m: 2,
    ke: 0.2,
    n: 0.012,
  },
  {
    id: "metal-headwall",
    words: "corrugated metal in a headwall",
    c: 0.0379,
    y: 0.69,
    k: 0.0078,
    m: 2,
    ke: 0.5,
    n: 0.024,
  },
  {
    id: "metal-projecting",
    words: "corrugated metal that projects",
    c: 0.0553,
    y: 0.54,
    k: 0.034,
    m: 1.5,
    ke: 0.9,
    n: 0.024,
  },
];

export interface Culvert {
  readonly diameter: number;
  readonly length: number;
  /** Of the pipe. */
  readonly fall: number;
  readonly kind: PipeKind;
}

/** What runs in a round pipe filled to a depth: area, wetted perimeter, width of the water. */
function filled(diameter: number, depth: number) {
  const r = diameter / 2;
  const half = Math.acos(Math.max(-1, Math.min(1, 1 - depth / r)));
  return {
    area: r * r * (half - Math.sin(half) * Math.cos(half)),
    perimeter: 2 * r * half,
    top: 2 * r * Math.sin(half),
  };
}

/** Depth below which the flow shoots, m; the pipe's own height where it can't. */
function criticalPipeDepth(diameter: number, flow: number): number {
  return halved(diameter, (depth) => {
    const { area, top } = filled(diameter, depth);
    return gravity * area ** 3 - flow * flow * top;
  });
}

/** Head of water before the inlet where the inlet governs, m above its invert. */
export function inletHead({ diameter, fall, kind }: Culvert, flow: number): number {
  const d = diameter / foot;
  const q = flow / foot ** 3 / (((Math.PI * d * d) / 4) * Math.sqrt(d));
  const under = kind.c * q * q + kind.y - 0.5 * fall;
  if (q >= 4) return diameter * under;
  const depth = criticalPipeDepth(diameter, flow);
  const { area } = filled(diameter, depth);
  const energy = area === 0 ? 0 : depth + (flow / area) ** 2 / (2 * gravity);
  const weir = Math.max(0, energy / diameter + kind.k * q ** kind.m - 0.5 * fall);
  const share = Math.max(0, (q - 3.5) / 0.5);
  return diameter * (weir + share * (under - weir));
}

/** What the pipe loses when it runs full, m of head. */
export function fullLoss({ diameter, length, kind }: Culvert, flow: number): number {
  const d = diameter / foot;
  const speed = flow / foot ** 3 / ((Math.PI * d * d) / 4);
  const friction = (29 * kind.n ** 2 * (length / foot)) / (d / 4) ** (4 / 3);
  return ((1 + kind.ke + friction) * speed * speed * foot) / (2 * gravityUs);
}

/**
 * Head before the inlet, m above its invert: the greater of the inlet's and the outlet's. `tail`: depth of the water that
 * stands beyond the outlet, m above the pipe's invert there.
 */
export function headwater(
  culvert: Culvert,
  flow: number,
  tail = 0,
): { readonly head: number; readonly by: "inlet" | "outlet" } {
  const inlet = inletHead(culvert, flow);
  const outlet = outletHead(culvert, flow, tail);
  return outlet > inlet ? { head: outlet, by: "outlet" } : { head: inlet, by: "inlet" };
}

/** Pieces of the pipe over which the water's energy is followed up it. */
const pieces = 40;

/**
 * The water's energy followed up the pipe from its outlet, where it stands at critical depth or with what stands below: it
 * grows by friction less the pipe's own fall. Where it can't grow the water shoots, and the inlet governs.
 */
function outletHead({ diameter, length, fall, kind }: Culvert, flow: number, tail: number): number {
  if (!(flow > 0)) return 0;
  const full = filled(diameter, diameter);
  const at = (depth: number) => (depth < diameter ? filled(diameter, depth) : full);
  const ofSpeed = (depth: number) => (flow / at(depth).area) ** 2 / (2 * gravity);
  const friction = (depth: number) => {
    const { area, perimeter } = at(depth);
    return ((flow * kind.n) / area / (area / perimeter) ** (2 / 3)) ** 2;
  };
  const critical = criticalPipeDepth(diameter, flow);
  let depth = Math.max(critical, tail);
  for (let i = 0; i < pieces; i++) {
    const energy = depth + ofSpeed(depth) + ((friction(depth) - fall) * length) / pieces;
    const most = Math.max(energy, diameter) + diameter;
    depth = Math.max(
      critical,
      halved(most, (h) => (h <= critical ? -1 : h + ofSpeed(h) - energy)),
    );
  }
  return depth + (1 + kind.ke) * ofSpeed(depth);
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
