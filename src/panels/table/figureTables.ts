/** Tables of single figures, each a row with its name: the foundation's dimensions, the earth, the limits; and the sides. */
import {
  type ApronSide,
  buildingEdits,
  type Edit,
  gradingEdits,
  type Materials,
  type Project,
  type Rules,
  siteEdits,
} from "../../document";
import { dimension, dimensionsOf, dimensionWords, withDimension } from "../../document/foundationDimensions";
import { cornerName } from "../../grading";
import type { Notation } from "../notation";
import { cannot, reckoned, typed, withLength, withNumber, withSlope } from "./cells";
import type { Maker, TableModel } from "./model";

/** One figure of the plan. */
interface Figure {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly write: (project: Project, text: string) => Edit;
}

function figureTable(title: string, none: string, figures: readonly Figure[]): TableModel {
  return {
    title,
    none,
    columns: [reckoned("name", "what", false), typed("value", "figure")],
    rows: figures.map(({ id, name, text }) => ({ id, cells: [name, text] })),
    write: (project, row, column, text) => {
      const figure = figures.find(({ id }) => id === row);
      if (!figure) return cannot("That figure is gone.");
      return column === "value" ? figure.write(project, text) : cannot("Its name is not typed.");
    },
  };
}

/** A length that may be left empty where `empty` says so. */
function lengthOrNone(
  text: string,
  notation: Notation,
  least: number | null,
  then: (m: number | null) => Edit,
): Edit {
  return text.trim() === "" ? then(null) : withLength(text, notation, least, then);
}

export const foundation: Maker = ({ building }, _results, notation) =>
  figureTable(
    "Dimensions of the foundation",
    "No building yet. Draw it first.",
    building
      ? dimensionsOf(building.foundation).map(
          (key): Figure => ({
            id: key,
            name: dimensionWords[key],
            text: notation.length(dimension(building.foundation, key)),
            write: (project, text) =>
              withLength(text, notation, 0, (m) =>
                project.building
                  ? buildingEdits.changeFoundation.run(project, {
                      patch: withDimension(project.building.foundation, key, m),
                    })
                  : cannot("There is no building."),
              ),
          }),
        )
      : [],
  );

export const earth: Maker = ({ materials, grading }, _results, notation) => {
  const lengthOf = (key: "stripDepth" | "respread", name: string): Figure => ({
    id: key,
    name,
    text: notation.length(materials[key]),
    write: (project, text) =>
      withLength(text, notation, 0, (m) => siteEdits.changeMaterials.run(project, { patch: { [key]: m } })),
  });
  const ratioOf = (key: "swell" | "shrink" | "stoneLoose", name: string): Figure => ({
    id: key,
    name,
    text: String(materials[key]),
    write: (project, text) =>
      withNumber(text, (value) => siteEdits.changeMaterials.run(project, { patch: { [key]: value } })),
  });
  const hole = (key: keyof Materials["stumpHole"], name: string): Figure => ({
    id: key,
    name,
    text: notation.length(materials.stumpHole[key]),
    write: (project, text) =>
      withLength(text, notation, 0, (m) =>
        siteEdits.changeMaterials.run(project, {
          patch: { stumpHole: { ...project.materials.stumpHole, [key]: m } },
        }),
      ),
  });
  const slopeOf = (key: "fill" | "cut", name: string): Figure => ({
    id: key,
    name,
    text: String(grading.slopes[key]),
    write: (project, text) =>
      withNumber(text, (value) => siteEdits.changeSlopes.run(project, { patch: { [key]: value } })),
  });
  return figureTable("Earth and slopes", "", [
    lengthOf("stripDepth", "topsoil that is stripped"),
    lengthOf("respread", "topsoil back on top"),
    ratioOf("swell", "swell, loose for one in the bank"),
    ratioOf("shrink", "shrink, compacted for one in the bank"),
    ratioOf("stoneLoose", "stone, loose for one compacted"),
    hole("width", "stump holes, across"),
    hole("depth", "stump holes, deep"),
    slopeOf("fill", "fill slopes, : 1"),
    slopeOf("cut", "cut slopes, : 1"),
  ]);
};

type LengthRule = {
  [Key in keyof Rules]: Rules[Key] extends number | null ? Key : never;
}[keyof Rules];

