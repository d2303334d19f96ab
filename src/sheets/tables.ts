/** The sheet's tables as words and figures, straight from the results. */
import type { Project } from "../document/schema";
import { climbText, gradeRuns, swaleText, withoutUnit } from "../drawing";
import type { CornerResult, DriveResult, Results, SwaleResult } from "../solve/results";
import { formatLength, formatSigned, roundingFor } from "../units";
import { usesFeet } from "./scales";

export interface Column {
  readonly head: string;
  readonly align: "left" | "right";
  readonly strong?: boolean;
  /** An empty box to write in, of this width in mm. */
  readonly blank?: number;
}

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  /** A row of one cell is a heading across the table. */
  readonly rows: readonly (readonly string[])[];
  readonly note?: string;
}

/** Figures in the project's notation, heights told from the mark where there is one. */
export interface Figures {
  readonly length: (m: number) => string;
  readonly height: (z: number) => string;
  readonly reading: (m: number) => string;
  /** A reading in a table: its unit stands in the title where it is the lengths' own. */
  readonly readingCell: (m: number) => string;
  readonly fromMark: boolean;
  /** A table's cell: metric figures without the unit, which stands in the table's title. */
  readonly cell: (text: string) => string;
  /** ", m" after a table's title in metric units, else empty. */
  readonly unit: string;
}

export function figuresFor(project: Project, results: Results): Figures {
  const { display } = project;
  const { mark } = results.survey;
  const length = (m: number) => formatLength(m, display.length, display.rounding);
  const reading = (m: number) => formatLength(m, display.reading, roundingFor(display.reading, display));
  return {
    length,
    height: (z) => (mark ? formatSigned(z - mark.height, display.length, display.rounding) : length(z)),
    reading,
    readingCell: (m) => (display.reading === display.length ? withoutUnit(reading(m)) : reading(m)),
    fromMark: mark !== null,
    cell: withoutUnit,
    unit: usesFeet(display) ? "" : `, ${display.length}`,
  };
}

/** Least depth worth digging or filling, m: below it the ground stays as it is. */
const leastWork = 0.006;

/** "dig 3¼″", "fill 2′ 0″", "as it is". */
export function workText(existing: number, finished: number, figures: Figures): string {
  const depth = finished - existing;
  if (Math.abs(depth) < leastWork) return "as it is";
  return `${depth < 0 ? "dig" : "fill"} ${figures.length(Math.abs(depth))}`;
}

const guess = "≈ ";

function cornerRow(corner: CornerResult, results: Results, figures: Figures): string[] {
  const trench = results.trench.find((one) => one.corner === corner.name);
  const about = corner.guessed ? guess : "";
  const out = corner.wallAboveGround;
  return [
    corner.name,
    about + figures.height(corner.ground),
    about + (out < 0 ? `${figures.cell(figures.length(-out))} under` : figures.length(out)),
    figures.height(corner.finished),
    figures.height(corner.ground + corner.wallAboveGround),
    trench ? figures.height(trench.bottom) : "",
    trench ? about + figures.length(trench.belowGround) : "",
  ];
}

/** Ground now and how far the wall stands above it, finished ground, top of wall, bottom of trench and how deep to dig, at each corner. */
export function cornerTable(results: Results, figures: Figures): Table | null {
  if (results.corners.length === 0) return null;
  const guessed = results.corners.some((corner) => corner.guessed);
  return {
    title: `Corners and trench${figures.unit}`,
    columns: [
      { head: "at", align: "left", strong: true },
      { head: "ground now", align: "right" },
      { head: "wall above it", align: "right" },
      { head: "finished ground", align: "right", strong: true },
      { head: "top of wall", align: "right" },
      { head: "bottom of trench", align: "right", strong: true },
      { head: "dig from now", align: "right" },
    ],
    rows: results.corners.map((corner) => cornerRow(corner, results, figures).map(figures.cell)),
    ...(guessed ? { note: "≈ rests on guessed ground: no shots around it." } : {}),
  };
}

