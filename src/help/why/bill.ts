/** Where each figure of the bill comes from. How it is counted stands in the result; here are its inputs. */
import { figureSource } from "../../document/soils";
import type { BillItem, TrenchDig } from "../../solve/results";
import { type Asked, type Figures, firstPrinciples, plainNumber, type Why, type WhyInput } from "./why";

/** A bill's figure as the window shows it. */
export function billFigure(
  { quantity, unit }: Pick<BillItem, "quantity" | "unit">,
  figures: Omit<Figures, "mass" | "flow" | "speed" | "rain" | "bore">,
): string {
  switch (unit) {
    case "loads":
      return `${quantity} ${quantity === 1 ? "load" : "loads"}`;
    case "pieces":
      return `${quantity}`;
    case "hours":
      return `${quantity < 10 ? quantity.toFixed(1) : Math.round(quantity)} h`;
    case "m":
      return figures.length(quantity);
    case "m2":
      return figures.area(quantity);
    case "m3":
      return figures.volume(quantity);
  }
}

export function billWhy(asked: Asked, id: string): Why | null {
  const item = asked.results.bill.find((each) => each.id === id);
  if (!item) return null;
  return {
    title: item.item,
    figure: billFigure(item, asked.figures),
    inputs: inputsOf(item, asked),
    rule: ruleOf(item),
    formula: item.how,
    source: sourceOf(item, asked.project.materials),
  };
}

/** What is stone: compacted where it lies, loose on the truck. */
const stoneStages: readonly BillItem["stage"][] = ["base", "drive", "drain"];

/** The rule's own, and where the figures of the soil or stone that it counts with come from. */
function sourceOf({ id, stage, trucked }: BillItem, materials: Asked["project"]["materials"]): string {
  const stone = trucked !== null && stoneStages.includes(stage);
  if (!stone && stage !== "strip" && stage !== "earth" && stage !== "undercut" && !id.startsWith("trench-"))
    return firstPrinciples;
  const used = [
    ...(["fill-loose", "cut-loose", "topsoil", "trench-left"].includes(id) ? (["swell"] as const) : []),
    ...(["fill-loose", "cut-loose", "left-over", "short", "trench-left"].includes(id)
      ? (["shrink"] as const)
      : []),
    ...(stone || id === "slab-fill-loose" ? (["stoneLoose"] as const) : []),
    ...(trucked
      ? ([id === "topsoil" ? "topsoil" : stone || id === "slab-fill-loose" ? "stone" : "weight"] as const)
      : []),
  ];
  const names = {
    swell: "swell",
    shrink: "shrink",
    stoneLoose: "loose for one compacted",
    topsoil: "weight",
    stone: "weight",
    weight: "weight",
  } as const;
  return [
    firstPrinciples,
    ...used.map((figure) => `${names[figure]}: ${figureSource(materials, figure)}`),
    stone ? "the truck is your figure" : "strip and truck are your figures",
  ].join("; ");
}

function ruleOf({ id, stage, unit }: BillItem): string {
  if (id === "topsoil") return "Turf and topsoil come off wherever the ground changes, and are kept.";
  if (id.endsWith("-loads")) return "Trucks carry loose earth, and come whole.";
  if (id.endsWith("-loose")) return "Dug earth takes more room than it did in the ground.";
  if (id === "left-over" || id === "short")
    return "Cut and fill are set against each other as earth in the bank, for compacted fill takes more of it.";
  if (id.startsWith("fill-inside") || id.startsWith("fill-outside"))
    return "Fill of different kinds comes from different places, and is paid for apart.";
  if (id === "fill" || id === "cut")
    return "The volume between the stripped ground and the finished ground: exact under the floor, on a grid outside the walls.";
  if (stage === "undercut") return "What can't carry comes out, and what can be compacted goes in.";
  if (stage === "topsoil") return "Topsoil goes back last, on what is neither built on nor driven on.";
  if (stage === "hours") return "Your own rates; work goes slower in wet ground and in corners.";
  if (unit !== "m3") return "Counted from the drawing of the foundation.";
  if (id === "trench-back") return "Soil as it lies compacted: it takes more of it in the bank.";
  if (stage === "trench") return "Soil in the bank, as it lies before it is dug.";
  return stoneStages.includes(stage)
    ? "Stone as it lies compacted; on the truck it is looser."
    : "As poured, without waste.";
}