/** Words of a limit, and whether it may be left empty. */
const limitRows: readonly (readonly [LengthRule, string, "length" | "slope" | "height"])[] = [
  ["aboveUphillGround", "top of wall above the high ground, at least", "length"],
  ["leastShowing", "wall that shows, at least", "length"],
  ["mostShowing", "wall that shows, at most", "length"],
  ["sidingClearance", "siding above the ground, at least", "length"],
  ["sidingLap", "siding laps over the wall by", "length"],
  ["intoUndisturbed", "footing into undisturbed ground, at least", "length"],
  ["aboveSwale", "ground above a swale's bed, at least", "length"],
  ["aboveWater", "floor above standing water, at least", "length"],
  ["roadLevel", "level of the road's gutter", "height"],
  ["aboveRoad", "wall above the gutter, at least", "length"],
  ["toRoad", "way of the water to the gutter", "length"],
  ["floodLevel", "level of the flood", "height"],
  ["aboveFlood", "floor above the flood, at least", "length"],
  ["leastOut", "wall out of the ground as it is, at least", "length"],
  ["greatestWall", "wall's height, at most", "length"],
  ["mostUnbalanced", "fill that a wall holds, at most", "length"],
  ["doorThreshold", "door's sill above the ground, at least", "length"],
  ["steepestDrive", "drive's slope, at most", "slope"],
  ["breakAtDoor", "drive's break at the landing, at most", "slope"],
  ["leastSwaleFall", "swale's fall, at least", "slope"],
];

/** These may be left empty: no limit, or not asked. */
const mayBeEmpty: ReadonlySet<LengthRule> = new Set<LengthRule>([
  "mostShowing",
  "roadLevel",
  "floodLevel",
  "leastOut",
  "greatestWall",
  "mostUnbalanced",
]);

export const limits: Maker = ({ rules }, _results, notation) =>
  figureTable(
    "Figures of the limits",
    "",
    limitRows.map(([key, name, kind]): Figure => {
      const value = rules[key];
      const set = (project: Project, m: number | null) =>
        siteEdits.changeRules.run(project, { patch: { [key]: m } });
      return {
        id: key,
        name,
        text: value === null ? "" : kind === "slope" ? notation.slope(value) : notation.length(value),
        write(project, text) {
          if (text.trim() === "" && !mayBeEmpty.has(key)) return cannot("This limit needs a figure.");
          if (kind === "slope") return withSlope(text, notation, (ratio) => set(project, ratio));
          return lengthOrNone(text, notation, kind === "height" ? null : 0, (m) => set(project, m));
        },
      };
    }),
  );

/** Each side of the building; an empty cell goes by what holds for all sides. */
export const sides: Maker = ({ building, grading }, _results, notation) => {
  const corners = building?.outline.length ?? 0;
  return {
    title: "Sides of the building",
    none: "No building yet. Draw it first.",
    columns: [
      reckoned("side", "side", false),
      typed("showing", "wall left showing"),
      typed("fall", "falls away"),
      typed("width", "apron's width"),
      typed("fill", "fill slope, : 1"),
      typed("cut", "cut slope, : 1"),
    ],
    rows: Array.from({ length: corners }, (_, wall) => {
      const own = grading.apron.sides.find((side) => side.wall === wall);
      const length = (m: number | null | undefined) => (m == null ? "" : notation.length(m));
      return {
        id: String(wall),
        cells: [
          `${cornerName(wall)}–${cornerName((wall + 1) % corners)}`,
          length(own?.showing),
          own?.fall == null ? "" : notation.slope(own.fall),
          length(own?.width),
          own?.fill == null ? "" : String(own.fill),
          own?.cut == null ? "" : String(own.cut),
        ],
      };
    }),
    write(project, row, column, text) {
      const wall = Number(row);
      if (!(wall < (project.building?.outline.length ?? 0))) return cannot("That side is gone.");
      const change = (patch: Partial<Omit<ApronSide, "wall">>) =>
        gradingEdits.changeApronSide.run(project, { wall, patch });
      if (column === "showing") return lengthOrNone(text, notation, 0, (showing) => change({ showing }));
      if (column === "width") return lengthOrNone(text, notation, 0, (width) => change({ width }));
      if (text.trim() === "" && (column === "fall" || column === "fill" || column === "cut"))
        return change({ [column]: null });
      if (column === "fall") return withSlope(text, notation, (fall) => change({ fall }));
      if (column === "fill" || column === "cut")
        return withNumber(text, (value) => change({ [column]: value }));
      return cannot("A side's name follows its corners.");
    },
  };
};
