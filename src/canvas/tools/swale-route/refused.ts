/** No bed can come out at the outlet: how far it reaches, and what would make it work, the first of it a click away. */
import type { DrawingMark } from "../../../drawing/marks";
import type { LaidProposal, Route } from "../../../solve/swale-proposal";
import { formatSlope } from "../../../units";
import type { Snap } from "../../snap/snap";
import { lengthWords } from "../liveMarks";
import type { Reading, ToolContext, ToolState } from "../tool";
import { aiming, commit } from "./aiming";
import { proposalMarks } from "./marks";
import { ready } from "./ready";

export function refused(context: ToolContext, start: Snap, short: LaidProposal): ToolState {
  const way = bestWay(short);
  const again = () => refused(context, start, short);
  const use = () => {
    if (!way) return again();
    return commit(context, way.route) ? ready(context) : again();
  };
  return {
    name: "refused",
    hint: way
      ? `Enter takes ${way.words}; click another outlet, or Esc for another start`
      : "Click another outlet, or Esc for another start",
    cursor: "crosshair",
    marks: [...proposalMarks(context, start.at, short.route), ...otherMarks(way?.route)],
    reading: readingOf(context, short, way?.act ?? null),
    press: (pointer) => aiming(context, start, null).press?.(pointer) ?? again(),
    move: () => again(),
    use,
    ...(way ? { finish: use } : {}),
    back: () => aiming(context, start),
    cancel: () => aiming(context, start),
    lost: again,
  };
}

interface Way {
  readonly route: Route;
  readonly words: string;
  readonly act: string;
}

/** The change that keeps most of what was asked: depth before fall, fall before place. */
function bestWay({ ways }: LaidProposal): Way | null {
  if (!ways) return null;
  const { shallower, gentler, outlet } = ways;
  if (shallower) return { route: shallower, words: "the shallower bed", act: "Start it shallower" };
  if (outlet) return { route: outlet, words: "the outlet nearby", act: "Take the outlet nearby" };
  if (gentler) return { route: gentler, words: "the gentler fall", act: "Let it fall less" };
  return null;
}

function otherMarks(route: Route | undefined): DrawingMark[] {
  if (!route) return [];
  return [
    { kind: "line", points: route.line.flat(), style: "preview-line" },
    { kind: "symbol", at: route.line.at(-1) ?? [0, 0], symbol: "ring", size: 3, style: "preview-line" },
  ];
}

function readingOf(context: ToolContext, short: LaidProposal, act: string | null): Reading {
  const project = context.project();
  const length = (m: number) => lengthWords(m, project);
  const slope = (ratio: number) => formatSlope(ratio, project.display.slope);
  const { ways, reaches, route, floor } = short;
  const end = route.line.at(-1) ?? [0, 0];
  const away = ways?.outlet?.line.at(-1);
  const rows = [
    { name: "At your outlet its bed lies under the ground by", value: length(short.short) },
    {
      name: `Falling ${slope(route.leastFall)} it can come out as far along as`,
      value: reaches === null ? "nowhere" : length(reaches),
    },
    ...(ways?.shallower
      ? [{ name: "It works if it starts so deep", value: length(ways.shallower.depth) }]
      : []),
    ...(ways?.shallower && floor !== null
      ? [{ name: "with the floor at least at", value: length(floor) }]
      : []),
    ...(away
      ? [
          {
            name: "Nearest outlet that works, from yours",
            value: length(Math.hypot(away[0] - end[0], away[1] - end[1])),
          },
        ]
      : []),
    ...(ways?.gentler ? [{ name: "It works with a fall of", value: slope(ways.gentler.leastFall) }] : []),
    ...(ways && !ways.shallower && !ways.outlet && !ways.gentler ? raisedRows(short, length) : []),
  ];
  return { title: "No way out there", live: false, about: [end, ...(away ? [away] : [])], rows, act };
}

/** Nothing in the ground works: the bed on fill that would, and the floor that goes with it. */
function raisedRows({ raised }: LaidProposal, length: (m: number) => string): Reading["rows"] {
  if (!raised) return [];
  return [
    {
      name: "No bed in the ground works nearby. Laid up from the outlet on fill, as high as",
      value: length(raised.over),
    },
    ...(raised.passing === null
      ? []
      : [{ name: "it passes the building at", value: length(raised.passing) }]),
    ...(raised.floor === null
      ? []
      : [{ name: "and works with the floor at least at", value: length(raised.floor) }]),
    { name: "Or take a pipe with", value: "an outlet farther off" },
  ];
}
