/**
 * The bill in the order of work: what comes in, what goes out, and how each figure came about.
 *
 * Units   m3, m2, m, pieces, whole loads, hours; weights kg.
 * Method  Volumes by material are kept apart; each that is trucked tells its loose volume, weight and loads too. Hours are
 *         volumes by what the user's machine and truck do in an hour.
 * Source  First principles; every rate, weight and price is the user's figure.
 */
import type { Prices, Work } from "../document/schema";
import type { BillItem, CostResult } from "../solve/results";
import { type BuildingInput, buildingItems } from "./building";
import { type EarthInput, earthItems, topsoilItems } from "./earth";
import { type Counted, counted, stoneByTruck } from "./item";

/** A drive or a pad with stone on it; `top` is the finer layer, part of the stone. */
export interface StoneBed {
  readonly id: string;
  readonly name: string;
  readonly area: number;
  readonly thickness: number;
  readonly top?: number;
}

export interface BillInput extends EarthInput, BuildingInput {
  readonly drives: readonly StoneBed[];
  readonly pads?: readonly StoneBed[];
  readonly work?: Work;
  readonly prices?: Prices;
}

export function bill(input: BillInput): BillItem[] {
  const { prices = {} } = input;
  const items = [
    ...earthItems(input),
    ...buildingItems(input),
    ...[...input.drives, ...(input.pads ?? [])].flatMap((bed) => stone(bed, input)),
    ...topsoilItems(input),
  ];
  return [...items, ...hours(items, input)].map((item) => {
    const price = isBought(item.id) ? (prices[item.id] ?? null) : null;
    return { ...item, price, cost: price === null ? null : item.quantity * (1 + item.waste) * price };
  });
}

const amountsToldTwice = [
  "fill",
  "fill-inside",
  "fill-outside",
  "fill-loads",
  "cut",
  "cut-loads",
  "left-over",
  "short",
  "stumps",
  "undercut",
  "posts",
  "topsoil-back",
  "topsoil-left",
];

/** Items that a price is typed for. Of each amount told in several ways, one: so that nothing is paid twice. */
export function isBought(id: string): boolean {
  return !amountsToldTwice.includes(id);
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

function stone({ id, name, area, thickness, top = 0 }: StoneBed, { materials, truck }: BillInput): Counted[] {
  const finer = Math.min(top, thickness);
  const layer = (part: string, label: string, depth: number) =>
    counted(
      { id: `${part}-${id}`, stage: "drive", item: label, how: "area on the plan × depth, compacted" },
      area * depth,
      "m3",
      { trucked: stoneByTruck(area * depth, materials, truck) },
    );
  if (finer === 0) return [layer("gravel", `Stone for ${name}`, thickness)];
  return [
    layer("gravel", `Stone for ${name}, lower layer`, thickness - finer),
    layer("gravel-top", `Stone for ${name}, upper layer`, finer),
  ];
}

/** Hours of machine and truck, where the user's rates are known. */
function hours(items: readonly Counted[], { work }: BillInput): Counted[] {
  if (!work) return [];
  const amount = (...ids: readonly string[]) =>
    items.reduce((sum, { id, quantity }) => (ids.includes(id) ? sum + quantity : sum), 0);
  const stoneLaid = items.reduce(
    (sum, { stage, unit, quantity }) =>
      ["base", "drive"].includes(stage) && unit === "m3" ? sum + quantity : sum,
    0,
  );
  const dug = amount("topsoil", "undercut", "cut", "trench-dig", "hole-dig");
  const placed = amount("fill", "stumps", "undercut", "trench-back", "topsoil-back") + stoneLaid;
  const loads =
    amount("fill-loads", "cut-loads") +
    items.reduce(
      (sum, { stage, trucked }) =>
        ["earth", "trench", "strip"].includes(stage) ? sum : sum + (trucked?.loads ?? 0),
      0,
    );
  const machine = (work.dig ? dug / work.dig : 0) + (work.place ? placed / work.place : 0);
  return [
    ...(work.dig || work.place
      ? [
          counted(
            {
              id: "machine-hours",
              stage: "hours",
              item: "Machine",
              how: [
                work.dig ? "topsoil, soft ground, cut and trench ÷ what it digs in an hour" : "",
                work.place
                  ? "fill, trench soil, topsoil and stone ÷ what it places and compacts in an hour"
                  : "",
              ]
                .filter((part) => part !== "")
                .join(", and "),
            },
            machine,
            "hours",
          ),
        ]
      : []),
    ...(work.turn
      ? [
          counted(
            {
              id: "truck-hours",
              stage: "hours",
              item: "Truck",
              how: "loads in and out, all fill brought in, all cut and what the trench leaves taken away × hours for the way there and back",
            },
            loads * work.turn,
            "hours",
          ),
        ]
      : []),
  ];
}