function inputsOf(item: BillItem, asked: Asked): WhyInput[] {
  const { project, results, figures } = asked;
  const { swell, shrink, stripDepth, cutAsFill } = project.materials;
  const quantity = (id: string) => figures.volume(results.bill.find((each) => each.id === id)?.quantity ?? 0);
  const swelling = { name: "Swell", figure: plainNumber(swell) };
  const shrinking = { name: "Shrink", figure: plainNumber(shrink) };
  const fill = { name: "Fill, compacted", figure: quantity("fill") };
  const inside = results.bill.some(({ id }) => id === "slab-fill-loose")
    ? [{ name: "of it sand or gravel under the slab", figure: quantity("fill-inside") }]
    : [];
  const cut = { name: "Cut, in the bank", figure: quantity("cut") };
  const strip = { name: "Strip", figure: figures.length(stripDepth) };
  const truck = { name: "A truck holds", figure: figures.volume(project.truck.volume) };
  switch (item.id) {
    case "topsoil":
      return [
        { name: "Disturbed ground", figure: figures.area(results.earthwork?.disturbedArea ?? 0) },
        strip,
      ];
    case "fill":
    case "cut":
      return [...moved(item.id, asked), strip];
    case "fill-inside":
    case "fill-outside":
      return [fill, strip];
    case "fill-loose":
      return [fill, ...inside, ...(cutAsFill ? [cut] : []), shrinking, swelling];
    case "slab-fill-loose":
      return [
        ...inside,
        { name: "Loose for one compacted", figure: plainNumber(project.materials.stoneLoose) },
      ];
    case "cut-loose":
      return [cut, ...(cutAsFill ? [fill, ...inside, shrinking] : []), swelling];
    case "fill-loads":
      return [
        { name: "Earth fill, loose", figure: quantity("fill-loose") },
        ...(inside.length > 0
          ? [{ name: "Sand or gravel, loose", figure: quantity("slab-fill-loose") }]
          : []),
        truck,
      ];
    case "cut-loads":
      return [
        { name: "Cut, loose", figure: quantity("cut-loose") },
        { name: "Trench soil left over, loose", figure: quantity("trench-left") },
        truck,
      ];
    case "trench-dig":
      return trenchInputs(asked);
    case "trench-back":
    case "trench-left":
      return [
        { name: "Trench, in the bank", figure: quantity("trench-dig") },
        {
          name: "Footing and wall in it",
          figure: figures.volume(inTrench(results.foundation?.dig)),
        },
        ...(item.id === "trench-left"
          ? [{ name: "Goes back, compacted", figure: quantity("trench-back") }, shrinking, swelling]
          : []),
      ];
    case "left-over":
    case "short":
      return [cut, fill, ...inside, shrinking];
    default:
      return otherInputs(item, asked);
  }
}

/** Room that footing and wall take of the trench, m3. */
function inTrench(dig: Pick<TrenchDig, "volume" | "backfill"> | null | undefined): number {
  return dig ? dig.volume - dig.backfill : 0;
}

function trenchInputs({ results, figures }: Asked): WhyInput[] {
  const dig = results.foundation?.dig;
  if (!dig) return [];
  return [
    { name: "Wide at the bottom", figure: figures.length(dig.bottomWidth) },
    { name: "Deepest", figure: figures.length(dig.deepest.depth) },
    { name: "Sides", figure: dig.sides },
  ];
}

