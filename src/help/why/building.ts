/** Where the building's area, a corner's height out of the ground and the trench come from. */
import { soundLot } from "../../document/lot";
import type { Point } from "../../document/schema";
import { signedArea } from "../../geometry";
import { type Asked, firstPrinciples, type Why } from "./why";

export function areaWhy({ project, figures }: Asked): Why | null {
  const outline = project.building?.outline;
  return outline
    ? outlineWhy("Area on the ground", outline, figures, "outside of the foundation wall")
    : null;
}

export function lotAreaWhy({ project, results, figures }: Asked): Why | null {
  const { outline } = soundLot(project.lot);
  if (outline.length < 3) return null;
  const told = outlineWhy("Area of the lot", outline, figures, "lot lines");
  const { lot } = results.plot;
  const segments = lot === null ? 0 : lot.area - Math.abs(signedArea(outline));
  if (lot === null || Math.abs(segments) < 1e-6 * lot.area) return told;
  return {
    ...told,
    figure: figures.area(lot.area),
    inputs: [
      { name: "Round it, along the curves", figure: figures.length(lot.perimeter) },
      { name: "As drawn, by short pieces along the curves", figure: figures.area(lot.area - segments) },
      {
        name: segments > 0 ? "Left between pieces and curves" : "Between pieces and curves, too much",
        figure: figures.area(Math.abs(segments)),
      },
    ],
  };
}

function outlineWhy(title: string, outline: readonly Point[], figures: Asked["figures"], of: string): Why {
  const sides = outline.map((from, i) => between(from, outline[(i + 1) % outline.length] ?? from));
  const [a = 0, b = 0] = sides;
  const area = Math.abs(signedArea(outline));
  const square = outline.length === 4 && Math.abs(a * b - area) < 1e-6 * area;
  return {
    title,
    figure: figures.area(area),
    inputs: square
      ? [
          { name: "One side", figure: figures.length(a) },
          { name: "The other", figure: figures.length(b) },
        ]
      : [
          { name: "Corners", figure: String(outline.length) },
          { name: "Round it", figure: figures.length(sides.reduce((sum, side) => sum + side, 0)) },
        ],
    rule: `What the ${of} enclose${of.endsWith("s") ? "" : "s"}, measured level.`,
    formula: square ? "side × side" : "half the sum, round the corners, of x × next y − next x × y",
    source: square ? firstPrinciples : `${firstPrinciples}: the surveyor's cross-multiplied coordinates`,
  };
}

function between([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

/** The floor above the ground at a corner. */
export function cornerWhy({ results, figures }: Asked, name: string): Why | null {
  const corner = results.corners.find((each) => each.name === name);
  const { floor } = results;
  if (!corner || floor === null) return null;
  const out = corner.floorAboveGround;
  return {
    title: `Floor above the ground at ${corner.name}`,
    figure: out < 0 ? `${figures.length(-out)} below` : figures.length(out),
    inputs: [
      { name: "Floor", figure: figures.length(floor) },
      {
        name: corner.guessed ? "Ground at the corner, guessed" : "Ground at the corner",
        figure: figures.length(corner.ground),
      },
    ],
    rule: corner.guessed
      ? "The ground as it is lies outside the shots here, and is guessed from the nearest of them."
      : "The ground as it is, on the triangle between the three shots round the corner.",
    formula: "floor − ground",
    source: firstPrinciples,
  };
}

export function trenchWhy({ project, results, figures }: Asked): Why | null {
  const { building } = project;
  if (results.trench.length === 0 || !building || results.topOfWall === null) return null;
  const bottom = Math.min(...results.trench.map((corner) => corner.bottom));
  const { foundation } = building;
  const top = { name: "Top of wall", figure: figures.length(results.topOfWall) };
  const told = { title: "Bottom of trench", figure: figures.length(bottom), source: firstPrinciples };
  if (foundation.kind === "posts")
    return {
      ...told,
      inputs: [{ name: "Hole into undisturbed ground", figure: figures.length(foundation.posts.holeDepth) }],
      rule: "Every hole goes so far below undisturbed ground where it stands; this is the lowest at a corner.",
      formula: "bottom of hole = undisturbed ground − depth of hole",
    };
  if (foundation.kind === "thickened-edge")
    return {
      ...told,
      inputs: [top, { name: "Depth of the edge", figure: figures.length(foundation.edge.depth) }],
      rule: "The edge is poured with the slab, level all round.",
      formula: "bottom of edge = top of slab − depth of edge",
    };
  const { wallHeight, footingThickness } = foundation;
  const parts = [
    top,
    { name: "Wall height", figure: figures.length(wallHeight) },
    { name: "Footing thickness", figure: figures.length(footingThickness) },
  ];
  const level = results.topOfWall - wallHeight - footingThickness;
  const down = level - bottom;
  if (down < 1e-6)
    return {
      ...told,
      inputs: parts,
      rule: "The trench reaches down to the bottom of the footing, level all round.",
      formula: "bottom of trench = top of wall − wall height − footing thickness",
    };
  return {
    ...told,
    inputs: [...parts, { name: "Steps down", figure: figures.length(down) }],
    rule: "The footing steps down where a level one would lack depth; this is the lowest at a corner.",
    formula: "bottom of trench = top of wall − wall height − footing thickness − steps",
  };
}
