/** The plan's tables by name; features, drives, swales, quantities and set-out are made here. */
import {
  type Drive,
  type Edit,
  type Feature,
  featureForms,
  featureWords,
  type Project,
  type Swale,
  siteEdits,
  usualKeepClear,
} from "../../document";
import { billFigure } from "../../help";
import type { Results } from "../../solve/results";
import { swaleVerdict } from "../../solve/swale-verdict";
import type { Notation } from "../notation";
import { cannot, notTyped, reckoned, typed, withLength, withNumber, withSlope } from "./cells";
import { earth, foundation, limits, sides } from "./figureTables";
import type { Maker, RowTexts, TableModel } from "./model";
import { shapes } from "./shapeTable";

export const tableNames = [
  "features",
  "drives",
  "swales",
  "shapes",
  "sides",
  "foundation",
  "earth",
  "limits",
  "quantities",
  "setout",
] as const;
export type TableName = (typeof tableNames)[number];

/** What their tabs are called, and how the dialog is found. */
export const tableTitles: Readonly<Record<TableName, string>> = {
  features: "Features",
  drives: "Drives",
  swales: "Swales",
  shapes: "Shapes",
  sides: "Sides",
  foundation: "Foundation",
  earth: "Earth",
  limits: "Limits",
  quantities: "Quantities",
  setout: "Set-out",
};

export function tableOf(name: TableName, project: Project, results: Results, notation: Notation): TableModel {
  return makers[name](project, results, notation);
}

const features: Maker = ({ lot }, _results, notation) => ({
  title: "Features of the lot",
  none: "No features yet: trees, a well, buried lines. Draw them in the lot step, or type or paste places here.",
  columns: [
    typed("name", "name", false),
    typed("kind", "kind", false),
    typed("keepClear", "keep clear"),
    typed("east", "east"),
    typed("north", "north"),
  ],
  rows: lot.features.map((feature) => {
    const at = feature.points.length === 1 ? feature.points[0] : undefined;
    return {
      id: feature.id,
      cells: [
        feature.name,
        featureWords[feature.kind],
        notation.length(feature.keepClear),
        at ? notation.length(at[0]) : `${feature.points.length} points`,
        at ? notation.length(at[1]) : "",
      ],
    };
  }),
  write: (project, id, column, text) => writeFeature(project, id, column, text, notation),
  add: (project, texts) => addFeature(project, texts, notation),
});

/** A feature that is one place; what isn't typed of it stays open. */
function addFeature(project: Project, texts: RowTexts, notation: Notation): Edit {
  const text = (column: string) => texts[column]?.trim() ?? "";
  const kind = text("kind") === "" ? "other" : kindCalled(text("kind"));
  if (!kind) return noSuchKind(text("kind"));
  if (featureForms[kind] !== "place")
    return cannot(`A ${featureWords[kind]} has several places: draw it on the plan.`);
  if (text("east") === "" || text("north") === "")
    return cannot("A new feature needs how far east and how far north it stands.");
  // As when it is placed on the plan: what the trade usually keeps, until a distance is typed.
  const usual = usualKeepClear({ kind, trunk: null })?.m ?? 0;
  const clearance = text("keepClear");
  const add = (east: number, north: number, keepClear: number) =>
    siteEdits.addFeature.run(project, { kind, name: text("name"), points: [[east, north]], keepClear });
  return withLength(text("east"), notation, null, (east) =>
    withLength(text("north"), notation, null, (north) =>
      clearance === ""
        ? add(east, north, usual)
        : withLength(clearance, notation, 0, (clear) => add(east, north, clear)),
    ),
  );
}

const kinds = Object.entries(featureWords) as [Feature["kind"], string][];

function kindCalled(text: string): Feature["kind"] | null {
  const wanted = text.trim().toLowerCase();
  return kinds.find(([name, words]) => words.toLowerCase() === wanted || name === wanted)?.[0] ?? null;
}

function noSuchKind(text: string): Edit {
  return cannot(`There is no kind "${text.trim()}". Kinds: ${kinds.map(([, words]) => words).join(", ")}.`);
}

function writeFeature(project: Project, id: string, column: string, text: string, notation: Notation): Edit {
  const feature = project.lot.features.find((each) => each.id === id);
  if (!feature) return cannot("That feature is gone.");
  const change = (patch: Partial<Omit<Feature, "id">>) => siteEdits.changeFeature.run(project, { id, patch });
  if (column === "name") return change({ name: text.trim() });
  if (column === "kind") {
    const kind = kindCalled(text);
    return kind ? change({ kind }) : noSuchKind(text);
  }
  if (column === "keepClear") return withLength(text, notation, 0, (keepClear) => change({ keepClear }));
  const at = feature.points[0];
  if (!at || feature.points.length > 1) return cannot("It has several points: move them on the plan.");
  return withLength(text, notation, null, (m) =>
    change({ points: [column === "east" ? [m, at[1]] : [at[0], m]] }),
  );
}

