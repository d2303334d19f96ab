/** Sides, diagonals, area, and which way the thing lies. */
import { arrangeEdits, shapeEdits, type Thing, thingShape } from "../../document";
import { boundsOf, centroid, perimeter, polylineLength, signedArea } from "../../geometry";
import { tryRun } from "../../store/actions";
import { formatAngle, formatBearing, parseAngle, parseBearing } from "../../units";
import { LengthField, refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { type Fact, Facts } from "../parts";
import { useNotation, useProject } from "../useProject";
import { bearingOf, diagonalsOf, sidesOf } from "./places";
import type { Part } from "./toldByStep";

interface SidesProps {
  readonly thing: Thing;
  readonly locked: boolean;
}

const mostShown = 60;

export function Sides({ thing, locked, told }: SidesProps & { readonly told: ReadonlySet<Part> }) {
  const project = useProject((now) => now);
  const sides = told.has("sides") ? [] : sidesOf(project, thing);
  const measured = thing.kind === "dimension";
  return (
    <>
      {sides.length > 0 ? (
        <section className="inspector-part" aria-label="Sides">
          <h3 className="part-title">{sides.length === 1 ? "Length" : "Sides"}</h3>
          <div className="inspector-sides">
            {sides.slice(0, mostShown).map(({ name, m }, side) => (
              <LengthField
                key={name}
                label={name}
                m={m}
                locked={locked}
                disabled={measured}
                onCommit={(length) => tryRun(shapeEdits.setSide, { thing, side, length })}
              />
            ))}
          </div>
        </section>
      ) : null}
      {told.has("bearing") ? null : <Bearing thing={thing} locked={locked} />}
      <Whole thing={thing} told={told} />
    </>
  );
}

function Bearing({ thing, locked }: SidesProps) {
  const project = useProject((now) => now);
  const bearing = bearingOf(project, thing);
  const shape = thingShape(project, thing);
  if (bearing === null || !shape) return null;
  const [first] = sidesOf(project, thing);
  // A picture's turn is told as in its step, to either side.
  const isTurn = thing.kind === "underlay";
  const label = isTurn ? "Turned clockwise" : `Bearing of ${first?.name ?? "its line"}`;
  const box = boundsOf(shape.points);
  const about = shape.closed
    ? centroid(shape.points)
    : ([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const);
  const commit = (text: string): string | null => {
    const parsed = isTurn ? parseAngle(text) : parseBearing(text);
    if (!parsed.ok) return parsed.message;
    const angle = bearing - parsed.radians;
    return refusal(tryRun(arrangeEdits.turnThings, { things: [thing], about: [about[0], about[1]], angle }));
  };
  const shown = isTurn
    ? formatAngle(Math.atan2(Math.sin(bearing), Math.cos(bearing)))
    : formatBearing(bearing, 2);
  return <TypedField label={label} shown={shown} locked={locked} commit={commit} />;
}

/** Figures that follow from the others. */
function Whole({ thing, told }: { thing: Thing; told: ReadonlySet<Part> }) {
  const project = useProject((now) => now);
  const notation = useNotation();
  const shape = thingShape(project, thing);
  if (!shape || shape.points.length < 2 || thing.kind === "door" || thing.kind === "window") return null;
  const { points, closed } = shape;
  const facts: (Fact & { readonly part: Part })[] = [
    ...diagonalsOf(project, thing).map(({ name, m }) => ({
      part: "diagonals" as const,
      name: `Diagonal ${name}`,
      figure: notation.length(m),
    })),
    ...(closed
      ? [
          { part: "area" as const, name: "Area", figure: notation.area(Math.abs(signedArea(points))) },
          { part: "round it" as const, name: "Round it", figure: notation.length(perimeter(points)) },
        ]
      : []),
    ...(!closed && points.length > 2
      ? [
          {
            part: "whole length" as const,
            name: "Whole length",
            figure: notation.length(polylineLength(points)),
          },
        ]
      : []),
  ];
  const untold = facts.filter(({ part }) => !told.has(part));
  return untold.length > 0 ? <Facts facts={untold} /> : null;
}
