/**
 * A section through the foundation, to scale: the wall or a door's sill, footing, floor, ground as it is and finished.
 *
 * Units   metres: x from the wall's outside face inwards, y up from the finished floor; sizes of texts on paper, mm.
 */
import type { DimensionKey } from "../document/foundationDimensions";
import { earthBelowFloor, hasSlab, hasStemWall } from "../document/foundationMeasures";
import type { Foundation } from "../document/schema";
import type { Bounds } from "../geometry";
import type { DrawingMark, XY } from "./marks";
import type { StyleName } from "./styles";

export interface SectionFacts {
  readonly foundation: Foundation;
  readonly topOfWallAboveFloor: number;
  /** Heights over the floor at the wall. */
  readonly existing: number;
  readonly finished: number;
  readonly bottom: number;
  /** Fall of the finished ground away from the wall, rise over run. */
  readonly fall: number;
  /** Through a door: its sill below the floor. */
  readonly sillBelowFloor: number | null;
}

/** A dimension on the section: what it measures, and where its figure stands. */
export interface SectionDimension {
  readonly key: DimensionKey;
  readonly from: XY;
  readonly to: XY;
}

/** What a section says in figures: heights over the finished floor are told as the sheet tells heights. */
export interface SectionFigures {
  readonly height: (aboveFloor: number) => string;
  readonly length: (m: number) => string;
}

export interface FoundationSection {
  readonly marks: readonly DrawingMark[];
  readonly dimensions: readonly SectionDimension[];
  /** Lengths that follow from others: how far the footing steps down here. */
  readonly measures: readonly Pick<SectionDimension, "from" | "to">[];
  readonly bounds: Bounds;
}

/** How far the section reaches outside and inside of the wall's face, m. */
const outside = 1.2;
const inside = 1.25;
/** Steps down at a sill: how far inside the floor's edge lies. */
const sillDepth = 0.3;
/** Dimension lines stand this far beside what they measure, m. */
const off = 0.16;

export function foundationSection(
  facts: SectionFacts,
  metresPerMm: number,
  figures: SectionFigures | null = null,
): FoundationSection {
  const part = partsOf(facts);
  const bounds = boundsOf(facts, part);
  return {
    marks: [
      ...earth(facts, bounds),
      ...part.marks,
      ...grounds(facts, bounds, metresPerMm, figures),
      ...frost(facts, bounds, metresPerMm, figures),
      ...(figures ? levels(facts, bounds, metresPerMm, figures) : []),
    ],
    dimensions: part.dimensions,
    measures: part.measures ?? [],
    bounds,
  };
}

interface Part {
  readonly marks: readonly DrawingMark[];
  readonly dimensions: readonly SectionDimension[];
  readonly measures?: readonly Pick<SectionDimension, "from" | "to">[];
}

function partsOf(facts: SectionFacts): Part {
  const { kind } = facts.foundation;
  if (kind === "thickened-edge") return thickenedEdge(facts);
  if (kind === "posts") return postInHole(facts);
  return stemWall(facts);
}

function stemWall(facts: SectionFacts): Part {
  const { foundation, topOfWallAboveFloor, bottom, sillBelowFloor } = facts;
  const { wallThickness: t, footingWidth, footingThickness } = foundation;
  const slab = hasSlab(foundation) ? foundation.slabThickness : 0;
  const foot = bottom + footingThickness;
  const [left, right] = [t / 2 - footingWidth / 2, t / 2 + footingWidth / 2];
  const top =
    sillBelowFloor === null ? topOfWallAboveFloor : Math.min(topOfWallAboveFloor, -sillBelowFloor - slab);
  const under = foundation.kind === "crawl-space" ? crawlFloor(facts) : floorInside(facts, t);
  const level = topOfWallAboveFloor - foundation.wallHeight;
  const steps = foot < level - 1e-6 ? [{ from: [-off, foot] as XY, to: [-off, level] as XY }] : [];
  return {
    marks: [
      ...under.marks,
      box("foundation-concrete", left, bottom, right, foot),
      box("foundation-concrete", 0, foot, t, top),
      ...(foundation.wall === "block" ? courses(foundation, t, foot, top) : []),
    ],
    dimensions: [
      { key: "wallHeight", from: [-off, level], to: [-off, topOfWallAboveFloor] },
      { key: "footingThickness", from: [left - off, bottom], to: [left - off, foot] },
      { key: "footingWidth", from: [left, bottom - off], to: [right, bottom - off] },
      { key: "wallThickness", from: [0, foot + 0.12], to: [t, foot + 0.12] },
      ...under.dimensions,
    ],
    measures: steps,
  };
}

