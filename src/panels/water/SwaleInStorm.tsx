/** What comes to a swale in the storm, and how it carries it. */
import type { SwaleFlow } from "../../solve/results";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { type Fact, Facts } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

/** `drains`: a bed that doesn't drain isn't told to carry a storm. */
export function SwaleInStorm({ id, drains }: { id: string; drains: boolean }) {
  const flow = useResults(({ water }) => water.flows.find((each) => each.id === id) ?? null);
  const freeboard = useProject(({ storm }) => storm.freeboard);
  const typed = useProject(({ storm }) => storm.uphill);
  const notation = useNotation();
  if (!flow) return null;
  return (
    <>
      {flow.verdict && !drains ? (
        <p className="soft small">What it does in the storm is told once it drains.</p>
      ) : null}
      {flow.verdict && drains ? (
        <p className={`check check-${flow.verdict === "carries it" ? "ok" : "bad"}`}>
          <Icon name={flow.verdict === "carries it" ? "check" : "warn"} />
          <span>{stormWords(flow, freeboard, notation)}</span>
        </p>
      ) : null}
      <Facts facts={flowFacts(flow, drains, typed, notation)} />
    </>
  );
}

/** One sentence on the storm: what the swale does with it, and what would mend it. */
export function stormWords(flow: SwaleFlow, freeboard: number, notation: Notation): string {
  const { depth, speed, bears, steepest, room, roomAt } = flow;
  if (flow.verdict === "overflows" && depth !== null && room !== null)
    return `In the storm it overflows: water stands ${notation.length(depth)} deep, ${notation.length(roomAt ?? 0)} along there is room for ${notation.length(room)}. Dig it deeper or wider, or let it fall more.`;
  if (flow.verdict === "is scoured" && bears === null)
    return `Such a lining isn't used where it falls ${notation.slope(steepest)}. Make it gentler, or line it with stone.`;
  if (flow.verdict === "is scoured" && speed !== null)
    return `In the storm water runs at ${notation.speed(speed)} where it falls ${notation.slope(steepest)}, more than the ${notation.speed(bears ?? 0)} its bed bears there. Make it wider or gentler, or line it with stone.`;
  const spare = notation.length(Math.max(0, (room ?? 0) - (depth ?? 0)));
  if (flow.verdict === "has too little room")
    return `The storm stays in it with only ${spare} to spare, ${notation.length(roomAt ?? 0)} along, where ${notation.length(freeboard)} is asked for. Dig it deeper or wider, or let it fall more.`;
  return `It carries the storm with ${spare} to spare, on its first two thirds; further on it is meant to come out.`;
}

function flowFacts(flow: SwaleFlow, drains: boolean, typed: number, notation: Notation): Fact[] {
  const { id } = flow;
  const facts: Fact[] = [
    {
      name: "Drains to it",
      figure: notation.area(flow.catchment),
      why: { kind: "swale catchment", id, of: "what drains to the swale" },
      ...noteOf(catchmentNote(flow, typed, notation)),
    },
    {
      name: "Longest way of the water",
      figure: notation.length(flow.longest),
      note: `falls ${notation.length(flow.fall)}, ${notation.length(flow.inBed)} of it in its bed${flow.time === null ? "" : `; gathers in ${Math.round(flow.time / 60)} min (Kirpich, then the bed's own speed)`}`,
    },
  ];
  if (flow.peak === null) return [...facts, { name: "Peak", figure: "type the rain below" }];
  facts.push({
    name: "Peak, C i A",
    figure: notation.flow(flow.peak),
    why: { kind: "swale peak", id, of: "peak that comes to the swale" },
    note: `C ${flow.runoff.toFixed(2)}${flow.intensity === null ? "" : `, ${notation.rain(flow.intensity)}${flow.beyondTable ? beyondWords[flow.beyondTable] : ""}`}`,
  });
  if (drains && flow.depth !== null && flow.speed !== null)
    facts.push(
      {
        name: "Runs so deep",
        figure: notation.length(flow.depth),
        why: { kind: "swale depth", id, of: "depth of water in the swale" },
        note: `Manning, at its least fall${flow.critical === null ? "" : `; critical depth ${notation.length(flow.critical)}`}`,
      },
      {
        name: "So fast",
        figure: notation.speed(flow.speed),
        why: { kind: "swale speed", id, of: "speed of water in the swale" },
        note: fastNote(flow, notation),
      },
    );
  return facts;
}

const beyondWords = {
  "shorter than its rows":
    ", of the table's shortest row: water gathers sooner, so type a row for a shorter, harder storm",
  "longer than its rows": ", of the table's longest row",
} as const;

function fastNote({ steepest, froude, bears }: SwaleFlow, notation: Notation): string {
  return [
    `at its steepest, ${notation.slope(steepest)}`,
    ...(bears === null ? [] : [`its bed bears ${notation.speed(bears)}`]),
    ...(froude === null ? [] : [`Froude ${froude.toFixed(2)}${froude > 1 ? ", shooting: it will dig" : ""}`]),
  ].join("; ");
}

/** What of the catchment isn't ground on the plan, and whether more may come. */
function catchmentNote(
  { touchesEdge, roof, uphill }: SwaleFlow,
  typed: number,
  notation: Notation,
): string | null {
  const said = [
    ...(roof >= 1 ? [`${notation.area(roof)} of roof with it`] : []),
    ...(uphill > 0 ? [`${notation.area(uphill)} of it beyond the shots, as typed`] : []),
    ...(touchesEdge && typed === 0
      ? [
          "it touches the edge of what is known: more may come from beyond; type it under “More ground uphill”",
        ]
      : []),
  ];
  return said.length > 0 ? said.join("; ") : null;
}

function noteOf(note: string | null): { readonly note?: string } {
  return note === null ? {} : { note };
}
