/** The table of what shapes the ground: pads, terraces, berms, retaining walls, grade points; a row each. */
import {
  type Berm,
  type Edit,
  type GradePoint,
  type GroundPad,
  gradingEdits,
  type Project,
  type RetainingWall,
} from "../../document";
import type { Results } from "../../solve/results";
import type { Notation } from "../notation";
import { cannot, reckoned, typed, withLength, withNumber, withSlope } from "./cells";
import type { Maker } from "./model";

/** What a cell shows, and what typing in it changes. */
interface Cell {
  readonly text: string;
  readonly write: (project: Project, text: string) => Edit;
}

/** One shape; a column that isn't among its cells doesn't belong to it. */
interface Shape {
  readonly id: string;
  readonly kind: string;
  readonly cells: Readonly<Partial<Record<ColumnId, Cell>>>;
}

type ColumnId = "name" | "height" | "falls" | "topWidth" | "fillSlope" | "cutSlope" | "gravel" | "buried";

const columns = [
  typed("name", "name", false),
  reckoned("kind", "kind", false),
  typed("height", "height"),
  typed("falls", "falls"),
  typed("topWidth", "top width"),
  typed("fillSlope", "fill slopes, : 1"),
  typed("cutSlope", "cut slopes, : 1"),
  typed("gravel", "stone"),
  typed("buried", "down to its footing"),
];

export const shapes: Maker = ({ grading, building }, results, notation) => {
  const all = [
    ...grading.pads.map((pad) => padShape(pad, building?.floor ?? 0, results, notation)),
    ...grading.berms.map((berm) => bermShape(berm, notation)),
    ...grading.walls.map((wall) => wallShape(wall, notation)),
    ...grading.points.map((point) => pointShape(point, notation)),
  ];
  return {
    title: "Shapes of the ground",
    none: "No pad, terrace, berm, retaining wall or grade point yet. Draw them in the drive step.",
    columns,
    rows: all.map(({ id, kind, cells }) => ({
      id,
      cells: columns.map((column) =>
        column.id === "kind" ? kind : (cells[column.id as ColumnId]?.text ?? ""),
      ),
    })),
    write: (project, id, column, text) => {
      const shape = all.find((each) => each.id === id);
      if (!shape) return cannot("That shape is gone.");
      const cell = shape.cells[column as ColumnId];
      if (cell) return cell.write(project, text);
      const title = columns.find((each) => each.id === column)?.title.replace(/, : 1$/, "") ?? column;
      return cannot(`There is no “${title}” to a ${shape.kind}.`);
    },
  };
};

const name = (text: string, write: (project: Project, name: string) => Edit): Cell => ({
  text,
  write: (project, typedText) => write(project, typedText.trim()),
});

const number = (value: number, write: (project: Project, value: number) => Edit): Cell => ({
  text: String(value),
  write: (project, text) => withNumber(text, (read) => write(project, read)),
});

const length = (
  notation: Notation,
  m: number,
  least: number | null,
  write: (project: Project, m: number) => Edit,
): Cell => ({
  text: notation.length(m),
  write: (project, text) => withLength(text, notation, least, (read) => write(project, read)),
});

const padKinds = { parking: "parking pad", turning: "turning pad", terrace: "terrace" } as const;

function padShape(pad: GroundPad, floor: number, { grading }: Results, notation: Notation): Shape {
  const { id, level } = pad;
  const change = (project: Project, patch: Partial<Omit<GroundPad, "id">>) =>
    gradingEdits.changePad.run(project, { id, patch });
  const found = grading?.pads.find((each) => each.id === id)?.height;
  const middle = level.kind === "height" ? level.height : (found ?? floor);
  // What counts from the floor goes on counting from it.
  const levelAt = (m: number): GroundPad["level"] =>
    level.kind === "floor" ? { kind: "floor", above: m - floor } : { kind: "height", height: m };
  return {
    id,
    kind: padKinds[pad.use],
    cells: {
      name: name(pad.name, (project, text) => change(project, { name: text })),
      height: length(notation, middle, null, (project, m) => change(project, { level: levelAt(m) })),
      falls: {
        text: notation.slope(pad.fall),
        write: (project, text) => withSlope(text, notation, (fall) => change(project, { fall })),
      },
      fillSlope: number(pad.fillSlope, (project, fillSlope) => change(project, { fillSlope })),
      cutSlope: number(pad.cutSlope, (project, cutSlope) => change(project, { cutSlope })),
      gravel: length(notation, pad.gravel, 0, (project, gravel) => change(project, { gravel })),
    },
  };
}

function bermShape(berm: Berm, notation: Notation): Shape {
  const { id } = berm;
  const change = (project: Project, patch: Partial<Omit<Berm, "id">>) =>
    gradingEdits.changeBerm.run(project, { id, patch });
  return {
    id,
    kind: "berm",
    cells: {
      name: name(berm.name, (project, text) => change(project, { name: text })),
      height: length(notation, berm.height, null, (project, height) => change(project, { height })),
      topWidth: length(notation, berm.topWidth, 0, (project, topWidth) => change(project, { topWidth })),
      fillSlope: number(berm.sideSlope, (project, sideSlope) => change(project, { sideSlope })),
    },
  };
}

function wallShape(wall: RetainingWall, notation: Notation): Shape {
  const { id, exposed } = wall;
  const change = (project: Project, patch: Partial<Omit<RetainingWall, "id">>) =>
    gradingEdits.changeRetainingWall.run(project, { id, patch });
  return {
    id,
    kind: "retaining wall",
    cells: {
      name: name(wall.name, (project, text) => change(project, { name: text })),
      height: {
        text: exposed === null ? "" : notation.length(exposed),
        write: (project, text) =>
          text.trim() === ""
            ? change(project, { exposed: null })
            : withLength(text, notation, null, (m) => change(project, { exposed: m })),
      },
      buried: length(notation, wall.buried, 0, (project, buried) => change(project, { buried })),
    },
  };
}

function pointShape(point: GradePoint, notation: Notation): Shape {
  const { id } = point;
  const change = (project: Project, patch: Partial<Omit<GradePoint, "id">>) =>
    gradingEdits.changeGradePoint.run(project, { id, patch });
  return {
    id,
    kind: "grade point",
    cells: {
      name: name(point.name, (project, text) => change(project, { name: text })),
      height: length(notation, point.height, null, (project, height) => change(project, { height })),
      fillSlope: number(point.fillSlope, (project, fillSlope) => change(project, { fillSlope })),
      cutSlope: number(point.cutSlope, (project, cutSlope) => change(project, { cutSlope })),
    },
  };
}
