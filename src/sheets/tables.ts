/** The sheet's tables as words and figures, straight from the results. */
import type { Drive, Project } from "../document/schema";
import {
  type CornerTies,
  climbText,
  gradeRuns,
  gradeText,
  lengthText,
  swaleText,
  tapeTies,
  withoutUnit,
} from "../drawing";
import { loadsText } from "../solve/load-words";
import type { CornerResult, DriveResult, Results, SwaleResult } from "../solve/results";
import { type RouteStations, routeStations } from "../solve/route-stations";
import { depthInWords, formatLength, formatSigned, formatVolume, roundingFor, roundingStep } from "../units";
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
  /** What to add to the mark's reading to find a height, with its sign, in the rod's notation. */
  readonly addToMark: (z: number) => string;
  /** How far one height lies over another, of the figures as they are printed: who subtracts them finds just this, m. */
  readonly over: (z: number, other: number) => number;
  readonly fromMark: boolean;
  /** A table's cell: metric figures without the unit, which stands in the table's title. */
  readonly cell: (text: string) => string;
  /** ", m" after a table's title in metric units, else empty. */
  readonly unit: string;
  /** The same for a table of readings. */
  readonly readingUnit: string;
}

export function figuresFor(project: Project, results: Results): Figures {
  const { display } = project;
  const { mark } = results.survey;
  const length = (m: number) => formatLength(m, display.length, display.rounding);
  const reading = (m: number) => formatLength(m, display.reading, roundingFor(display.reading, display));
  const step = roundingStep(display.length, display.rounding);
  const printed = (m: number) => (step > 0 ? Math.round(m / step) * step : m);
  const from = mark?.height ?? 0;
  return {
    length,
    height: (z) => (mark ? formatSigned(z - mark.height, display.length, display.rounding) : length(z)),
    reading,
    addToMark: (z) =>
      formatSigned((mark?.height ?? 0) - z, display.reading, roundingFor(display.reading, display)),
    over: (z, other) => printed(z - from) - printed(other - from),
    fromMark: mark !== null,
    cell: withoutUnit,
    unit: usesFeet(display) ? "" : `, ${display.length}`,
    readingUnit: ["m", "cm", "mm"].includes(display.reading) ? `, ${display.reading}` : "",
  };
}

/** Least depth worth digging or filling, m: below it the ground stays as it is. */
const leastWork = 0.006;

/** "dig 3¼″", "fill 2′ 0″", "as it is". */
export function workText(existing: number, finished: number, figures: Figures): string {
  const depth = figures.over(finished, existing);
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

/** "Wall 8″ thick, 4′ 0″ high, on a footing 16″ wide, 8″ thick." */
function foundationWords({ building }: Project, { length }: Figures): string[] {
  if (!building) return [];
  const { wallThickness, wallHeight, footingWidth, footingThickness, slabThickness, baseThickness } =
    building.foundation;
  return [
    `Wall ${length(wallThickness)} thick, ${length(wallHeight)} high, on a footing ${length(footingWidth)} wide, ${length(footingThickness)} thick.`,
    `Slab ${length(slabThickness)} on ${length(baseThickness)} of stone.`,
  ];
}

/** Ground now and how far the wall stands above it, finished ground, top of wall, bottom of trench and how deep to dig, at each corner. */
export function cornerTable(project: Project, results: Results, figures: Figures): Table | null {
  if (results.corners.length === 0) return null;
  const guessed = results.corners.some((corner) => corner.guessed);
  const notes = [
    ...foundationWords(project, figures),
    ...(guessed ? ["≈ rests on guessed ground: no shots around it."] : []),
  ];
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
    note: notes.join(" "),
  };
}

