/** The lot's lines with bearing and length, and what stands on it. */
import { isArea } from "../document/features";
import type { Display, Feature, Project } from "../document/schema";
import { thingKey } from "../document/thing";
import { between, centroid, distance, type Point, pointAlong, polylineLength, signedArea } from "../geometry";
import { type LotLine, lotLines } from "../plot";
import type { Results } from "../solve/results";
import { formatAngle } from "../units";
import { along, besidePoint, capOf, longestName, sizeOf, telling } from "./beside";
import { type DrawContext, type LabelTexts, placeLabel, readable } from "./context";
import { keepClearLines } from "./keep-clear";
import { ledPlaces, placeLed } from "./leader";
import type { DrawingMark, MarkLayer } from "./marks";
import { reserveLines } from "./reserve";
import { featureSymbol } from "./sizes";
import type { StyleName } from "./styles";
import { ellipsize } from "./text-width";
import { lengthText, overAllText } from "./words";

/** Quadrant bearing of a direction, as a deed writes it: "S 88.5° W", "due east". `north` is the plan's north. */
export function bearingText(from: Point, to: Point, north: number): string {
  const turn = Math.atan2(to[0] - from[0], to[1] - from[1]) - north;
  const azimuth = ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const ns = Math.cos(azimuth) >= 0 ? "N" : "S";
  const ew = Math.sin(azimuth) >= 0 ? "E" : "W";
  const angle = formatAngle(Math.asin(Math.min(1, Math.abs(Math.sin(azimuth)))), 1);
  if (angle === formatAngle(0, 1)) return ns === "N" ? "due north" : "due south";
  if (angle === formatAngle(Math.PI / 2, 1)) return ew === "E" ? "due east" : "due west";
  return `${ns} ${angle} ${ew}`;
}

function lineLabel(
  project: Project,
  context: DrawContext,
  i: number,
  outward: 1 | -1,
): readonly DrawingMark[] {
  const { outline, north } = project.lot;
  const a = outline[i] as Point;
  const b = outline[(i + 1) % outline.length] as Point;
  const bearing = bearingText(a, b, north);
  const length = lengthText(distance(a, b), project.display);
  const text = `${bearing}  ${length}`;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const upright = readable(angle);
  // The text's own "up" may point into the lot; outside is then below the line.
  const outside = (Math.cos(upright - angle) > 0 ? 1 : -1) * outward;
  const off = 1.4 + capOf("lot-label") / 2;
  const candidates = [outside, -outside].flatMap((side) =>
    [0.5, 0.35, 0.65, 0.2, 0.8].map((t) => along(between(a, b, t), text, "lot-label", upright, side * off)),
  );
  return placeLabel(context, "lot", telling({ thing: "lot", length, rest: bearing }, candidates));
}