/** Rows next to each other that say the same of the same thing are set out once, with their places together. */
export function setoutTable(results: Results, figures: Figures): Table | null {
  const { rows, beam, mark } = results.setout;
  if (rows.length === 0) return null;
  const reads: Column[] = beam === null ? [] : [{ head: "reads at the survey's beam", align: "right" }];
  return {
    title: `${mark === null ? "Heights to set out" : `Set out from ${mark}`}${figures.unit}`,
    columns: [
      { head: "what", align: "left", strong: true },
      { head: "where", align: "left" },
      { head: figures.fromMark ? "from the mark" : "height", align: "right", strong: true },
      ...reads,
      { head: "reads today", align: "right", blank: 17 },
    ],
    rows: rows.map((row) => [
      row.what,
      row.where,
      figures.cell(figures.height(row.height)),
      ...(beam === null ? [] : [row.reading === null ? "" : figures.readingCell(row.reading)]),
      "",
    ]),
  };
}

/** Stations that a table needs: both ends, where the grade changes, and one every so many metres between. */
function worthTelling<S extends { readonly distance: number }>(
  stations: readonly S[],
  gradeOf: (station: S) => number | null,
  spacing: number,
): S[] {
  const kept: S[] = [];
  for (const [i, station] of stations.entries()) {
    const before = stations[i - 1];
    const last = kept[kept.length - 1];
    const ends = i === 0 || i === stations.length - 1;
    const change = before !== undefined && Math.abs((gradeOf(station) ?? 0) - (gradeOf(before) ?? 0)) > 0.004;
    const far = last === undefined || station.distance - last.distance >= spacing - 1e-9;
    if (ends || change || far) kept.push(station);
  }
  return kept;
}

const pegSpacing = 6;

function driveRows(drive: DriveResult, project: Project, figures: Figures): string[][] {
  const steepest = gradeRuns(drive.stations).reduce(
    (most, run) => (Math.abs(run.grade) > Math.abs(most) ? run.grade : most),
    0,
  );
  const rows = worthTelling(drive.stations, (station) => station.grade, pegSpacing).map((station, i, all) => [
    i === 0
      ? "road edge"
      : i === all.length - 1
        ? "end at the building"
        : `${figures.length(station.distance)} on`,
    figures.cell(figures.height(station.existing)),
    figures.cell(figures.height(station.finished)),
    figures.cell(workText(station.existing, station.finished, figures)),
    station.grade === null ? "" : climbText(station.grade, project),
  ]);
  const head = `${drive.name}, ${figures.length(drive.length)} long, steepest ${climbText(steepest, project)}`;
  return [[head], ...rows];
}

function swaleRows(swale: SwaleResult, project: Project, figures: Figures): string[][] {
  const drawn = project.grading.swales.find((one) => one.id === swale.id);
  const rows = worthTelling(swale.stations, (station) => station.fall, pegSpacing).map((station, i, all) => [
    i === 0 ? "high end" : i === all.length - 1 ? "outlet" : `${figures.length(station.distance)} on`,
    figures.cell(figures.height(station.existing)),
    figures.cell(figures.height(station.bed)),
    figures.cell(workText(station.existing, station.bed, figures)),
    station.fall === null ? "" : climbText(-station.fall, project),
  ]);
  const head = drawn ? swaleText(drawn, swale, project) : swale.name;
  return [[`${head}, ${figures.length(swale.length)} long`], ...rows];
}

/** Finished heights along the drives' centrelines and the swales' beds. */
export function routeTable(project: Project, results: Results, figures: Figures): Table | null {
  const rows = [
    ...results.drives.flatMap((drive) => driveRows(drive, project, figures)),
    ...results.water.swales.flatMap((swale) => swaleRows(swale, project, figures)),
  ];
  if (rows.length === 0) return null;
  return {
    title: `Along the drive and the swale${figures.unit}`,
    columns: [
      { head: "place", align: "left" },
      { head: "ground now", align: "right" },
      { head: "finished", align: "right", strong: true },
      { head: "dig or fill", align: "right" },
      { head: "from here on", align: "right" },
    ],
    rows,
  };
}
