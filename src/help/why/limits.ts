/** Where a limit of the floor comes from: the rule's own place, value and source, and how the height follows. */
import type { BandRule } from "../../solve/results";
import type { Asked, Why } from "./why";

/** One part of the height of the floor that a rule allows; `m` carries its sign. */
interface Part {
  readonly name: string;
  readonly m: number;
}

interface Shape {
  /** What the site gives, from which the height is counted. */
  readonly ground: string;
  readonly parts: readonly Part[];
  readonly formula: string;
}

export function limitWhy(asked: Asked, id: string): Why | null {
  const rule = asked.results.band.rules.find((each) => each.id === id);
  if (!rule || rule.height === null) return null;
  const lowest = rule.kind === "notBelow";
  return {
    title: `${lowest ? "Not below" : "Not above"}: ${rule.name}`,
    figure: asked.figures.length(rule.height),
    inputs: [{ name: "Place", figure: rule.place }, ...inputsOf(rule, rule.height, asked)],
    rule: `The ${lowest ? "lowest" : "highest"} floor that this rule allows.${rule.on ? "" : " It is switched off now."}`,
    formula:
      shapeOf(rule, asked)?.formula ??
      tried[rule.id] ??
      (rule.id.startsWith("landing") ? breakFormula : driveFormula),
    source: rule.source,
  };
}

/** Rules whose height is found by trying floors: what is asked of each. */
const tried: Readonly<Record<string, string>> = {
  fallAway:
    "floors are tried: the last at which the finished ground falls enough from every wall that some floor can mend",
  unbalancedFill: "floors are tried: the last at which no wall holds more fill on one side than it may",
  greatestWall: "floors are tried: the last at which no wall is higher, steps of the footing counted",
  doorThreshold:
    "floors are tried: the last at which every door without a drive stands above the ground outside",
  fillFits: "floors are tried: the last at which the fill round the building ends before the lot line",
  cutFits: "floors are tried: the last at which the cut round the building ends before the lot line",
};

const breakFormula =
  "the floor at which the run's grade differs from the landing's, or from level at the door, by just that much";
const driveFormula =
  "the floor at which the run from the road up or down to the landing just has the steepest grade";

function inputsOf(rule: BandRule, height: number, asked: Asked) {
  const { figures } = asked;
  const shape = shapeOf(rule, asked);
  if (rule.id in tried) return [{ name: "Asked for", figure: figures.length(rule.value) }];
  if (rule.id.startsWith("landing"))
    return [{ name: "Change of grade you accept", figure: figures.slope(rule.value) }];
  if (!shape) return [{ name: "Steepest grade you accept", figure: figures.slope(rule.value) }];
  const ground = shape.parts.reduce((left, { m }) => left - m, height);
  return [
    { name: shape.ground, figure: figures.length(ground) },
    ...shape.parts.map(({ name, m }) => ({ name, figure: figures.length(Math.abs(m)) })),
  ];
}

/** How the floor follows from the ground; null for the drives' rules, which follow a line. */
function shapeOf({ id, value }: BandRule, { project }: Asked): Shape | null {
  const { building, materials, grading } = project;
  if (!building) return null;
  const { foundation } = building;
  const wallTop: Part[] =
    building.topOfWallAboveFloor === 0
      ? []
      : [{ name: "Top of wall above the floor", m: -building.topOfWallAboveFloor }];
  const toWall = wallTop.length > 0 ? " − top of wall above the floor" : "";
  const strip = { name: "Topsoil off", m: -materials.stripDepth };
  const isEdge = foundation.kind === "thickened-edge";
  const footing = [
    ...(isEdge
      ? [{ name: "Depth of the edge", m: foundation.edge.depth }]
      : [
          { name: "Footing", m: foundation.footingThickness },
          { name: "Wall", m: foundation.wallHeight },
        ]),
    ...wallTop,
  ];
  const footed = isEdge ? "depth of the edge" : "footing + wall";
  switch (id) {
    case "aboveUphillGround":
    case "leastShowing":
    case "sidingClearance":
    case "mostShowing":
    case "leastOut":
      return {
        ground: "Ground there",
        parts: [
          { name: id === "mostShowing" ? "At most above it" : "At least above it", m: value },
          ...(id === "sidingClearance" && project.rules.sidingLap > 0
            ? [{ name: "Siding's lap over the wall", m: project.rules.sidingLap }]
            : []),
          ...wallTop,
        ],
        formula: `floor = ground + that much${toWall}`,
      };
    case "swaleBelowWall":
      return {
        ground: "Swale's bed there",
        parts: [
          { name: "Ground at the wall above the bed", m: value },
          { name: "Wall left showing", m: grading.apron.showing },
          ...wallTop,
        ],
        formula: `floor = bed + height above it + wall showing${toWall}`,
      };
    case "pondFreeboard":
      return {
        ground: "Water standing there",
        parts: [{ name: "Floor above it", m: value }],
        formula: "floor = water level + height above it",
      };
    case "aboveRoad":
      return {
        ground: "Road's gutter",
        parts: [{ name: "Top of wall above it", m: value }, ...wallTop],
        formula: `floor = gutter + height above it${toWall}`,
      };
    case "aboveFlood":
      return {
        ground: "Flood",
        parts: [{ name: "Floor above it", m: value }],
        formula: "floor = flood level + height above it",
      };
    case "intoUndisturbed":
      return {
        ground: "Ground there",
        parts: [strip, { name: "Into undisturbed ground", m: -value }, ...footing],
        formula: `floor = ground − topsoil − depth into it + ${footed}${toWall}`,
      };
    case "frostCover":
      return {
        ground: "Ground there",
        parts: [{ name: "Frost depth", m: -value }, ...footing],
        formula: `floor = ground − frost depth + ${footed}${toWall}`,
      };
    case "fillUnderSlab":
      return {
        ground: "Ground there",
        parts: [
          strip,
          { name: "Fill at most", m: value },
          { name: "Base stone", m: foundation.baseThickness },
          ...(foundation.insulation > 0 ? [{ name: "Insulation", m: foundation.insulation }] : []),
          { name: "Slab", m: foundation.slabThickness },
        ],
        formula: `floor = ground − topsoil + fill + base stone${foundation.insulation > 0 ? " + insulation" : ""} + slab`,
      };
    default:
      return null;
  }
}
