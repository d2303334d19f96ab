/**
 * What the building itself takes: concrete, blocks, bars, forms, sheet, stone and pipe of the drain, base stone.
 *
 * Units   m3, m2, m, pieces.
 * Source  Volumes come from the foundation's take-off; first principles.
 */
import type { Materials, Truck } from "../document/schema";
import type { FoundationTakeOff } from "../solve/results";
import { type Counted, counted, stoneByTruck, type TrenchVolumes, trucked } from "./item";

/** The parts of a take-off; those a kind of foundation doesn't have may be missing. */
export type Taken = Pick<FoundationTakeOff, "wall" | "footing" | "slab" | "base"> &
  Partial<
    Pick<FoundationTakeOff, "edge" | "pads" | "steel" | "forms" | "insulation" | "vapourSheet" | "drain">
  > & {
    readonly blocks?: { readonly count: number; readonly courses: number } | null;
  };

export interface BuildingInput {
  readonly concrete: Taken;
  /** Null: no trench is dug. */
  readonly trench?: TrenchVolumes | null;
  /** More concrete to order than the drawing holds, a share. */
  readonly concreteWaste?: number;
  /** Posts in holes: how many, how long together from hole to floor, m, and the holes' soil, m3 in the bank. */
  readonly posts?: { readonly count: number; readonly length: number; readonly holes: number } | null;
  readonly materials: Materials;
  readonly truck: Truck;
}

export function buildingItems(input: BuildingInput): Counted[] {
  return [
    ...trenchSoil(input),
    ...postHoles(input),
    ...poured(input),
    ...countsOf(input.concrete),
    ...drain(input),
    ...base(input),
  ];
}

/** What the trench gives is told apart from cut and fill: whether it is fit for fill shows when it is dug. */
function trenchSoil({ trench, materials: { swell, weights }, truck }: BuildingInput): Counted[] {
  if (!trench) return [];
  const of = (id: string, item: string, how: string, volume: number, extra = {}) =>
    counted({ id, stage: "trench", item, how }, volume, "m3", extra);
  const loose = trench.leftOver * swell;
  return [
    of(
      "trench-dig",
      "Trench to dig, in the bank",
      "section × the line of the wall, below the stripped ground or what the cut leaves",
      trench.volume,
    ),
    of(
      "trench-back",
      "Trench soil that goes back, compacted",
      "trench − footing and wall in it, in thin lifts",
      trench.backfill,
    ),
    of(
      "trench-left",
      "Trench soil left over, loose",
      "(trench in the bank − what goes back compacted ÷ shrink) × swell",
      loose,
      {
        trucked: trucked(loose, weights.earth / swell, truck),
      },
    ),
  ];
}

function postHoles({ posts, materials: { swell, weights }, truck }: BuildingInput): Counted[] {
  if (!posts || posts.count === 0) return [];
  const of = (stage: "trench" | "foundation", id: string, item: string, how: string) => ({
    id,
    stage,
    item,
    how,
  });
  return [
    counted(
      of(
        "trench",
        "hole-dig",
        "Holes to dig, in the bank",
        "posts × round hole × depth below undisturbed ground",
      ),
      posts.holes,
      "m3",
      { trucked: trucked(posts.holes * swell, weights.earth / swell, truck) },
    ),
    counted(
      of("foundation", "posts", "Posts", "round the walls at the spacing typed"),
      posts.count,
      "pieces",
    ),
    counted(
      of(
        "foundation",
        "post-length",
        "Posts, length together",
        "from the pad in each hole to the floor; add what carries on to the eave, and order the next length sold",
      ),
      posts.length,
      "m",
    ),
  ];
}

function poured({ concrete, concreteWaste = 0 }: BuildingInput): Counted[] {
  const of = (id: string, item: string, volume: number, how: string, waste = concreteWaste) =>
    counted({ id, stage: "foundation", item, how }, volume, "m3", { waste });
  const { edge = 0, pads = 0, blocks } = concrete;
  const walls = [
    of(
      "footing",
      "Concrete, footing",
      concrete.footing,
      "centreline of the wall × width × thickness, and the laps where it steps",
    ),
    blocks
      ? counted(
          {
            id: "blocks",
            stage: "foundation",
            item: "Blocks",
            how: `${blocks.courses} courses round the centreline of the wall, cut ones whole; door openings are not taken off`,
          },
          blocks.count,
          "pieces",
        )
      : of(
          "wall",
          "Concrete, wall",
          concrete.wall,
          "centreline × thickness × height, deeper where it steps; door openings are not taken off",
        ),
  ];
  return [
    ...(edge || pads ? [] : walls),
    ...(edge
      ? [of("edge", "Concrete, thickened edge", edge, "section below the slab × the line of its middle")]
      : []),
    ...(pads ? [of("pads", "Concrete, pads under posts", pads, "posts × round hole × thickness")] : []),
    ...(concrete.slab > 0
      ? [of("slab", "Concrete, slab", concrete.slab, "floor inside the walls × thickness")]
      : []),
  ];
}

/** What is bought by the piece, the length or the area. */
function countsOf({ steel, forms, insulation, vapourSheet = 0 }: Taken): Counted[] {
  const of = (id: string, item: string, quantity: number, unit: Counted["unit"], how: string) =>
    quantity > 0 ? [counted({ id, stage: "foundation", item, how }, quantity, unit)] : [];
  const formed = forms ? forms.footing + forms.wall + forms.edge : 0;
  return [
    ...of(
      "steel",
      "Bars",
      steel?.total ?? 0,
      "m",
      "simple counts along, up and across, with laps; how many there must be is a designer's business",
    ),
    ...of("forms", "Forms, both sides", formed, "m2", "faces of footing, poured wall and edge"),
    ...of("insulation", "Insulation under the slab", insulation?.area ?? 0, "m2", "floor inside the walls"),
    ...of(
      "sheet",
      "Sheet under the floor",
      vapourSheet,
      "m2",
      "floor inside the walls × 10 ÷ 9.5 for laps of 6 in on a 10 ft roll, and the slab's thickness turned up all round",
    ),
  ];
}

function drain({ concrete, materials, truck }: BuildingInput): Counted[] {
  const { drain: taken } = concrete;
  if (!taken) return [];
  return [
    counted(
      {
        id: "drain-pipe",
        stage: "drain",
        item: "Drain pipe",
        how: "round the outside of the footing; its way to an outlet isn't in it",
      },
      taken.pipe,
      "m",
    ),
    counted(
      {
        id: "drain-stone",
        stage: "drain",
        item: "Drain stone",
        how: "12 in beyond the footing and 6 in over it, round the building",
      },
      taken.stone,
      "m3",
      { trucked: stoneByTruck(taken.stone, materials, truck) },
    ),
  ];
}

function base({ concrete, materials, truck }: BuildingInput): Counted[] {
  if (concrete.base <= 0) return [];
  return [
    counted(
      {
        id: "base",
        stage: "base",
        item: concrete.slab > 0 ? "Base stone under the slab" : "Base stone inside the walls",
        how: "floor inside the walls × base, compacted",
      },
      concrete.base,
      "m3",
      { trucked: stoneByTruck(concrete.base, materials, truck) },
    ),
  ];
}
