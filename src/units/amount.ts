/** Prints areas and volumes: m2 and m3 in, the reader's unit out. */
import { CUBIC_YARD, SHORT_TON, SQUARE_FOOT } from "./constants";
import type { AreaUnit, VolumeUnit } from "./notation";

/** Narrow no-break space, which metric writing puts between thousands. */
const THIN = "\u202f";

export function formatArea(m2: number, unit: AreaUnit): string {
  if (!Number.isFinite(m2)) return "–";
  return unit === "ft2" ? `${grouped(m2 / SQUARE_FOOT, 100, ",")} ft²` : `${grouped(m2, 1000, THIN)} m²`;
}

/** Square metres in an acre (43,560 ft²) and in a hectare. */
const ACRE = 43560 * SQUARE_FOOT;
const HECTARE = 10000;

/** A lot's area as land is sold: "0.279 acres", "0.113 ha"; three decimals. */
export function formatLand(m2: number, unit: AreaUnit): string {
  if (!Number.isFinite(m2)) return "–";
  return unit === "ft2" ? `${(m2 / ACRE).toFixed(3)} acres` : `${(m2 / HECTARE).toFixed(3)} ha`;
}

export function formatVolume(m3: number, unit: VolumeUnit): string {
  if (!Number.isFinite(m3)) return "–";
  return unit === "yd3" ? `${grouped(m3 / CUBIC_YARD, 100, ",")} yd³` : `${grouped(m3, 1000, THIN)} m³`;
}

/** One decimal below `wholeFrom`, none from there on; thousands set apart. */
function grouped(value: number, wholeFrom: number, separator: string): string {
  const tenths = Math.round(Math.abs(value) * 10) / 10;
  const text = tenths < wholeFrom ? tenths.toFixed(1) : Math.round(Math.abs(value)).toFixed(0);
  const [whole = "", decimals] = text.split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, separator);
  const sign = value < 0 && tenths > 0 ? "\u2212" : "";
  return sign + (decimals === undefined ? spaced : `${spaced}.${decimals}`);
}

/** An amount in the user's own money: whole above a thousand, else to the hundredth; thousands as with the plan's volumes. */
export function formatMoney(amount: number, unit: VolumeUnit): string {
  if (Math.abs(amount) < 1000) return amount.toFixed(2);
  return grouped(Math.round(amount), 1000, unit === "yd3" ? "," : THIN);
}

/** "8.7 tons" (of 2,000 lb), "7.9 t": one decimal below a hundred. */
export function formatMass(kg: number, unit: "ton" | "t"): string {
  if (!Number.isFinite(kg)) return "–";
  return unit === "ton" ? `${grouped(kg / SHORT_TON, 100, ",")} tons` : `${grouped(kg / 1000, 100, THIN)} t`;
}
