/**
 * Usual figures of soils, to be taken or typed over: volumes for one in the bank, and weight in the bank.
 *
 * Units   kg/m3.
 * Source  Loose and compacted: the United States Army's table in FM 5-434 (from memory; of its lines only sand, 1.11 loose and
 *         0.95 compacted, was read again in a text that quotes it). Weights: common earth about 100 lb/ft3 and rock about
 *         150 lb/ft3 in place, course notes on earthwork; sand, gravel and clay from memory.
 */
export type SoilKind = "sand-gravel" | "loam" | "clay" | "rock";

export interface Soil {
  readonly kind: SoilKind;
  readonly name: string;
  readonly swell: number;
  readonly shrink: number;
  /** In the bank. */
  readonly weight: number;
}

export const soils: readonly Soil[] = [
  { kind: "sand-gravel", name: "sand and gravel", swell: 1.11, shrink: 0.95, weight: 1900 },
  { kind: "loam", name: "loam, common earth", swell: 1.25, shrink: 0.9, weight: 1602 },
  { kind: "clay", name: "clay", swell: 1.43, shrink: 0.9, weight: 1850 },
  { kind: "rock", name: "blasted rock", swell: 1.5, shrink: 1.3, weight: 2403 },
];
