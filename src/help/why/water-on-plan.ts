/** Where the figures of catchments, low places, lot lines, the roof's sides and the drain round the footing come from. */
import { type Asked, firstPrinciples, plainNumber, type Why } from "./why";

const hollows = "Barnes, Lehman, Mulla 2014 (hollows filled)";

function followed({ project }: Asked): string {
  return project.drainage.flow.method === "d8"
    ? `${hollows}; D8: each cell to its steepest neighbour`
    : `${hollows}; Tarboton 1997 (D-infinity)`;
}

export function catchmentWhy(asked: Asked, id: string): Why | null {
  const { results, figures } = asked;
  const flow = results.water.flows.find((each) => each.id === id);
  const swale = results.water.swales.find((each) => each.id === id);
  if (!flow || !swale) return null;
  return {
    title: `Drains to ${swale.name}`,
    figure: figures.area(flow.catchment),
    inputs: [
      { name: "Ground beyond the shots, as typed", figure: figures.area(flow.uphill) },
      { name: "Roof that comes to it", figure: figures.area(flow.roof) },
      { name: "Longest way of the water", figure: figures.length(flow.longest) },
      { name: "It reaches the edge of what is known", figure: flow.touchesEdge ? "yes" : "no" },
    ],
    rule: "Every cell of the finished ground whose water comes to the swale's bed, by the part of it that comes; with the roof's and what was typed.",
    formula: "area = sum over the cells of (part that comes × area of a cell)",
    source: followed(asked),
  };
}

/** `at`: "east north" of the pond's deepest spot. */
export function pondWhy(asked: Asked, at: string): Why | null {
  const pond = asked.results.water.ponds.find((each) => each.at.join(" ") === at);
  if (!pond) return null;
  const { figures } = asked;
  return {
    title: "A low place that holds water",
    figure: figures.length(pond.depth),
    inputs: [
      { name: "Water stands at", figure: figures.length(pond.waterLevel) },
      { name: "Deepest ground", figure: figures.length(pond.waterLevel - pond.depth) },
      { name: "Area of the water", figure: figures.area(pond.area) },
      { name: "It holds", figure: figures.volume(pond.volume) },
      { name: "Ground there", figure: pond.guessed ? "partly guessed" : "measured" },
    ],
    rule: "Water rises until it runs over the lowest place of the rim. Swales are open where a pipe takes them under a drive.",
    formula:
      "depth = lowest of the rim − deepest ground; volume = sum over the cells of (water level − ground) × area",
    source: "Barnes, Lehman, Mulla 2014",
  };
}

export function leavingWhy(asked: Asked, index: string): Why | null {
  const line = asked.results.water.leaving.find((each) => String(each.line) === index);
  if (!line) return null;
  const { figures, project } = asked;
  return {
    title: `Water over line ${line.line + 1}`,
    figure: figures.area(line.after),
    inputs: [
      { name: "As the ground is", figure: figures.area(line.before) },
      ...(line.peakBefore === null ? [] : [{ name: "Peak as it is", figure: figures.flow(line.peakBefore) }]),
      ...(line.peakAfter === null ? [] : [{ name: "Peak as planned", figure: figures.flow(line.peakAfter) }]),
      { name: "C of the ground", figure: plainNumber(project.storm.runoff) },
      { name: "C of the roof", figure: plainNumber(project.drainage.roof.runoff) },
    ],
    rule: "Ground of the lot, and what drains through it, whose water leaves over this line; the roof counts where its water comes down. Drives and paving count as the ground about them. Peaks take the rain of five minutes on both grounds, so that they can be compared.",
    formula: "peak = sum of C × i × A",
    source: `the rational formula; ${followed(asked)}`,
  };
}

export function roofWhy(asked: Asked, wall: string): Why | null {
  const side = asked.results.water.roof?.find((each) => String(each.wall) === wall);
  if (!side) return null;
  const { figures, project } = asked;
  const { roof } = project.drainage;
  return {
    title: `Water of the roof at wall ${side.name.replace("-", "–")}`,
    figure: side.peak === null ? figures.area(side.area) : figures.flow(side.peak),
    inputs: [
      { name: "Area in plan, with what reaches over", figure: figures.area(side.area) },
      { name: "It reaches over the walls by", figure: figures.length(roof.overhang) },
      { name: "C of the roof", figure: plainNumber(roof.runoff) },
      ...(side.volume === null ? [] : [{ name: "In the whole storm", figure: figures.volume(side.volume) }]),
    ],
    rule: "The slope side as seen from above; its slope doesn't count. The rain is that of five minutes.",
    formula: "peak = C × i × A; in the whole storm C × depth × A",
    source: "the rational formula; C and rain are typed by you",
  };
}

export function footingDrainWhy({ project, results, figures }: Asked): Why | null {
  const drain = results.water.footingDrain;
  if (!drain) return null;
  return {
    title: "Drain round the footing",
    figure: figures.length(drain.low),
    inputs: [
      { name: "Round the footing", figure: figures.length(drain.length) },
      { name: "It falls", figure: figures.slope(project.drainage.footingDrain.fall) },
      { name: `Highest invert, at corner ${drain.highCorner}`, figure: figures.length(drain.high) },
      ...(drain.outlet
        ? [
            {
              name: `From corner ${drain.lowCorner} to where it comes out`,
              figure: figures.length(drain.outlet.distance),
            },
            { name: "Invert there", figure: figures.length(drain.outlet.invert) },
          ]
        : [{ name: "Looked for an outlet within", figure: figures.length(drain.looked) }]),
    ],
    rule: "Its lowest invert lies at the bottom of the footing, never under it; from there it rises both ways round, and falls on to the nearest ground that lies low enough.",
    formula:
      "highest = lowest + fall × way round to the farthest corner; outlet where ground = lowest − fall × distance",
    source: `${firstPrinciples}; a fall of 1 % is common practice`,
  };
}
