/**
 * Earth in the order of work: topsoil off, stumps and soft ground out, cut and fill, topsoil back.
 *
 * Units   m3, m2, kg.
 * Method  Earth moved is measured in the bank once the topsoil is off. Loose = bank × swell, compacted = bank × shrink, so
 *         compacted fill takes fill ÷ shrink of bank earth. Sand or gravel under a slab is brought: loose = compacted × what the
 *         user's stone takes, and no cut makes it. Where the plan has it so the cut makes earth fill, as far as it goes: the
 *         rest of the fill is brought, the rest of the cut goes out. What comes out of soft ground and stump holes isn't reckoned as
 *         fit for fill; what goes back in is compacted fill. A bank weight stays the same on the truck: loose weight for a
 *         volume = bank weight ÷ swell.
 * Source  First principles; swell, shrink and weights are the user's figures.
 */
import type { Materials, Truck } from "../document/schema";
import { type Counted, counted, stoneByTruck, type TrenchVolumes, trucked } from "./item";

export interface EarthInput {
  /** Earth to move after stripping: cut in the bank, fill as compacted, m3. */
  readonly cut: number;
  readonly fill: number;
  /** The part of the fill inside the walls, and what it is to be; missing: it isn't told apart. */
  readonly fillInside?: number;
  readonly slabFill?: "sand-gravel" | "earth";
  /** What either may be out by, m3. */
  readonly error?: number;
  readonly disturbedArea: number;
  /** The part of it that ends as soil: nothing built or laid on it, m2. */
  readonly soilArea?: number;
  /** Least and most topsoil that test pits met, m. */
  readonly topsoilMet?: readonly [number, number] | null;
  readonly stumps?: number;
  /** Null: no trench is dug. */
  readonly trench?: TrenchVolumes | null;
  readonly materials: Materials;
  readonly truck: Truck;
}

export function earthItems(input: EarthInput): Counted[] {
  return [...stripping(input), ...holes(input), ...moved(input)];
}

/** What goes back on top, when the rest is done. */
export function topsoilItems({ soilArea = 0, disturbedArea, materials }: EarthInput): Counted[] {
  const { stripDepth, respread } = materials;
  if (soilArea <= 0) return [];
  const back = soilArea * respread;
  const left = disturbedArea * stripDepth - back;
  const items = [
    counted(
      {
        id: "seed",
        stage: "topsoil",
        item: "Ground to seed",
        how: "graded ground on which nothing is built or driven",
      },
      soilArea,
      "m2",
    ),
  ];
  if (respread === 0) return items;
  return [
    counted(
      {
        id: "topsoil-back",
        stage: "topsoil",
        item: "Topsoil back on top",
        how: "graded ground on which nothing is built or driven × depth, taken as it lay in the bank",
      },
      back,
      "m3",
    ),
    ...items,
    left >= 0
      ? counted(
          {
            id: "topsoil-left",
            stage: "topsoil",
            item: "Topsoil left over",
            how: "topsoil stripped − topsoil back",
          },
          left,
          "m3",
        )
      : counted(
          {
            id: "topsoil-short",
            stage: "topsoil",
            item: "Topsoil short",
            how: "topsoil back − topsoil stripped",
          },
          -left,
          "m3",
        ),
  ];
}

function stripping({ disturbedArea, topsoilMet, materials, truck }: EarthInput): Counted[] {
  const volume = disturbedArea * materials.stripDepth;
  return [
    counted(
      {
        id: "topsoil",
        stage: "strip",
        item: "Topsoil to strip",
        how: "disturbed ground × depth of strip, in the bank; its own pile, kept for the end",
      },
      volume,
      "m3",
      {
        trucked: trucked(volume * materials.swell, materials.weights.topsoil, truck),
        range: topsoilMet ? [disturbedArea * topsoilMet[0], disturbedArea * topsoilMet[1]] : null,
      },
    ),
  ];
}

/** Volume of one stump hole, a round one. */
function stumpHole({ stumpHole: { width, depth } }: Materials): number {
  return (Math.PI / 4) * width ** 2 * depth;
}

function softGround({ undercuts }: Materials): number {
  return undercuts.reduce((sum, { area, depth }) => sum + area * depth, 0);
}

function holes({ stumps = 0, materials }: EarthInput): Counted[] {
  const holes = stumps * stumpHole(materials);
  const soft = softGround(materials);
  return [
    ...(stumps > 0
      ? [
          counted(
            {
              id: "stumps",
              stage: "undercut",
              item: `Holes of ${stumps === 1 ? "one stump" : `${stumps} stumps`}, filled compacted`,
              how: "stumps on the plan × a round hole, width² × π ÷ 4 × depth",
            },
            holes,
            "m3",
          ),
        ]
      : []),
    ...(soft > 0
      ? [
          counted(
            {
              id: "undercut",
              stage: "undercut",
              item: "Soft ground dug out and filled again",
              how: "area × depth of every place typed; what comes out isn't reckoned as fill",
            },
            soft,
            "m3",
          ),
        ]
      : []),
  ];
}