/** Two tapes to each corner, from points that can be found on the lot. */
export function tieTable(project: Project, results: Results, figures: Figures): Table | null {
  const ties = tapeTies(project, results);
  if (ties.length === 0) return null;
  const { mark } = results.survey;
  const rows = ties.map((tie) => tieRow(tie, mark?.at != null, figures));
  const lacking = ties.flatMap(({ corner, other }) => (other ? [] : [corner]));
  return {
    title: `Tape to the corners${figures.unit}`,
    columns: [
      { head: "corner", align: "left", strong: true },
      { head: mark?.at ? `to ${mark.name}` : "tape", align: "right", strong: true },
      ...(mark?.at ? [] : [{ head: "", align: "left" } as const]),
      { head: "and", align: "right", strong: true },
      { head: "", align: "left" },
    ],
    rows,
    note: tieNote(lacking, mark !== null && !mark.at),
  };
}

function tieRow(tie: CornerTies, fromMark: boolean, figures: Figures): string[] {
  const told = (one: CornerTies["other"]) =>
    one ? [figures.cell(figures.length(one.length)), `to ${one.to}`] : ["", ""];
  const [length = ""] = told(tie.fromMark);
  return [tie.corner, ...(fromMark ? [length] : told(tie.instead)), ...told(tie.other)];
}

/** How to tape, and what the table can't give. */
function tieNote(lacking: readonly string[], unplaced: boolean): string {
  const corners = `${lacking.length === 1 ? "corner" : "corners"} ${lacking.join(", ")}`;
  return [
    ...(unplaced ? ["The mark has no place on the plan: nothing is taped from it."] : []),
    ...(lacking.length > 0 ? [`No two known points fix ${corners} by tape.`] : []),
    "Hold the tape level; then check the sides and the diagonals.",
  ].join(" ");
}

/** What to look for on the rod: all in the rod's notation, so that nothing has to be converted on site. */
export function setoutTable(results: Results, figures: Figures): Table | null {
  const { rows, beam, mark } = results.setout;
  if (rows.length === 0) return null;
  const reads: Column[] = beam === null ? [] : [{ head: "reads at the survey's beam", align: "right" }];
  const unit = figures.fromMark ? figures.readingUnit : figures.unit;
  return {
    title: `${mark === null ? "Heights to set out" : `Set out from ${mark}`}${unit}`,
    columns: [
      { head: "what", align: "left", strong: true },
      { head: "where", align: "left" },
      { head: figures.fromMark ? "add to the mark's reading" : "height", align: "right", strong: true },
      ...reads,
      { head: "reads today", align: "right", blank: 17 },
    ],
    rows: rows.map((row) => [
      row.what,
      row.where,
      figures.cell(figures.fromMark ? figures.addToMark(row.height) : figures.height(row.height)),
      ...(beam === null ? [] : [row.reading === null ? "" : figures.cell(figures.reading(row.reading))]),
      "",
    ]),
  };
}

function driveRows(drive: DriveResult, told: RouteStations, project: Project, figures: Figures): string[][] {
  const drawn = project.grading.drives.find((one) => one.id === drive.id);
  const stone = drawn?.gravel ?? 0;
  const steepest = gradeRuns(drive.stations).reduce(
    (most, run) => (Math.abs(run.grade) > Math.abs(most) ? run.grade : most),
    0,
  );
  const stations = told.drives.get(drive.id) ?? [];
  const rows = stations.map(({ name, station }, i) => [
    name,
    i === 0
      ? "road edge"
      : i === stations.length - 1
        ? "end"
        : figures.cell(figures.length(station.distance)),
    figures.cell(figures.height(station.existing)),
    figures.cell(figures.height(station.finished)),
    figures.cell(figures.height(station.finished - stone)),
    figures.cell(workText(station.existing, station.finished - stone, figures)),
    station.grade === null ? "" : climbText(station.grade, project),
  ]);
  const shape = drawn
    ? `, ${figures.length(drawn.width)} wide, ${figures.length(stone)} of stone, side slopes ${runText(drawn.sideSlope)}${acrossText(drawn, project)}`
    : "";
  return [
    [`${drive.name}: ${figures.length(drive.length)} long${shape}, steepest ${climbText(steepest, project)}`],
    ...rows,
    ...drive.curves.map((curve) => [
      `${curve.kind} from ${figures.length(curve.from)} to ${figures.length(curve.to)}: a curve of ${figures.length(curve.to - curve.from)}, ${figures.length(Math.abs(curve.offset))} ${curve.kind === "crest" ? "under" : "over"} the break at ${figures.length(curve.at)}`,
    ]),
  ];
}

