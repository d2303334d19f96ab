/**
 * How much water comes at the worst of a storm, and how soon.
 *
 * Units   m2, m, m/s of rain, m3/s, seconds; slopes rise over run. C, n without unit.
 * Source  the rational formula Q = C i A; Kirpich 1940 as usually written (0.0195 L^0.77 S^-0.385 min, L in m); sheet flow and
 *         shallow concentrated flow as in TR-55 (1986): 0.007 (n L)^0.8 / (P2^0.5 s^0.4) h with feet and inches, and
 *         16.1345 (unpaved) or 20.3282 (paved) × √s ft/s.
 */

const foot = 0.3048;
const inch = 0.0254;

/** Peak flow, m3/s. */
export function rationalPeak(c: number, intensity: number, area: number): number {
  return c * intensity * area;
}

export interface CoverPart {
  readonly c: number;
  readonly area: number;
}

/** One C for several covers, weighted by area; null without any. */
export function weightedC(parts: readonly CoverPart[]): number | null {
  const area = parts.reduce((sum, part) => sum + part.area, 0);
  return area > 0 ? parts.reduce((sum, part) => sum + part.c * part.area, 0) / area : null;
}

/** Time of concentration of a small basin, s. */
export function kirpichTime(length: number, slope: number): number {
  return 60 * 0.0195 * length ** 0.77 * slope ** -0.385;
}

/** Time of water in a thin sheet, s. `rain`: depth of the two-year 24-hour storm, m. At most 100 ft are a sheet. */
export function sheetTime(n: number, length: number, slope: number, rain: number): number {
  const hours = (0.007 * ((n * length) / foot) ** 0.8) / (Math.sqrt(rain / inch) * slope ** 0.4);
  return 3600 * hours;
}

/** Speed of water that has gathered into shallow runs, m/s. */
export function shallowSpeed(slope: number, paved: boolean): number {
  return (paved ? 20.3282 : 16.1345) * Math.sqrt(slope) * foot;
}

/** A row of a local table: the storm lasts so long, s, and rains so hard, m/s. */
export interface Intensity {
  readonly duration: number;
  readonly intensity: number;
}

/**
 * Rain for a duration, from a table by its rows: between them straight on logarithms of both, beyond them the nearest
 * row's. Null without rows.
 */
export function intensityFor(rows: readonly Intensity[], duration: number): number | null {
  const table = [...rows].sort((a, b) => a.duration - b.duration);
  const [first, last] = [table[0], table.at(-1)];
  if (!first || !last) return null;
  if (duration <= first.duration) return first.intensity;
  if (duration >= last.duration) return last.intensity;
  const after = table.findIndex((row) => row.duration >= duration);
  const [a, b] = [table[after - 1] as Intensity, table[after] as Intensity];
  const share = Math.log(duration / a.duration) / Math.log(b.duration / a.duration);
  return a.intensity * (b.intensity / a.intensity) ** share;
}

/** A storm shorter than this isn't reckoned with, s: tables begin at five minutes. */
export const leastTime = 300;