function moved(input: EarthInput): Counted[] {
  const { cut, fill, error = 0, stumps = 0, trench, materials, truck } = input;
  const { swell, shrink, weights } = materials;
  const refilled = softGround(materials) + stumps * stumpHole(materials);
  const brought = broughtInside(input);
  const needed = fill - brought + refilled;
  const out = cut + softGround(materials);
  const looseWeight = weights.earth / swell;
  const reused = materials.cutAsFill ? Math.min(cut, needed / shrink) : 0;
  const fillLoose = (needed / shrink - reused) * swell;
  const cutLoose = (out - reused) * swell;
  const balance = cut - needed / shrink;
  const about = (value: number, factor = 1) =>
    error > 0 ? ([Math.max(0, value - error * factor), value + error * factor] as const) : null;
  const broughtIn = trucked(fillLoose, looseWeight, truck);
  const granular = stoneByTruck(brought, materials, truck);
  const takenOut = trucked(cutLoose, looseWeight, truck);
  const allOut = trucked(cutLoose + (trench?.leftOver ?? 0) * swell, looseWeight, truck);
  const also = refilled > 0 ? ", with what goes into holes and soft ground" : "";
  return [
    counted(
      {
        id: "fill",
        stage: "earth",
        item: "Fill, compacted in place",
        how: "inside the walls to the underside of the base course, outside to the underside of topsoil or stone, from the stripped ground up",
      },
      fill,
      "m3",
      { range: about(fill) },
    ),
    ...byKind(input),
    counted(
      {
        id: "fill-loose",
        stage: "earth",
        item: `${brought > 0 ? "Earth fill" : "Fill"}${materials.cutAsFill ? " to bring" : ""}, loose on the truck`,
        how: materials.cutAsFill
          ? `what the cut doesn't make: (compacted ÷ shrink − cut) × swell${also}`
          : `compacted ÷ shrink × swell${also}`,
      },
      fillLoose,
      "m3",
      { range: about(fillLoose, swell / shrink), trucked: broughtIn },
    ),
    ...(brought > 0
      ? [
          counted(
            {
              id: "slab-fill-loose",
              stage: "earth",
              item: "Sand or gravel under the slab, loose",
              how: "compacted × loose for one that lies compacted; no cut makes it",
            },
            granular.loose,
            "m3",
            { trucked: granular },
          ),
        ]
      : []),
    loads(
      "fill-loads",
      materials.cutAsFill ? "Loads of fill to bring" : "Loads of fill if all of it comes in",
      broughtIn.loads + granular.loads,
      input,
    ),
    counted(
      {
        id: "cut",
        stage: "earth",
        item: "Cut, in the bank",
        how: "below the stripped ground; the trench is told by itself",
      },
      cut,
      "m3",
      { range: about(cut) },
    ),
    counted(
      {
        id: "cut-loose",
        stage: "earth",
        item: materials.cutAsFill ? "Cut to take away, loose" : "Cut, loose",
        how: `${materials.cutAsFill ? "what the fill doesn't take: (bank − earth fill ÷ shrink) × swell" : "bank × swell"}${softGround(materials) > 0 ? ", with what comes out of soft ground" : ""}`,
      },
      cutLoose,
      "m3",
      { range: about(cutLoose, swell), trucked: takenOut },
    ),
    loads(
      "cut-loads",
      `Loads of cut${trench ? " and trench soil" : ""} ${materials.cutAsFill ? "to take away" : "if all of it goes out"}`,
      allOut.loads,
      input,
    ),
    balance >= 0
      ? counted(
          {
            id: "left-over",
            stage: "earth",
            item: "Left over if the cut is fit to use as fill",
            how: "cut − earth fill ÷ shrink, in the bank; what the trench leaves isn't in it",
          },
          balance,
          "m3",
        )
      : counted(
          {
            id: "short",
            stage: "earth",
            item: "Short if the cut is fit to use as fill",
            how: "earth fill ÷ shrink − cut, in the bank; what the trench leaves isn't in it",
          },
          -balance,
          "m3",
        ),
  ];
}

/** Compacted fill inside the walls that can't come from the cut, m3. */
function broughtInside({ fillInside = 0, slabFill }: EarthInput): number {
  return slabFill === "sand-gravel" ? fillInside : 0;
}

/** The fill by kind: what lies inside the walls may have to be clean sand or gravel. */
function byKind({ fill, fillInside, slabFill }: EarthInput): Counted[] {
  if (fillInside === undefined || slabFill === undefined || fill <= 0) return [];
  const kind = slabFill === "sand-gravel" ? "clean sand or gravel" : "earth";
  return [
    counted(
      {
        id: "fill-inside",
        stage: "earth",
        item: `of it inside the walls, ${kind}`,
        how: "from the stripped ground up to the underside of the base course, within the walls' inner faces",
      },
      fillInside,
      "m3",
    ),
    counted(
      {
        id: "fill-outside",
        stage: "earth",
        item: "of it outside, earth",
        how: "from the stripped ground up to the underside of topsoil or stone",
      },
      fill - fillInside,
      "m3",
    ),
  ];
}

function loads(id: string, item: string, count: number, { truck }: EarthInput): Counted {
  const how =
    truck.payload === null
      ? "loose ÷ what a truck holds, rounded up"
      : "loose ÷ what a truck holds, or weight ÷ what it may carry, whichever is more, rounded up";
  return counted({ id, stage: "earth", item, how }, count, "loads");
}
