/** The roof: what each slope side sheds, and where it is led. */
import { type Roof, siteEdits } from "../../document";
import { containsPoint, nearestOnPolyline, type Point } from "../../geometry";
import type { RoofSide } from "../../solve/results";
import { run, tryRun } from "../../store/actions";
import { Choice } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { type Fact, Facts } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { wallName } from "../words";
import { Fold } from "./Fold";

const shapes = [
  { value: "unknown", words: "not told yet" },
  { value: "gable", words: "two sides, ridge the long way" },
  { value: "gable-across", words: "two sides, ridge across" },
  { value: "one-way", words: "falls to one wall" },
  { value: "hip", words: "hip: falls to every wall" },
] as const;

function changeRoof(patch: Partial<Roof>) {
  return tryRun(siteEdits.changeDrainage, { part: "roof", patch });
}

export function RoofWater() {
  const roof = useProject(({ drainage }) => drainage.roof);
  const outline = useProject(({ building }) => building?.outline ?? null);
  const sides = useResults(({ water }) => water.roof);
  if (!outline) return null;
  const corners = outline.length;
  return (
    <Fold
      title="Roof"
      aside={shapes.find(({ value }) => value === roof.shape)?.words ?? ""}
      open={roof.shape !== "unknown"}
    >
      <Choice
        label="Shape"
        value={roof.shape}
        options={shapes}
        onChoose={(shape) => run(siteEdits.changeDrainage, { part: "roof", patch: { shape } })}
      />
      {roof.shape === "one-way" ? (
        <Choice
          label="Falls to"
          value={String(roof.lowWall)}
          options={outline.map((_, wall) => ({
            value: String(wall),
            words: `wall ${wallName(corners, wall)}`,
          }))}
          onChoose={(wall) =>
            run(siteEdits.changeDrainage, { part: "roof", patch: { lowWall: Number(wall) } })
          }
        />
      ) : null}
      {roof.shape === "unknown" ? (
        <p className="soft small">Told its shape, the roof's water joins the flow where it comes down.</p>
      ) : (
        <>
          <LengthField
            label="Reaches over the walls"
            small
            m={roof.overhang}
            least={0}
            onCommit={(overhang) => changeRoof({ overhang })}
          />
          <NumberField
            label="Part that runs off"
            value={roof.runoff}
            help="C of a roof: 0.75 to 0.95 (ASCE)."
            onCommit={(runoff) => changeRoof({ runoff })}
          />
        </>
      )}
      {roof.shape !== "unknown" && sides === null ? (
        <p className="soft small">
          A hip over an outline with inner corners can't be split here. Choose the shape that comes nearest.
        </p>
      ) : null}
      {(sides ?? []).map((side) => (
        <SideCard key={side.wall} side={side} roof={roof} outline={outline} />
      ))}
    </Fold>
  );
}

interface SideCardProps {
  readonly side: RoofSide;
  readonly roof: Roof;
  readonly outline: readonly Point[];
}

function SideCard({ side, roof, outline }: SideCardProps) {
  const swales = useProject(({ grading }) => grading.swales);
  const notation = useNotation();
  const others = roof.outlets.filter(({ wall }) => wall !== side.wall);
  const [a, b] = [outline[side.wall], outline[(side.wall + 1) % outline.length]];
  const set = (at: [number, number] | null) =>
    changeRoof({ outlets: at ? [...others, { wall: side.wall, at }] : others });
  const lead = (to: string) => {
    if (to === "eave") return set(null);
    const swale = swales.find(({ id }) => id === to);
    if (!a || !b) return null;
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (!swale) return set(besideWall([a, b], outline, roof.overhang + clearOfWall));
    const { x, y } = nearestOnPolyline(swale.line, middle[0], middle[1]);
    return set([x, y]);
  };
  const led = swales.find(
    ({ line }) => side.outlet && nearestOnPolyline(line, side.outlet[0], side.outlet[1]).distance < 0.01,
  );
  return (
    <div className="card">
      <p>
        <b>{`Side at wall ${side.name.replace("-", "–")}`}</b>
      </p>
      <Facts facts={sideFacts(side, notation)} />
      <Choice
        label="Its downspouts come out"
        value={side.outlet ? (led?.id ?? "place") : "eave"}
        options={[
          { value: "eave", words: "nowhere: it drips along the eave" },
          ...swales.map(({ id, name }) => ({ value: id, words: `into ${name}` })),
          { value: "place", words: "at a place of their own" },
        ]}
        onChoose={lead}
      />
      {side.outlet && !led ? <OutletPlace at={side.outlet} onSet={set} /> : null}
    </div>
  );
}

/** A downspout that is given a place comes out so far beyond the eave at first, m. */
const clearOfWall = 1;

/** Before the middle of a wall, outside the building. */
function besideWall(
  [a, b]: readonly [Point, Point],
  outline: readonly Point[],
  off: number,
): [number, number] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [nx, ny] = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
  const at = (side: 1 | -1): [number, number] => [
    (a[0] + b[0]) / 2 + side * off * nx,
    (a[1] + b[1]) / 2 + side * off * ny,
  ];
  const [x, y] = at(1);
  return containsPoint(outline, x, y) ? at(-1) : [x, y];
}

function OutletPlace({
  at,
  onSet,
}: {
  at: Point;
  onSet: (at: [number, number]) => ReturnType<typeof changeRoof>;
}) {
  return (
    <>
      <LengthField label="Outlet, east" m={at[0]} onCommit={(x) => onSet([x, at[1]])} />
      <LengthField label="Outlet, north" m={at[1]} onCommit={(y) => onSet([at[0], y])} />
    </>
  );
}

function sideFacts(side: RoofSide, notation: ReturnType<typeof useNotation>): Fact[] {
  return [
    { name: "Area in plan", figure: notation.area(side.area) },
    {
      name: "Peak",
      figure: side.peak === null ? "type the rain" : notation.flow(side.peak),
      why: { kind: "roof side", id: String(side.wall), of: `peak of the roof at wall ${side.name}` },
    },
    ...(side.volume === null ? [] : [{ name: "In the whole storm", figure: notation.volume(side.volume) }]),
    ...(side.joins === null
      ? []
      : [{ name: "Joins", figure: side.joins, note: `${Math.round(100 * side.joining)} % of it` }]),
  ];
}
