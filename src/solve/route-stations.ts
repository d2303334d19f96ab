/** The stations of drives and swales that are told, with the names that every table and the plan give them. */
import type { Point } from "../geometry";
import type { DriveResult, DriveStation, SwaleResult, SwaleStation } from "./results";

export interface NumberedStation<S> {
  /** "D1", "S3": counted on over all drives, and over all swales. */
  readonly name: string;
  readonly station: S;
}

export interface RouteStations {
  readonly drives: ReadonlyMap<string, readonly NumberedStation<DriveStation>[]>;
  readonly swales: ReadonlyMap<string, readonly NumberedStation<SwaleStation>[]>;
}

interface Route {
  readonly id: string;
  readonly line: readonly Point[];
}

/** Pegs stand no farther apart than about this, m. */
const pegSpacing = 6;
/** A grade that changes by more than this gets a station. */
const gradeChange = 0.004;
/** A station this near to a bend stands for it, m. */
const atBend = 0.02;

/**
 * Both ends, every bend and change of grade, and between them one peg about every 6 m (20 ft).
 *
 * Units   metres along the centreline or bed.
 * Source  First principles.
 */
export function routeStations(
  grading: { readonly drives: readonly Route[]; readonly swales: readonly Route[] },
  drives: readonly DriveResult[],
  swales: readonly SwaleResult[],
): RouteStations {
  return {
    drives: numbered("D", grading.drives, drives, (station) => station.grade),
    swales: numbered("S", grading.swales, swales, (station) => station.fall),
  };
}

function numbered<S extends { readonly distance: number }>(
  letter: string,
  routes: readonly Route[],
  results: readonly { readonly id: string; readonly stations: readonly S[] }[],
  gradeOf: (station: S) => number | null,
): Map<string, readonly NumberedStation<S>[]> {
  let count = 0;
  return new Map(
    results.map(({ id, stations }) => {
      const bends = bendsOf(routes.find((route) => route.id === id)?.line ?? []);
      const told = worthTelling(stations, gradeOf, bends);
      return [id, told.map((station) => ({ name: `${letter}${++count}`, station }))];
    }),
  );
}

/** Distances along a line at which it turns. */
function bendsOf(line: readonly Point[]): number[] {
  let passed = 0;
  return line.map((point, i) => {
    const before = line[i - 1];
    if (before) passed += Math.hypot(point[0] - before[0], point[1] - before[1]);
    return passed;
  });
}

function worthTelling<S extends { readonly distance: number }>(
  stations: readonly S[],
  gradeOf: (station: S) => number | null,
  bends: readonly number[],
): S[] {
  const must = stations.map((station, i) => {
    const before = stations[i - 1];
    if (before === undefined || i === stations.length - 1) return true;
    const change = Math.abs((gradeOf(station) ?? 0) - (gradeOf(before) ?? 0)) > gradeChange;
    return change || bends.some((bend) => Math.abs(bend - station.distance) < atBend);
  });
  const kept: S[] = [];
  for (const [i, station] of stations.entries()) {
    const since = station.distance - (kept[kept.length - 1]?.distance ?? 0);
    const next = stations.find((_, k) => k > i && must[k]);
    const until = next ? next.distance - station.distance : 0;
    if (must[i] || (since >= pegSpacing - 1e-9 && until >= pegSpacing / 2)) kept.push(station);
  }
  return kept;
}
