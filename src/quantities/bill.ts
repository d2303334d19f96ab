/**
 * The bill: what comes in, what goes out, and how each figure came about.
 *
 * Units   m3, m2, m, whole loads.
 * Method  Earth moved is measured in the bank once the topsoil is off. Loose = bank × swell,
 *         compacted = bank × shrink, so compacted fill takes fill ÷ shrink of bank earth. Loads are loose
 *         volume by what a truck holds, rounded up.
 * Source  First principles; swell and shrink are the user's figures.
 */
import type { Materials, Prices } from "../document/schema";
import type { BillItem, CostResult } from "../solve/results";

export interface BillInput {
  /** Earth to move after stripping: cut in the bank, fill as compacted, m3. */
  readonly cut: number;
  readonly fill: number;
  readonly disturbedArea: number;
  readonly concrete: {
    readonly wall: number;
    readonly footing: number;
    readonly slab: number;
    readonly base: number;
    readonly edge?: number;
    readonly pads?: number;
    readonly blocks?: { readonly count: number; readonly courses: number } | null;
  };
  readonly drives: readonly { readonly name: string; readonly id: string; readonly gravel: number }[];
  readonly materials: Materials;
  readonly truckVolume: number;
  readonly prices?: Prices;
  /** More concrete to order than the drawing holds, a share. */
  readonly concreteWaste?: number;
}

export function bill(input: BillInput): BillItem[] {
  const { prices = {}, concreteWaste = 0 } = input;
  return [...earth(input), ...stoneAndConcrete(input)].map((counted) => {
    const poured = concrete.includes(counted.id) && !(counted.id === "wall" && input.concrete.blocks);
    const waste = poured ? concreteWaste : 0;
    const price = isBought(counted.id) ? (prices[counted.id] ?? null) : null;
    return { ...counted, waste, price, cost: price === null ? null : counted.quantity * (1 + waste) * price };
  });
}

const concrete = ["slab", "edge", "pads", "footing", "wall"];
const boughtEarth = ["topsoil", "fill-loose", "cut-loose"];

/** Items that a price is typed for. Of each amount told in several ways, one: so that nothing is paid twice. */
export function isBought(id: string): boolean {
  return concrete.includes(id) || boughtEarth.includes(id) || id === "base" || id.startsWith("gravel-");
}

/** What the priced items come to, and which have no price yet. */
export function billCost(items: readonly BillItem[]): CostResult {
  return {
    total: items.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpriced: items
      .filter(({ id, quantity, price }) => isBought(id) && quantity > 0 && price === null)
      .map(({ id }) => id),
  };
}

type Counted = Omit<BillItem, "waste" | "price" | "cost">;

function earth({ cut, fill, disturbedArea, materials, truckVolume }: BillInput): Counted[] {
  const { swell, shrink, stripDepth } = materials;
  const fillLoose = (fill / shrink) * swell;
  const cutLoose = cut * swell;
  const balance = cut - fill / shrink;
  return [
    item(
      "topsoil",
      "Topsoil to strip",
      disturbedArea * stripDepth,
      "m3",
      "disturbed ground × depth of strip, in the bank; kept for the end",
    ),
    item(
      "fill",
      "Fill, compacted in place",
      fill,
      "m3",
      "inside the walls to the underside of the base course, outside to the finished ground or a drive's stone, from the stripped ground up",
    ),
    item("fill-loose", "Fill, loose on the truck", fillLoose, "m3", "compacted ÷ shrink × swell"),
    loads("fill-loads", "Loads of fill if all of it comes in", fillLoose, truckVolume),
    item("cut", "Cut, in the bank", cut, "m3", "below the stripped ground; trench and footing are not in it"),
    item("cut-loose", "Cut, loose", cutLoose, "m3", "bank × swell"),
    loads("cut-loads", "Loads of cut if all of it goes out", cutLoose, truckVolume),
    balance >= 0
      ? item(
          "left-over",
          "Left over if the cut is fit to use as fill",
          balance,
          "m3",
          "cut − fill ÷ shrink, in the bank",
        )
      : item(
          "short",
          "Short if the cut is fit to use as fill",
          -balance,
          "m3",
          "fill ÷ shrink − cut, in the bank",
        ),
  ];
}

function stoneAndConcrete({ concrete, drives }: BillInput): Counted[] {
  return [
    item(
      "base",
      "Base stone under the slab",
      concrete.base,
      "m3",
      "floor inside the walls × base, compacted",
    ),
    item("slab", "Concrete, slab", concrete.slab, "m3", "floor inside the walls × thickness"),
    ...(concrete.edge
      ? [
          item(
            "edge",
            "Concrete, thickened edge",
            concrete.edge,
            "m3",
            "section below the slab × the line of its middle",
          ),
        ]
      : []),
    ...(concrete.pads
      ? [item("pads", "Concrete, pads under posts", concrete.pads, "m3", "posts × round hole × thickness")]
      : []),
    ...(concrete.edge || concrete.pads ? [] : walls(concrete)),
    ...drives.map(({ id, name, gravel }) =>
      item(`gravel-${id}`, `Stone for ${name}`, gravel, "m3", "length × width × depth, compacted"),
    ),
  ];
}

function walls(concrete: BillInput["concrete"]): Counted[] {
  const { blocks } = concrete;
  return [
    item(
      "footing",
      "Concrete, footing",
      concrete.footing,
      "m3",
      "centreline of the wall × width × thickness, and the laps where it steps",
    ),
    blocks
      ? item(
          "wall",
          "Wall of blocks",
          concrete.wall,
          "m3",
          `${blocks.count} blocks in ${blocks.courses} courses; centreline × thickness × height, door openings are not taken off`,
        )
      : item(
          "wall",
          "Concrete, wall",
          concrete.wall,
          "m3",
          "centreline × thickness × height, deeper where it steps; door openings are not taken off",
        ),
  ];
}

function item(id: string, name: string, quantity: number, unit: BillItem["unit"], how: string): Counted {
  return { id, item: name, quantity, unit, how };
}

function loads(id: string, name: string, loose: number, truckVolume: number): Counted {
  // A rounding unit of volume is not another truck.
  return item(
    id,
    name,
    Math.max(0, Math.ceil(loose / truckVolume - 1e-9)),
    "loads",
    "loose ÷ what a truck holds, rounded up",
  );
}