/** Joints of the courses, from the footing up. */
function courses({ block }: Foundation, t: number, foot: number, top: number): DrawingMark[] {
  const count = Math.min(80, Math.ceil((top - foot) / block.height - 1e-6));
  return Array.from({ length: Math.max(0, count - 1) }, (_, i) => {
    const y = foot + (i + 1) * block.height;
    return { kind: "line", points: [0, y, t, y], style: "foundation-joint" };
  });
}

/** Slab, insulation and stone inside of `from`; through a door the slab comes out over the wall at the sill. */
function floorInside(facts: SectionFacts, from: number): Part {
  const { foundation, topOfWallAboveFloor, sillBelowFloor } = facts;
  const slab = hasSlab(foundation) ? foundation.slabThickness : 0;
  const bearing = topOfWallAboveFloor <= -slab - foundation.insulation + 1e-9 && slab > 0;
  const start = bearing ? 0 : from;
  const stoneTop = -slab - (slab > 0 ? foundation.insulation : 0);
  const marks: DrawingMark[] = stone(from, stoneTop, stoneTop - foundation.baseThickness);
  const beside = inside - 0.28;
  const dimensions: SectionDimension[] = [
    { key: "baseThickness", from: [beside, stoneTop - foundation.baseThickness], to: [beside, stoneTop] },
  ];
  if (slab > 0) {
    if (foundation.insulation > 0) marks.push(box("foundation-insulation", from, stoneTop, inside, -slab));
    dimensions.push({ key: "insulation", from: [beside - 0.3, stoneTop], to: [beside - 0.3, -slab] });
    marks.push(
      sillBelowFloor === null
        ? box("foundation-concrete", start, -slab, inside, 0)
        : sill(sillBelowFloor, slab),
    );
    dimensions.push({ key: "slabThickness", from: [beside, -slab], to: [beside, 0] });
  }
  return { marks, dimensions };
}

/** The slab at a door: out over the wall at the sill's height, up to the floor behind it. */
function sill(below: number, slab: number): DrawingMark {
  const ring = [
    ...[0, -below, sillDepth, -below, sillDepth, 0, inside, 0, inside, -slab],
    ...[sillDepth + slab, -slab, sillDepth + slab, -below - slab, 0, -below - slab],
  ];
  return {
    kind: "area",
    rings: [below > 0 ? ring : [0, 0, inside, 0, inside, -slab, 0, -slab]],
    style: "foundation-concrete",
  };
}

function stone(from: number, top: number, bottom: number, to = inside): DrawingMark[] {
  if (top - bottom < 1e-9) return [];
  return [
    box("foundation-stone", from, bottom, to, top),
    { kind: "line", points: [from, bottom, to, bottom], style: "foundation-edge" },
  ];
}

function crawlFloor({ foundation, topOfWallAboveFloor }: SectionFacts): Part {
  const { crawl, wallThickness } = foundation;
  const under = topOfWallAboveFloor;
  const deck = Math.min(0.025, crawl.floorThickness / 4);
  const ground = under - crawl.clearance;
  const x = inside - 0.3;
  return {
    marks: [
      box("foundation-timber", 0, under, inside, under + crawl.floorThickness - deck),
      box("foundation-timber", 0, under + crawl.floorThickness - deck, inside, under + crawl.floorThickness),
      { kind: "line", points: [wallThickness, ground, inside, ground], style: "ground-finished" },
    ],
    dimensions: [
      { key: "clearance", from: [x, ground], to: [x, under] },
      { key: "floorThickness", from: [x, under], to: [x, under + crawl.floorThickness] },
    ],
  };
}

