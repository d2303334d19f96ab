/** Test pits: a crossed ring, with what the pit met and how deep. */
import { placeResolver } from "../document/places";
import type { Project, TestPit } from "../document/schema";
import type { Results } from "../solve/results";
import { besidePoint, longestName, sizeOf } from "./beside";
import { type DrawContext, placeLabel } from "./context";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { pitRing } from "./sizes";
import { ellipsize } from "./text-width";
import { lengthText } from "./words";

const group = "pits";

/** All pits that have a place. */
export function drawPits(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget(group);
  const { survey, building } = project;
  if (survey.pits.length === 0) return { id: "pits", marks: [] };
  reserveLines(project, results, context);
  const place = placeResolver(survey, building?.outline ?? []);
  const marks = survey.pits.flatMap((pit): DrawingMark[] => {
    const { at } = place(pit.place);
    if (at === null) return [];
    const texts = pitTexts(pit, project);
    const label = placeLabel(
      context,
      group,
      texts.flatMap((text) => besidePoint(at, text, "pit-label", pitRing)),
      "over-lines",
    );
    return [
      { kind: "symbol", at, symbol: "ring", size: pitRing, style: "pit" },
      { kind: "symbol", at, symbol: "plus", size: pitRing, style: "pit" },
      ...label,
    ];
  });
  return { id: "pits", marks };
}

/** "pit 1: topsoil 8″, rock 3′ 2″", and the name alone where that has no room. */
function pitTexts(pit: TestPit, { display }: Project): readonly string[] {
  const met = [
    ["topsoil", pit.topsoil],
    ["old fill", pit.oldFill],
    ["rock", pit.rock],
    ["water", pit.water],
  ] as const;
  const depths = met.flatMap(([word, depth]) =>
    depth === null ? [] : [`${word} ${lengthText(depth.m, display)}`],
  );
  const name = ellipsize(pit.name || "pit", longestName, sizeOf("pit-label"));
  return depths.length === 0 ? [name] : [`${name}: ${depths.join(", ")}`, name];
}