/** ", crown 2.0 %, shoulders 1′ 6″": of what a drive's section across has. */
function acrossText({ across, shoulder }: Drive, project: Project): string {
  const falls = {
    level: "",
    crown: `, crown ${gradeText(across.fall, project.display)}`,
    left: `, falls ${gradeText(across.fall, project.display)} to the left`,
    right: `, falls ${gradeText(across.fall, project.display)} to the right`,
  }[across.kind];
  return shoulder.width > 0 ? `${falls}, shoulders ${lengthText(shoulder.width, project.display)}` : falls;
}

/** "3:1": run for one of rise. */
function runText(run: number): string {
  return `${Number(run.toFixed(2))}:1`;
}

function swaleRows(swale: SwaleResult, told: RouteStations, project: Project, figures: Figures): string[][] {
  const drawn = project.grading.swales.find((one) => one.id === swale.id);
  const stations = told.swales.get(swale.id) ?? [];
  const rows = stations.map(({ name, station }, i) => [
    name,
    i === 0
      ? "high end"
      : i === stations.length - 1
        ? "outlet"
        : figures.cell(figures.length(station.distance)),
    figures.cell(figures.height(station.existing)),
    figures.cell(figures.height(station.bed)),
    "",
    figures.cell(workText(station.existing, station.bed, figures)),
    station.fall === null ? "" : climbText(-station.fall, project),
  ]);
  const head = drawn ? swaleText(drawn, swale, project) : swale.name;
  const shape = drawn
    ? `, bottom ${figures.length(drawn.bottomWidth)} wide, side slopes ${runText(drawn.sideSlope)}`
    : "";
  return [[`${head}: ${figures.length(swale.length)} long${shape}`], ...rows];
}

/** "Along the drive and the swale": of what there is. */
function routeTitle({ drives, water: { swales } }: Results): string {
  const one = (count: number, word: string) => (count === 0 ? [] : [`the ${word}${count > 1 ? "s" : ""}`]);
  const along = [...one(drives.length, "drive"), ...one(swales.length, "swale")].join(" and ");
  return along === "" ? "Shapes of the ground" : `Along ${along}`;
}

/** Pads, grade points and retaining walls, a line each. */
function shapeRows({ grading, display }: Project, results: Results, figures: Figures): string[][] {
  const { pads = [], walls = [] } = results.grading ?? {};
  return [
    ...pads.map((pad) => [
      `${pad.name}: ${figures.height(pad.height)} at its middle, from ${figures.height(pad.lowest)} to ${figures.height(pad.highest)}`,
    ]),
    ...grading.points.map((point) => [`${point.name}: ${figures.height(point.height)}`]),
    ...grading.berms.map((berm) => [
      `${berm.name}: ${figures.length(berm.height)} over the ground, top ${figures.length(berm.topWidth)} wide, side slopes ${runText(berm.sideSlope)}`,
    ]),
    ...walls.map((wall) => [
      `${wall.name}: ground behind it up to ${lengthText(wall.exposed, display)} higher, ${lengthText(wall.fromFooting, display)} from the bottom of its footing${wall.loadedBy ? `, loaded by ${wall.loadedBy}` : ""}; over 4 ft (1.22 m) or loaded: permit and engineer`,
    ]),
  ];
}