const drives: Maker = ({ grading }, results, notation) => ({
  title: "Drives",
  none: "No drive yet. Draw it in the drive step.",
  columns: [
    typed("name", "name", false),
    typed("width", "width"),
    typed("roadHeight", "road height"),
    typed("landing", "landing"),
    typed("landingFall", "landing falls"),
    typed("sideSlope", "side slopes, : 1"),
    typed("gravel", "gravel"),
    reckoned("length", "length"),
    reckoned("steepest", "steepest"),
  ],
  rows: grading.drives.map((drive) => {
    const result = results.drives.find(({ id }) => id === drive.id);
    return {
      id: drive.id,
      cells: [
        drive.name,
        notation.length(drive.width),
        drive.roadHeight === null ? "" : notation.length(drive.roadHeight),
        notation.length(drive.landing.length),
        notation.slope(drive.landing.fall),
        String(drive.sideSlope),
        notation.length(drive.gravel),
        result ? notation.length(result.length) : "",
        result ? notation.slope(result.steepest) : "",
      ],
    };
  }),
  write: (project, id, column, text) => writeDrive(project, id, column, text, notation),
});

function writeDrive(project: Project, id: string, column: string, text: string, notation: Notation): Edit {
  const drive = project.grading.drives.find((each) => each.id === id);
  if (!drive) return cannot("That drive is gone.");
  const change = (patch: Partial<Omit<Drive, "id">>) => siteEdits.changeDrive.run(project, { id, patch });
  const { landing } = drive;
  switch (column) {
    case "name":
      return change({ name: text.trim() });
    case "width":
      return withLength(text, notation, null, (width) => change({ width }));
    case "roadHeight":
      return text.trim() === ""
        ? change({ roadHeight: null })
        : withLength(text, notation, null, (roadHeight) => change({ roadHeight }));
    case "landing":
      return withLength(text, notation, 0, (length) => change({ landing: { ...landing, length } }));
    case "landingFall":
      return withSlope(text, notation, (fall) => change({ landing: { ...landing, fall } }));
    case "sideSlope":
      return withNumber(text, (sideSlope) => change({ sideSlope }));
    case "gravel":
      return withLength(text, notation, 0, (gravel) => change({ gravel }));
    default:
      return notTyped();
  }
}

const swales: Maker = ({ grading, rules }, results, notation) => ({
  title: "Swales",
  none: "No swale yet. Draw it in the water step.",
  columns: [
    typed("name", "name", false),
    typed("depth", "depth at its high end"),
    typed("fall", "bed falls"),
    typed("bottomWidth", "bottom width"),
    typed("sideSlope", "side slopes, : 1"),
    reckoned("length", "length"),
    reckoned("leastFall", "least fall"),
    reckoned("verdict", "it", false),
  ],
  rows: grading.swales.map((swale) => {
    const result = results.water.swales.find(({ id }) => id === swale.id);
    return {
      id: swale.id,
      cells: [
        swale.name,
        notation.length(swale.depth),
        swale.fall === null ? "" : notation.slope(swale.fall),
        notation.length(swale.bottomWidth),
        String(swale.sideSlope),
        result ? notation.length(result.length) : "",
        result ? notation.slope(result.leastFall) : "",
        result ? swaleVerdict(result, rules.leastSwaleFall) : "",
      ],
    };
  }),
  write: (project, id, column, text) => writeSwale(project, id, column, text, notation),
});

function writeSwale(project: Project, id: string, column: string, text: string, notation: Notation): Edit {
  const change = (patch: Partial<Omit<Swale, "id">>) => siteEdits.changeSwale.run(project, { id, patch });
  switch (column) {
    case "name":
      return change({ name: text.trim() });
    case "depth":
      return withLength(text, notation, 0, (depth) => change({ depth }));
    case "fall":
      return text.trim() === ""
        ? change({ fall: null })
        : withSlope(text, notation, (fall) => change({ fall }));
    case "bottomWidth":
      return withLength(text, notation, 0, (bottomWidth) => change({ bottomWidth }));
    case "sideSlope":
      return withNumber(text, (sideSlope) => change({ sideSlope }));
    default:
      return notTyped();
  }
}

const quantities: Maker = (_project, { bill }, notation) => ({
  title: "Quantities",
  none: "Nothing to count yet: the bill follows the ground, the building and its floor.",
  columns: [
    reckoned("item", "item", false),
    reckoned("quantity", "quantity"),
    reckoned("how", "how it is counted", false),
  ],
  rows: bill.map((item) => ({ id: item.id, cells: [item.item, billFigure(item, notation), item.how] })),
  write: notTyped,
});

const setout: Maker = (_project, { setout: marks }, notation) => ({
  title: "Set-out",
  none: "Heights to set out follow once there is a mark and a building.",
  columns: [
    reckoned("what", "what", false),
    reckoned("where", "where", false),
    reckoned("height", "height"),
    reckoned("fromMark", "from the mark"),
    reckoned("reading", "to read"),
  ],
  rows: marks.rows.map((row, index) => ({
    id: String(index),
    cells: [
      row.what,
      row.where,
      notation.length(row.height),
      row.fromMark === null ? "" : notation.aboveBelow(row.fromMark),
      row.reading === null ? "" : notation.reading(row.reading),
    ],
  })),
  write: notTyped,
});

const makers: Readonly<Record<TableName, Maker>> = {
  features,
  drives,
  swales,
  shapes,
  sides,
  foundation,
  earth,
  limits,
  quantities,
  setout,
};