/** A curve is labelled once, by its radius and its length along it, beside the chords near its middle. */
function curveLabel(
  { first, pieces, curve }: LotLine,
  project: Project,
  context: DrawContext,
  outward: 1 | -1,
): readonly DrawingMark[] {
  if (curve === null) return [];
  const { outline } = project.lot;
  const length = lengthText(curve.length, project.display);
  const rest = `R ${lengthText(curve.radius, project.display)}`;
  const text = `${rest}, L ${length}`;
  const off = 1.4 + capOf("lot-label") / 2;
  const candidates = [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((share) => {
    const piece = (first + Math.floor(share * pieces)) % outline.length;
    const a = outline[piece] as Point;
    const b = outline[(piece + 1) % outline.length] as Point;
    const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
    const upright = readable(angle);
    const outside = (Math.cos(upright - angle) > 0 ? 1 : -1) * outward;
    return [outside, -outside].map((side) =>
      along(between(a, b, 0.5), text, "lot-label", upright, side * off),
    );
  });
  return placeLabel(context, "lot", telling({ thing: "lot", length, rest }, candidates));
}

/** The lot outline with bearing and length along each side. */
export function drawLot(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("lot");
  const { outline } = project.lot;
  if (outline.length < 3) return { id: "lot", marks: [] };
  const points = Float64Array.from(outline.flat());
  reserveLines(project, results, context);
  const outward = signedArea(outline) > 0 ? -1 : 1;
  const labels = lotLines(project.lot).flatMap((line) =>
    line.curve === null
      ? lineLabel(project, context, line.first, outward)
      : curveLabel(line, project, context, outward),
  );
  return { id: "lot", marks: [{ kind: "line", points, closed: true, style: "lot-line" }, ...labels] };
}

const featureWords: Readonly<Record<Feature["kind"], string>> = {
  tree: "tree",
  stump: "stump",
  well: "well",
  septic: "septic",
  "buried-line": "buried line",
  "overhead-line": "overhead line",
  house: "house",
  fence: "fence",
  road: "road",
  water: "water",
  other: "",
};

const dangers: readonly Feature["kind"][] = ["buried-line", "overhead-line"];

function featureStyle(feature: Feature): StyleName {
  if (dangers.includes(feature.kind)) return "feature-danger";
  if (feature.kind === "water") return "feature-water";
  return feature.kind === "fence" || feature.kind === "septic" ? "feature-line" : "feature";
}

function featureShape(feature: Feature): DrawingMark {
  const style = featureStyle(feature);
  const [first] = feature.points;
  if (feature.points.length === 1 && first) {
    const symbol = feature.kind === "tree" || feature.kind === "well" ? "ring" : "plus";
    return { kind: "symbol", at: first, symbol, size: featureSymbol, style };
  }
  const points = Float64Array.from(feature.points.flat());
  const closed = isArea(feature);
  if (closed && feature.kind === "water") return { kind: "area", rings: [points], style };
  return { kind: "line", points, closed, style };
}

/** The name, with the distance to keep; the name alone where that has no room. */
function featureTexts(feature: Feature, display: Display, style: StyleName): readonly string[] {
  const danger = dangers.includes(feature.kind);
  const name = ellipsize(
    feature.name || featureWords[feature.kind],
    longestName,
    sizeOf(style),
    danger ? 600 : 400,
  );
  if (feature.keepClear <= 0) return name ? [name] : [];
  const off = `keep off ${overAllText(feature.keepClear, display)}`;
  return name ? [`${name}, ${off}`, name] : [off];
}

function featureLabel(feature: Feature, display: Display, context: DrawContext): readonly DrawingMark[] {
  const danger = dangers.includes(feature.kind);
  const style: StyleName = danger ? "feature-danger-label" : "feature-label";
  const texts = featureTexts(feature, display, style);
  if (texts.length === 0) return [];
  const { points } = feature;
  const [first, second] = points;
  if (!first) return [];
  if (!second) {
    const told = {
      thing: thingKey({ kind: "feature", id: feature.id }),
      length: overAllText(feature.keepClear, display),
      rest: texts[1] ?? "",
    };
    const beside = texts.flatMap((text) => {
      const places = besidePoint(first, text, style, featureSymbol);
      return text.endsWith(told.length) ? telling(told, places) : places;
    });
    return placeLabel(context, "features", beside);
  }
  if (isArea(feature)) {
    return placeLabel(
      context,
      "features",
      texts.map((text) => along(centroid(points), text, style, -context.turn)),
    );
  }
  const candidates = texts.flatMap((text) => besideLine(points, text, style));
  return danger
    ? dangerLabel(points, texts, candidates, context)
    : placeLabel(context, "features", candidates);
}

/** What can hurt is named as long as there is any room: along its line, else at the end of a leader; on paper at last wherever it may be. */
function dangerLabel(
  points: readonly Point[],
  texts: readonly string[],
  along: readonly LabelTexts[],
  context: DrawContext,
): readonly DrawingMark[] {
  const style = "feature-danger-label";
  const beside = placeLabel(context, "features", along, "over-lines");
  if (beside.length > 0) return beside;
  const { at, direction } = pointAlong(points, polylineLength(points) / 2);
  const out = Math.atan2(direction[1], direction[0]) + Math.PI / 2;
  const led = texts.flatMap((text) => ledPlaces(at, out, { text, style }, context));
  const far = placeLed(context, "features", at, led, { style: "note-leader", over: "over-lines" });
  return far.length > 0 || context.medium === "screen" ? far : placeLabel(context, "features", along, true);
}

/** Along either side of each piece of a line. */
function besideLine(points: readonly Point[], text: string, style: StyleName): readonly LabelTexts[] {
  const off = 1 + capOf(style) / 2;
  return points.slice(1).flatMap((end, i) => {
    const start = points[i] as Point;
    const angle = readable(Math.atan2(end[1] - start[1], end[0] - start[0]));
    return [0.5, 0.3, 0.7].flatMap((t) =>
      [off, -off].map((side) => along(between(start, end, t), text, style, angle, side)),
    );
  });
}

/** Trees, wells, lines in the ground and overhead, fences, roads and water, with their names. */
export function drawFeatures(project: Project, results: Results, context: DrawContext): MarkLayer {
  context.labels.forget("features");
  const { features } = project.lot;
  reserveLines(project, results, context);
  const shapes = features.flatMap((feature) => [
    ...keepClearLines(feature).map(
      ({ points, closed }): DrawingMark => ({ kind: "line", points, closed, style: "keep-clear" }),
    ),
    featureShape(feature),
  ]);
  return {
    id: "features",
    marks: [...shapes, ...features.flatMap((feature) => featureLabel(feature, project.display, context))],
  };
}