function otherInputs(item: BillItem, asked: Asked): WhyInput[] {
  const { figures, project } = asked;
  const bulk = { name: "Loose for one compacted", figure: plainNumber(project.materials.stoneLoose) };
  const truckInputs = item.trucked
    ? [
        ...(stoneStages.includes(item.stage) ? [bulk] : []),
        { name: "Loose on the truck", figure: figures.volume(item.trucked.loose) },
        { name: "Weight", figure: figures.mass(item.trucked.mass) },
      ]
    : [];
  if (item.stage === "drive") return [...gravel(item.id, asked), ...truckInputs];
  if (item.stage === "undercut" && item.id === "stumps")
    return [
      { name: "Hole, across", figure: figures.length(project.materials.stumpHole.width) },
      { name: "Hole, deep", figure: figures.length(project.materials.stumpHole.depth) },
    ];
  if (item.stage === "topsoil")
    return [{ name: "Depth back on top", figure: figures.length(project.materials.respread) }];
  return [...(asConcrete.includes(item.id) ? concrete(item, asked) : []), ...truckInputs];
}

const asConcrete = ["base", "slab", "footing", "wall", "edge", "pads"];

/** Heights and parts behind cut or fill; the parts are those before the topsoil comes off. */
function moved(part: "cut" | "fill", { project, results, figures }: Asked): WhyInput[] {
  const { building } = project;
  const { floor, earthwork } = results;
  if (!building || floor === null || !earthwork) return [];
  const { slabThickness, baseThickness } = building.foundation;
  return [
    { name: "Floor", figure: figures.length(floor) },
    { name: "Underside of the base stone", figure: figures.length(floor - slabThickness - baseThickness) },
    { name: "Under the floor, before the strip", figure: figures.volume(earthwork.inside[part]) },
    {
      name: "Outside, before the strip",
      figure: `${figures.volume(earthwork.outside[part])} ± ${figures.volume(earthwork.outside.error)}`,
    },
  ];
}

function gravel(id: string, { project, results, figures }: Asked): WhyInput[] {
  const drive = project.grading.drives.find((each) => `gravel-${each.id}` === id);
  const length = results.drives.find((each) => each.id === drive?.id)?.length;
  if (!drive || length === undefined) return [];
  return [
    { name: "Length", figure: figures.length(length) },
    { name: "Width", figure: figures.length(drive.width) },
    { name: "Depth", figure: figures.length(drive.gravel) },
  ];
}

/** Inputs of stone and concrete under the building; the area and the centreline follow from the quantity. */
function concrete({ id, quantity }: BillItem, { project, figures }: Asked): WhyInput[] {
  const foundation = project.building?.foundation;
  if (!foundation) return [];
  const { slabThickness, baseThickness, footingWidth, footingThickness, wallThickness, wallHeight } =
    foundation;
  const over = (thickness: number): WhyInput[] => [
    { name: "Floor inside the walls", figure: thickness > 0 ? figures.area(quantity / thickness) : "–" },
    { name: "Thickness", figure: figures.length(thickness) },
  ];
  const stepped = foundation.steps.on;
  const along = (across: number, up: number): WhyInput[] => [
    ...(stepped
      ? []
      : [{ name: "Centreline of the wall", figure: figures.length(quantity / (across * up)) }]),
    { name: "Across", figure: figures.length(across) },
    { name: stepped ? "Up, where it is highest" : "Up", figure: figures.length(up) },
  ];
  const { edge, posts } = foundation;
  if (id === "edge")
    return [
      { name: "Depth of the edge", figure: figures.length(edge.depth) },
      { name: "Width of its bottom", figure: figures.length(edge.width) },
    ];
  if (id === "pads")
    return [
      { name: "Hole, across", figure: figures.length(posts.holeDiameter) },
      { name: "Pad", figure: figures.length(posts.padThickness) },
    ];
  if (id === "slab") return over(slabThickness);
  if (id === "base") return over(baseThickness);
  return id === "footing" ? along(footingWidth, footingThickness) : along(wallThickness, wallHeight);
}