function thickenedEdge(facts: SectionFacts): Part {
  const { foundation, topOfWallAboveFloor: top, bottom } = facts;
  const { edge, slabThickness: slab } = foundation;
  const deep = Math.max(0, -slab - bottom);
  const stoneTop = -slab - foundation.insulation;
  const from = edge.width + deep;
  const far = farInside(facts);
  const beside = far - 0.28;
  const ring = [
    ...[0, top, far, top, far, -slab, edge.width + deep, -slab],
    ...[edge.width, bottom, 0, bottom],
  ];
  return {
    marks: [
      ...stone(from, stoneTop, stoneTop - foundation.baseThickness, far),
      ...(foundation.insulation > 0 ? [box("foundation-insulation", from, stoneTop, far, -slab)] : []),
      { kind: "area", rings: [ring], style: "foundation-concrete" },
    ],
    dimensions: [
      { key: "edgeDepth", from: [-off, bottom], to: [-off, top] },
      { key: "edgeWidth", from: [0, bottom - off], to: [edge.width, bottom - off] },
      { key: "slabThickness", from: [beside, -slab], to: [beside, 0] },
      { key: "insulation", from: [beside - 0.3, stoneTop], to: [beside - 0.3, -slab] },
      { key: "baseThickness", from: [beside, stoneTop - foundation.baseThickness], to: [beside, stoneTop] },
    ],
  };
}

function postInHole(facts: SectionFacts): Part {
  const { foundation, bottom, finished } = facts;
  const { posts } = foundation;
  const middle = posts.size / 2;
  const [left, right] = [middle - posts.holeDiameter / 2, middle + posts.holeDiameter / 2];
  const ground = bottom + posts.holeDepth;
  const floor = floorInside(facts, posts.size);
  return {
    marks: [
      ...floor.marks,
      box("foundation-concrete", left, bottom, right, bottom + posts.padThickness),
      {
        kind: "line",
        points: [left, ground, left, bottom, right, bottom, right, ground],
        style: "foundation-hidden",
      },
      box("foundation-timber", 0, bottom + posts.padThickness, posts.size, 0.6),
      box("foundation-timber", -0.04, finished - 0.05, 0, 0.14),
    ],
    dimensions: [
      { key: "holeDepth", from: [left - off, bottom], to: [left - off, ground] },
      { key: "holeDiameter", from: [left, bottom - off], to: [right, bottom - off] },
      { key: "padThickness", from: [right + off, bottom], to: [right + off, bottom + posts.padThickness] },
      { key: "postSize", from: [0, 0.42], to: [posts.size, 0.42] },
      ...floor.dimensions,
    ],
  };
}

function box(style: StyleName, x0: number, y0: number, x1: number, y1: number): DrawingMark {
  return { kind: "area", rings: [[x0, y0, x1, y0, x1, y1, x0, y1]], style };
}

/** Under the finished ground outside, under what the earth is brought to inside. */
function earth(facts: SectionFacts, { minX, minY, maxX }: Bounds): DrawingMark[] {
  const { foundation, topOfWallAboveFloor, finished, fall } = facts;
  const level = -earthBelowFloor({ foundation, topOfWallAboveFloor });
  const t = hasStemWall(foundation) ? foundation.wallThickness / 2 : 0.02;
  const ring = [
    ...[minX, finished + fall * minX, 0, finished, t, finished, t, level, maxX, level],
    ...[maxX, minY, minX, minY],
  ];
  return [{ kind: "area", rings: [ring], style: "foundation-earth" }];
}

function grounds(
  facts: SectionFacts,
  { minX, maxX }: Bounds,
  metresPerMm: number,
  figures: SectionFigures | null,
): DrawingMark[] {
  const { finished, existing, fall } = facts;
  const up = 0.9 * metresPerMm;
  const outer = finished + fall * minX;
  // Two lines that lie near to each other have their words on either side.
  const below = Math.abs(outer - existing) < 5 * metresPerMm && existing <= outer;
  return [
    { kind: "line", points: [minX, existing, maxX, existing], style: "ground-existing" },
    { kind: "line", points: [minX, outer, 0, finished], style: "ground-finished" },
    word([minX, outer + up], "finished ground"),
    word([minX, below ? existing - 3.4 * metresPerMm : existing + up], "ground as it is"),
    { kind: "line", points: [0, 0, maxX, 0], style: "floor-line" },
    {
      ...word([maxX, up], figures ? `finished floor ${figures.height(0)}` : "finished floor"),
      anchor: "end",
    },
  ];
}

