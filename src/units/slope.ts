/**
 * Reads and prints slopes. Inside a slope is rise over run; a drive says 8 %, a drain 1 in 50, an earth apron
 * 6″ in 10′, a bank 3:1.
 */
import { FOOT } from "./constants";
import { formatLength } from "./formatLength";
import { plainSigns } from "./lengthTokens";
import type { SlopeKind } from "./notation";
import { parseLength } from "./parseLength";

export type ParsedSlope =
  | { readonly ok: true; readonly ratio: number }
  | { readonly ok: false; readonly message: string };

const TEN_FEET = 10 * FOOT;
/** Flatter than 1 in this is level to any reader. */
const FLATTEST = 10_000;
const NUMBER = String.raw`(\d+(?:[.,]\d+)?|[.,]\d+)`;

/** Finer than usual, so that no slope worth a word is printed as nothing. */
function percentText(steepness: number): string {
  const text = (steepness * 100).toFixed(1);
  return Number(text) === 0 && steepness * FLATTEST >= 1 ? (steepness * 100).toFixed(2) : text;
}

function inTenFeet(ratio: number): string {
  const usual = formatLength(ratio * TEN_FEET, "in", 8);
  const isNothing = !/[1-9¼-¾⅐-⅞]/.test(usual);
  return isNothing && Math.abs(ratio) * FLATTEST >= 1 ? formatLength(ratio * TEN_FEET, "in", 32) : usual;
}

/** "5.0 %", "1 in 20", "6″ in 10′"; a fall against the direction of travel has a minus. */
export function formatSlope(ratio: number, kind: SlopeKind): string {
  if (!Number.isFinite(ratio)) return "–";
  const steepness = Math.abs(ratio);
  const sign = (text: string, nothing: boolean) => (ratio < 0 && !nothing ? `\u2212${text}` : text);
  if (kind === "percent") {
    const text = percentText(steepness);
    return sign(`${text} %`, Number(text) === 0);
  }
  if (kind === "ratio") {
    if (steepness * FLATTEST < 1) return "level";
    const run = 1 / steepness;
    return sign(`1 in ${run < 10 ? String(Math.round(run * 10) / 10) : run.toFixed(0)}`, false);
  }
  return `${inTenFeet(ratio)} in 10′`;
}

/**
 * Reads 5 %, 1 in 20, 1:20, 6" in 10', 1/4" per ft, or a bare number of the given kind (percent; 1 in so much;
 * inches in ten feet). In a:b the larger number is the run, so 3:1 and 1:3 are the same bank.
 */
export function parseSlope(text: string, kind: SlopeKind): ParsedSlope {
  const plain = plainSigns(text).toLowerCase();
  const negative = plain.startsWith("-");
  const body = negative || plain.startsWith("+") ? plain.slice(1).trim() : plain;
  const ratio = steepness(body, kind);
  if (ratio === null || !Number.isFinite(ratio)) {
    return {
      ok: false,
      message:
        plain === ""
          ? `Nothing is typed here yet. ${accepted(kind)}`
          : `Can't read "${text.trim()}" as a slope. ${accepted(kind)}`,
    };
  }
  return { ok: true, ratio: (negative ? -ratio : ratio) + 0 };
}

function steepness(body: string, kind: SlopeKind): number | null {
  const percent = matchNumbers(body, `^${NUMBER} ?(?:%|percent|per cent)$`);
  if (percent !== null) return (percent[0] ?? 0) / 100;
  if (kind === "in-per-10ft" && /^[\d ]*\d+\/\d+$/.test(body)) return riseInRun(`${body}" in 10'`);
  const colon = matchNumbers(body, `^${NUMBER} ?[:/] ?${NUMBER}$`);
  if (colon !== null) return Math.min(...colon) / Math.max(...colon);
  const oneIn = matchNumbers(body, `^${NUMBER} in ${NUMBER}$`);
  if (oneIn !== null) return (oneIn[0] ?? 0) / (oneIn[1] ?? 0);
  const bare = matchNumbers(body, `^${NUMBER}$`);
  if (bare !== null) return bareSlope(bare[0] ?? 0, kind);
  return riseInRun(body);
}

function bareSlope(value: number, kind: SlopeKind): number | null {
  if (kind === "percent") return value / 100;
  if (kind === "in-per-10ft") return value / 120;
  return value === 0 ? null : 1 / value;
}

/** 6" in 10', 6 inches in 10 feet, 1/4" per ft, 20 mm per m. Both sides must carry a unit. */
function riseInRun(body: string): number | null {
  const match = /^(.*[^\d./ ].*?)(?: in | per | ?\/ ?)([^/]*[^\d./ ])$/.exec(body);
  if (match === null) return null;
  const run = /^\d/.test(match[2] ?? "") ? match[2] : `1 ${match[2]}`;
  const rise = parseLength(match[1] ?? "", "in");
  const along = parseLength(run ?? "", "ft");
  return rise.ok && along.ok && along.m > 0 ? rise.m / along.m : null;
}

function matchNumbers(body: string, pattern: string): number[] | null {
  const match = new RegExp(pattern).exec(body);
  return match === null ? null : match.slice(1).map((number) => Number(number.replace(",", ".")));
}

function accepted(kind: SlopeKind): string {
  const bare = {
    percent: "percent",
    ratio: "the run for one of rise",
    "in-per-10ft": "inches in ten feet",
  }[kind];
  return `Write a slope like 5 %, 1 in 20, 3:1 or 6" in 10'; a number alone is taken as ${bare}.`;
}
