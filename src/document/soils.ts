/**
 * Usual figures of soils, to be taken or typed over: volumes for one in the bank, and weight in the bank.
 *
 * Units   kg/m3.
 * Source  Beside each figure, in words that are shown with it. What could not be read in a published table says so, with those that come nearest. The
 *         army's table of soil conversion factors (FM 5-434) was read as quoted, and for sand only.
 */
import type { Materials } from "./costSchema";

export type SoilKind = "sand-gravel" | "loam" | "clay" | "rock";

type SoilFigure = "swell" | "shrink" | "weight";

export interface Soil {
  readonly kind: SoilKind;
  readonly name: string;
  readonly swell: number;
  readonly shrink: number;
  /** In the bank. */
  readonly weight: number;
  readonly sources: Readonly<Record<SoilFigure, string>>;
}

const armyTable =
  "US Army's table of soil conversion factors, as quoted: sand 100 in place, 111 loose, 95 compacted";
const swellTable = (percent: number, of: string) =>
  `table of swell factors, projectengineer.net: ${of} ${percent} %`;
const courseNotes = (pounds: number, of: string) =>
  `course notes on earthwork: ${of} about ${pounds} lb/ft³ in place`;
const densities = (of: string) => `earthmoving handbook's table of densities, as quoted: ${of}`;
const noTable =
  "a round figure of our own: no table was read for crushed stone, so ask your supplier. Published ones beside it: sand 1.17 (US Army's table, as quoted: 111 loose to 95 compacted), dry gravel 1.24 (compendium of swell and shrinkage, spikevm.com: +15 %, −7 %)";

export const soils: readonly Soil[] = [
  {
    kind: "sand-gravel",
    name: "sand and gravel",
    swell: 1.11,
    shrink: 0.95,
    weight: 1930,
    sources: {
      swell: armyTable,
      shrink: armyTable,
      weight: densities("sand and gravel, dry, 1,930 kg/m³ in place"),
    },
  },
  {
    kind: "loam",
    name: "loam, common earth",
    swell: 1.25,
    shrink: 0.9,
    weight: 1602,
    sources: {
      swell: swellTable(25, "loam"),
      shrink:
        "table of soil in its states, review for the engineers' exam: common earth 1 in the bank, 1.25 loose, 0.90 compacted",
      weight: courseNotes(100, "earth"),
    },
  },
  {
    kind: "clay",
    name: "clay",
    swell: 1.4,
    shrink: 0.9,
    weight: 1840,
    sources: {
      swell: swellTable(40, "clay"),
      shrink: "compendium of swell and shrinkage, spikevm.com: dry clay −10 %",
      weight: densities("dry clay, 1,840 kg/m³ in place"),
    },
  },
  {
    kind: "rock",
    name: "blasted rock",
    swell: 1.65,
    shrink: 1.36,
    weight: 2403,
    sources: {
      swell: swellTable(65, "blasted rock"),
      shrink: "compendium of swell and shrinkage, spikevm.com: basalt +36 % (FHWA 2007)",
      weight: courseNotes(150, "rock"),
    },
  },
];

type Earth = Pick<Materials, "swell" | "shrink" | "weights">;

/** The usual soil whose figures a plan counts with; null where one of them is typed. */
export function soilOf({ swell, shrink, weights }: Earth): Soil | null {
  return (
    soils.find((soil) => soil.swell === swell && soil.shrink === shrink && soil.weight === weights.earth) ??
    null
  );
}

/** Usual weights and bulk that go with no soil. */
const others = {
  topsoil: { value: 1424, source: "a trucking supplier's list: topsoil about 2,400 lb/yd³ loose" },
  stone: { value: 1631.5, source: "suppliers' figure: crushed stone about 2,700 to 3,000 lb/yd³ loose" },
  stoneLoose: { value: 1.15, source: noTable },
} as const;

/** Where a figure of the plan's materials comes from, in words. */
export function figureSource(
  materials: Earth & Pick<Materials, "stoneLoose">,
  figure: SoilFigure | keyof typeof others,
): string {
  const own = "your own figure";
  if (figure === "topsoil" || figure === "stone")
    return materials.weights[figure] === others[figure].value ? others[figure].source : own;
  if (figure === "stoneLoose")
    return materials.stoneLoose === others.stoneLoose.value ? others.stoneLoose.source : own;
  return soilOf(materials)?.sources[figure] ?? own;
}