function word(at: XY, text: string): DrawingMark & { readonly kind: "text" } {
  return { kind: "text", at, text, style: "foundation-label", halo: true };
}

/** Heights to set out from: the bottom of the trench beside it, the top of the wall where that is not the floor. */
function levels(
  { bottom, topOfWallAboveFloor: top, sillBelowFloor }: SectionFacts,
  { maxX }: Bounds,
  metresPerMm: number,
  figures: SectionFigures,
): DrawingMark[] {
  return [
    { kind: "line", points: [maxX - 8 * metresPerMm, bottom, maxX, bottom], style: "dimension" },
    { ...word([maxX, bottom + 0.9 * metresPerMm], `bottom ${figures.height(bottom)}`), anchor: "end" },
    ...(Math.abs(top) > 1e-6 && sillBelowFloor === null
      ? [
          {
            ...word([-0.05, top + 0.9 * metresPerMm], `top of wall ${figures.height(top)}`),
            anchor: "end" as const,
          },
        ]
      : []),
    ...(sillBelowFloor
      ? [
          {
            ...word([-0.05, -sillBelowFloor + 0.9 * metresPerMm], `sill ${figures.height(-sillBelowFloor)}`),
            anchor: "end" as const,
          },
        ]
      : []),
  ];
}

/** How deep frost goes, from the ground that counts. */
function frost(
  facts: SectionFacts,
  { minX }: Bounds,
  metresPerMm: number,
  figures: SectionFigures | null,
): DrawingMark[] {
  const { frostDepth, frostFrom } = facts.foundation;
  if (frostDepth === null) return [];
  const from = frostFrom === "finished" ? facts.finished : Math.min(facts.existing, facts.finished);
  const y = from - frostDepth;
  return [
    { kind: "line", points: [minX, y, -0.28, y], style: "frost-line" },
    word([minX, y - 3.2 * metresPerMm], figures ? `frost ${figures.length(frostDepth)}` : "frost depth"),
  ];
}

/** How far inside it is drawn: a deep edge's haunch reaches farther. */
function farInside({ foundation, bottom }: SectionFacts): number {
  if (foundation.kind !== "thickened-edge") return inside;
  const deep = Math.max(0, -foundation.slabThickness - bottom);
  return Math.max(inside, foundation.edge.width + deep + 0.6);
}

function boundsOf(facts: SectionFacts, { dimensions }: Part): Bounds {
  const { existing, finished, bottom, topOfWallAboveFloor, foundation, fall } = facts;
  const frostLine =
    foundation.frostDepth === null ? bottom : Math.min(existing, finished) - foundation.frostDepth;
  const xs = dimensions.flatMap(({ from, to }) => [from[0], to[0]]);
  const tops = foundation.kind === "posts" ? 0.66 : 0.16;
  return {
    minX: Math.min(-outside, ...xs.map((x) => x - off)),
    maxX: Math.max(farInside(facts), ...xs),
    minY: Math.min(bottom, frostLine, finished - fall * outside, existing) - 0.28,
    maxY: Math.max(tops, topOfWallAboveFloor, finished, existing) + 0.12,
  };
}

/** What a dimension measures, as it is drawn: a line with ticks and its figure; nothing where it is nothing. */
export function dimensionMarks(
  { from, to }: Pick<SectionDimension, "from" | "to">,
  text: (m: number) => string,
): DrawingMark[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length < 1e-9) return [];
  const upright = Math.abs(dx) < 1e-9;
  return [
    { kind: "line", points: [...from, ...to], style: "dimension" },
    ...[from, to].map(
      (at): DrawingMark => ({
        kind: "symbol",
        at,
        symbol: "tick",
        size: 1.6,
        angle: Math.atan2(dy, dx) + Math.PI / 4,
        style: "dimension-tick",
      }),
    ),
    {
      kind: "text",
      at: [from[0] + dx / 2, from[1] + dy / 2],
      text: text(length),
      style: "foundation-figure",
      anchor: upright ? "end" : "middle",
      shift: upright ? [-0.9, -0.9] : [0, -3.4],
      halo: true,
    },
  ];
}
