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

interface SidesProps {
  readonly thing: Thing;
  readonly locked: boolean;
}

const mostShown = 60;

export function Sides({ thing, locked }: SidesProps) {
  const project = useProject((now) => now);
  const sides = sidesOf(project, thing);
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
      <Bearing thing={thing} locked={locked} />
      <Whole thing={thing} />
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
function Whole({ thing }: { thing: Thing }) {
  const project = useProject((now) => now);
  const notation = useNotation();
  const shape = thingShape(project, thing);
  if (!shape || shape.points.length < 2 || thing.kind === "door" || thing.kind === "window") return null;
  const facts: Fact[] = diagonalsOf(project, thing).map(({ name, m }) => ({
    name: `Diagonal ${name}`,
    figure: notation.length(m),
  }));
  if (shape.closed) {
    facts.push({ name: "Area", figure: notation.area(Math.abs(signedArea(shape.points))) });
    facts.push({ name: "Round it", figure: notation.length(perimeter(shape.points)) });
  } else if (shape.points.length > 2) {
    facts.push({ name: "Whole length", figure: notation.length(polylineLength(shape.points)) });
  }
  return facts.length > 0 ? <Facts facts={facts} /> : null;
}
