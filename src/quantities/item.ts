/** One line of the bill before its price. Volumes m3, weights kg. */
import type { Materials, Truck } from "../document/schema";
import type { BillItem, TrenchDig } from "../solve/results";

export type Counted = Omit<BillItem, "price" | "cost">;

/** What the trench takes, m3 in the bank. */
export type TrenchVolumes = Pick<TrenchDig, "volume" | "backfill" | "leftOver">;

type Head = Pick<Counted, "id" | "item" | "stage" | "how">;
type Extra = Partial<Pick<Counted, "range" | "waste" | "trucked">>;

export function counted(head: Head, quantity: number, unit: Counted["unit"], extra: Extra = {}): Counted {
  return { ...head, quantity, unit, range: null, waste: 0, trucked: null, ...extra };
}

/** How a loose volume comes: by the truck's volume or by what it may carry, whichever takes more loads. */
export function trucked(loose: number, density: number, truck: Truck): NonNullable<Counted["trucked"]> {
  const mass = loose * density;
  const byVolume = loose / truck.volume;
  const byMass = truck.payload === null ? 0 : mass / truck.payload;
  // A rounding unit is not another truck.
  return { loose, mass, loads: Math.max(0, Math.ceil(Math.max(byVolume, byMass) - 1e-9)) };
}

/** Loose stone for a volume that is to lie compacted. */
export function stoneByTruck(compacted: number, materials: Materials, truck: Truck) {
  return trucked(compacted * materials.stoneLoose, materials.weights.stone, truck);
}
