/** Where the figures of a swale in the storm and of a pipe under a drive come from. */
import type { SwaleFlow } from "../../solve/results";
import { type Asked, plainNumber, type Why, type WhyInput } from "./why";

interface Ran {
  readonly name: string;
  readonly ran: SwaleFlow;
}

/** The swale in the storm; null for an id that isn't there. */
function ranOf({ results }: Asked, id: string): Ran | null {
  const ran = results.water.flows.find((each) => each.id === id);
  const swale = results.water.swales.find((each) => each.id === id);
  return ran && swale ? { name: swale.name, ran } : null;
}

export function swalePeakWhy(asked: Asked, id: string): Why | null {
  const found = ranOf(asked, id);
  if (!found || found.ran.peak === null) return null;
  const { figures } = asked;
  const { uphillLength, uphillFall, table } = asked.project.storm;
  const { runoff, intensity, catchment, longest, fall, inBed, time, roof, uphill } = found.ran;
  return {
    title: `Peak that comes to ${found.name}`,
    figure: figures.flow(found.ran.peak),
    inputs: [
      { name: "C, of all that drains to it", figure: runoff.toFixed(2) },
      ...(intensity === null ? [] : [{ name: "i, the rain of that time", figure: figures.rain(intensity) }]),
      { name: "A, that drains to it", figure: figures.area(catchment) },
      ...(roof >= 1 ? [{ name: "of it roof", figure: figures.area(roof) }] : []),
      ...(uphill > 0 ? [{ name: "of it beyond the shots, as typed", figure: figures.area(uphill) }] : []),
      { name: "Longest way of the water", figure: figures.length(longest) },
      { name: "which falls", figure: figures.length(fall) },
      { name: "of it in the swale's bed", figure: figures.length(inBed) },
      ...(uphill > 0 && uphillLength > 0
        ? [
            { name: "Way on the ground beyond, as typed", figure: figures.length(uphillLength) },
            { name: "which falls at", figure: figures.slope(uphillFall) },
          ]
        : []),
      ...(table.length > 0 ? [{ name: "Rows of the rain table", figure: String(table.length) }] : []),
      ...(time === null ? [] : [{ name: "It gathers in", figure: `${plainNumber(time / 60)} min` }]),
    ],
    rule: "Rain as hard as falls for as long as the water takes to gather. Over the ground by Kirpich, then down the bed at the flow's own speed; never less than five minutes. Between the rows of a table rain is read along a straight line of its logarithms.",
    formula: "peak = C × i × A; time over the ground = 0.0195 L^0.77 ÷ S^0.385 min, L in metres",
    source: "the rational formula; Kirpich 1940 as usually written; C and rain are typed by you",
  };
}

export function swaleDepthWhy(asked: Asked, id: string): Why | null {
  const found = ranOf(asked, id);
  if (!found || found.ran.depth === null || found.ran.peak === null) return null;
  const { figures } = asked;
  const { depth, critical, room, roomAt } = found.ran;
  return {
    title: `Depth of water in ${found.name}`,
    figure: figures.length(depth),
    inputs: [
      ...channelInputs(asked, id, found.ran.peak),
      { name: "Its least fall", figure: figures.slope(leastFall(asked, id)) },
      ...(critical === null ? [] : [{ name: "Critical depth", figure: figures.length(critical) }]),
      ...(room === null
        ? []
        : [
            { name: `Room in the ditch, ${figures.length(roomAt ?? 0)} along`, figure: figures.length(room) },
          ]),
      { name: "Freeboard asked for", figure: figures.length(asked.project.storm.freeboard) },
    ],
    rule: "Even flow, where the bed falls least and so the water stands deepest.",
    formula: "Q = A × R^(2/3) × S^(1/2) ÷ n, solved for the depth; R = A ÷ wetted length",
    source: "Manning's formula; critical depth where Q² × width at the surface = g × A³",
  };
}

export function swaleSpeedWhy(asked: Asked, id: string): Why | null {
  const found = ranOf(asked, id);
  if (!found || found.ran.speed === null || found.ran.peak === null) return null;
  const { steepest, bears, froude } = found.ran;
  return {
    title: `Speed of water in ${found.name}`,
    figure: asked.figures.speed(found.ran.speed),
    inputs: [
      ...channelInputs(asked, id, found.ran.peak),
      { name: "Its steepest fall", figure: asked.figures.slope(steepest) },
      { name: "Its bed bears", figure: bears === null ? "not used so steep" : asked.figures.speed(bears) },
      ...(froude === null ? [] : [{ name: "Froude's number", figure: froude.toFixed(2) }]),
    ],
    rule: "Even flow, where the bed falls most and so the water runs fastest. Over a Froude number of 1 it shoots, and digs.",
    formula: "speed = Q ÷ A, with A of the depth by Manning",
    source:
      "Manning's formula; permissible speeds of linings as in the table named at “The storm”, or the one you type",
  };
}

/** What both figures of even flow hang on. */
function channelInputs({ project, figures }: Asked, id: string, peak: number): WhyInput[] {
  const swale = project.grading.swales.find((each) => each.id === id);
  return [
    { name: "Q, the peak", figure: figures.flow(peak) },
    { name: "n, roughness of the bed", figure: plainNumber(project.storm.roughness) },
    ...(swale
      ? [
          { name: "Bottom width", figure: figures.length(swale.bottomWidth) },
          { name: "Side slopes", figure: `${plainNumber(swale.sideSlope)} : 1` },
          { name: "Section", figure: swale.shape === "dish" ? "smooth dish" : "straight sides" },
        ]
      : []),
  ];
}

function leastFall({ results }: Asked, id: string): number {
  return results.water.swales.find((each) => each.id === id)?.leastFall ?? 0;
}

export function pipeWhy(asked: Asked, name: string): Why | null {
  const pipe = asked.results.water.pipes.find((each) => each.name === name);
  if (!pipe || pipe.peak === null || pipe.bore === null || pipe.headwater === null) return null;
  const { figures } = asked;
  return {
    title: `Water before the inlet of ${name}`,
    figure: figures.length(pipe.headwater),
    inputs: [
      { name: "Q, that comes to it", figure: figures.flow(pipe.peak) },
      {
        name: pipe.typed ? "Bore, as typed" : "Bore, the least that does",
        figure: figures.bore(pipe.bore),
      },
      { name: "Length", figure: figures.length(pipe.length) },
      { name: "Fall", figure: figures.slope(pipe.fall) },
      { name: "Loss at its inlet, ke", figure: plainNumber(pipe.inletLoss) },
      { name: "n, roughness of the pipe", figure: plainNumber(pipe.roughness) },
      { name: "Water in the ditch below it", figure: figures.length(pipe.below) },
      { name: "Invert upstream", figure: figures.length(pipe.inverts[0]) },
      { name: "Low point of the drive over the ditch", figure: figures.length(pipe.lowPoint) },
      ...(pipe.cover === null ? [] : [{ name: "Cover over it", figure: figures.length(pipe.cover) }]),
    ],
    rule: `Worked out as if its inlet held the water back, and as if the pipe and what stands below it did; the higher counts: here ${pipe.by === "inlet" ? "the inlet" : "the pipe and what stands below"}. It must stay at least ${figures.length(pipe.freeboard)} under the drive's low point.`,
    formula:
      "inlet: HW ÷ D from Q ÷ (A √D) by the inlet's constants; full pipe: H = (1 + ke + friction) × v² ÷ 2g",
    source:
      "FHWA Hydraulic Design Series 5; constants of the inlets from memory; the freeboard is our own choice",
  };
}