/** Finished heights along the drives' centrelines and the swales' beds. */
export function routeTable(project: Project, results: Results, figures: Figures): Table | null {
  const { drives, water } = results;
  const told = routeStations(project.grading, drives, water.swales);
  const rows = [
    ...drives.flatMap((drive) => driveRows(drive, told, project, figures)),
    ...water.swales.flatMap((swale) => swaleRows(swale, told, project, figures)),
    ...shapeRows(project, results, figures),
  ];
  if (rows.length === 0) return null;
  const underStone: Column[] =
    drives.length > 0 ? [{ head: "earth under the stone", align: "right", strong: true }] : [];
  const shown = rows.map((row) =>
    row.length > 1 && drives.length === 0 ? row.filter((_, i) => i !== 4) : row,
  );
  return {
    title: `${routeTitle(results)}${figures.unit}`,
    columns: [
      { head: "at", align: "left", strong: true },
      { head: "along", align: "left" },
      { head: "ground now", align: "right" },
      { head: "finished", align: "right", strong: true },
      ...underStone,
      { head: "dig or fill", align: "right" },
      { head: "from here on", align: "right" },
    ],
    rows: shown,
    note: `Dig or fill is from the ground as it is, unstripped${drives.length > 0 ? ", to the earth under the drive's stone" : ""}.`,
  };
}

/** Volumes with their basis: the ground as it is, then the stripped ground, compacted and as trucks bring it. */
export function earthTable(project: Project, results: Results, figures: Figures): Table | null {
  const { earthwork, bill } = results;
  if (!earthwork) return null;
  const { display, materials, truck } = project;
  const volume = (m3: number) => formatVolume(m3, display.volume);
  const { inside, outside, total } = earthwork;
  const quantity = (id: string) => bill.find((item) => item.id === id)?.quantity ?? 0;
  const [out, brought] = [
    quantity("cut-loose") + quantity("trench-left"),
    quantity("fill-loose") + quantity("slab-fill-loose"),
  ];
  const strip = figures.length(materials.stripDepth);
  const stripped = [
    [`Once ${strip} of topsoil is off and piled apart (${volume(quantity("topsoil"))})`],
    ["in the bank; compacted", volume(quantity("cut")), volume(quantity("fill"))],
    [
      `${materials.cutAsFill ? "loose, to take away or bring" : "loose"}${quantity("trench-left") > 0 ? ", with what the trench leaves" : ""}`,
      volume(out),
      volume(brought),
    ],
    [
      `${materials.cutAsFill ? "" : "all "}by truck, ${volume(truck.volume)} each`,
      loadsText(quantity("cut-loads"), out, truck.volume),
      loadsText(quantity("fill-loads"), brought, truck.volume),
    ],
  ];
  return {
    title: "Earth to move",
    columns: [
      { head: "", align: "left" },
      { head: "cut", align: "right", strong: true },
      { head: "fill", align: "right", strong: true },
    ],
    rows: [
      ["From the ground as it is, unstripped"],
      ["under the floor", volume(inside.cut), volume(inside.fill)],
      ["outside the walls", volume(outside.cut), volume(outside.fill)],
      ["together", volume(total.cut), volume(total.fill)],
      ...(quantity("fill") > 0 || quantity("cut") > 0 ? stripped : []),
    ],
    note: earthNote(project, results),
  };
}

/** How far the volumes can be trusted, and what they reach down to. */
function earthNote({ display, grading }: Project, { earthwork, surface, bill }: Results): string {
  if (!earthwork) return "";
  const volume = (m3: number) => formatVolume(m3, display.volume);
  const granular = bill.find(({ id }) => id === "slab-fill-loose")?.quantity ?? 0;
  const { outside, guessedShare } = earthwork;
  const deepest = [surface?.greatestCut, surface?.greatestFill]
    .flatMap((one) => (one ? [depthInWords(one.depth, display.length, display.rounding)] : []))
    .join(", ");
  const share = Math.round(guessedShare * 100);
  return [
    ...(granular > 0 ? [`${volume(granular)} of the loose fill is sand or gravel for under the slab.`] : []),
    ...(grading.drives.length > 0
      ? ["Unstripped counts to the top of the drive's stone, stripped to its underside."]
      : []),
    ...(deepest ? [`Deepest outside the walls: ${deepest}.`] : []),
    ...(volume(outside.error) === volume(0)
      ? []
      : [`Outside the walls within ${volume(outside.error)} each.`]),
    ...(share > 0 ? [`${share} % of this rests on guessed ground.`] : []),
  ].join(" ");
}
