/** A card for each parking pad, terrace, berm, retaining wall and grade point. */
import { type Berm, type GradePoint, type GroundPad, gradingEdits, type RetainingWall } from "../../document";
import { run, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { compass } from "../../units";
import { Action, Choice, IconAction } from "../fields/Choice";
import { AngleField, NumberField, SlopeField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Told } from "../inspector/Told";
import { Caution, Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

export function EarthShapes() {
  const { pads, berms, walls, points } = useProject(({ grading }) => grading);
  return (
    <>
      {pads.map((pad) => (
        <Told key={pad.id} thing={{ kind: "pad", id: pad.id }}>
          <PadCard pad={pad} />
        </Told>
      ))}
      {berms.map((berm) => (
        <Told key={berm.id} thing={{ kind: "berm", id: berm.id }}>
          <BermCard berm={berm} />
        </Told>
      ))}
      {walls.map((wall) => (
        <Told key={wall.id} thing={{ kind: "retaining-wall", id: wall.id }}>
          <WallCard wall={wall} />
        </Told>
      ))}
      {points.map((point) => (
        <Told key={point.id} thing={{ kind: "grade-point", id: point.id }}>
          <PointCard point={point} />
        </Told>
      ))}
      <Action icon="draw" look="quiet" onPress={() => pickTool("earth")}>
        Draw a pad, terrace, berm or wall
      </Action>
    </>
  );
}

function remove(name: string, onPress: () => void) {
  return <IconAction icon="trash" label={`Remove ${name}`} onPress={onPress} />;
}

const levels = [
  { value: "ground", words: "as the ground lies" },
  { value: "height", words: "a height" },
  { value: "floor", words: "from the floor" },
] as const;

function PadCard({ pad }: { pad: GroundPad }) {
  const notation = useNotation();
  const result = useResults(({ grading }) => grading?.pads.find(({ id }) => id === pad.id) ?? null);
  const floor = useProject(({ building }) => building?.floor ?? 0);
  const { id, level } = pad;
  const change = (patch: Partial<Omit<GroundPad, "id">>) => tryRun(gradingEdits.changePad, { id, patch });
  const chooseLevel = (kind: GroundPad["level"]["kind"]) => {
    const height = result?.height ?? floor;
    if (kind === "ground") change({ level: { kind } });
    else change({ level: kind === "height" ? { kind, height } : { kind, above: height - floor } });
  };
  return (
    <Section
      title={pad.name}
      follows="floor"
      aside={remove(pad.name, () => run(gradingEdits.removePad, { id }))}
    >
      {result ? (
        <Facts
          facts={[
            { name: "Height at its middle", figure: notation.length(result.height) },
            {
              name: "Lowest and highest",
              figure: `${notation.length(result.lowest)} – ${notation.length(result.highest)}`,
            },
            { name: "Area", figure: notation.area(result.area) },
          ]}
        />
      ) : null}
      <WordsField label="Name" text={pad.name} onCommit={(name) => change({ name })} />
      <Choice label="Its height" value={level.kind} options={levels} onChoose={chooseLevel} />
      {level.kind === "height" ? (
        <LengthField
          label="Height"
          m={level.height}
          onCommit={(height) => change({ level: { kind: "height", height } })}
        />
      ) : null}
      {level.kind === "floor" ? (
        <LengthField
          label="Above the floor"
          m={level.above}
          onCommit={(above) => change({ level: { kind: "floor", above } })}
        />
      ) : null}
      <SlopeField label="It falls" ratio={pad.fall} onCommit={(fall) => change({ fall })} />
      <AngleField
        label="Towards"
        radians={pad.towards}
        help="Counted from the east, against the clock."
        onCommit={(towards) => change({ towards })}
      />
      <Sides fill={pad.fillSlope} cut={pad.cutSlope} change={change} />
      <LengthField label="Stone" small m={pad.gravel} least={0} onCommit={(gravel) => change({ gravel })} />
    </Section>
  );
}

function Sides({
  fill,
  cut,
  change,
}: {
  fill: number;
  cut: number;
  change: (patch: { fillSlope?: number; cutSlope?: number }) => ReturnType<typeof tryRun>;
}) {
  return (
    <>
      <NumberField
        label="Fill slopes"
        unit=": 1"
        value={fill}
        onCommit={(fillSlope) => change({ fillSlope })}
      />
      <NumberField label="Cut slopes" unit=": 1" value={cut} onCommit={(cutSlope) => change({ cutSlope })} />
    </>
  );
}

function BermCard({ berm }: { berm: Berm }) {
  const { id } = berm;
  const change = (patch: Partial<Omit<Berm, "id">>) => tryRun(gradingEdits.changeBerm, { id, patch });
  return (
    <Section title={berm.name} aside={remove(berm.name, () => run(gradingEdits.removeBerm, { id }))}>
      <WordsField label="Name" text={berm.name} onCommit={(name) => change({ name })} />
      <LengthField label="Above the ground" m={berm.height} onCommit={(height) => change({ height })} />
      <LengthField
        label="Top width"
        m={berm.topWidth}
        least={0}
        onCommit={(topWidth) => change({ topWidth })}
      />
      <NumberField
        label="Side slopes"
        unit=": 1"
        value={berm.sideSlope}
        onCommit={(sideSlope) => change({ sideSlope })}
      />
    </Section>
  );
}

const holds = [
  { value: "fill", words: "fill above it" },
  { value: "cut", words: "the ground above a cut" },
] as const;
const lowSides = [
  { value: "left", words: "left of its line" },
  { value: "right", words: "right of its line" },
] as const;

function WallCard({ wall }: { wall: RetainingWall }) {
  const notation = useNotation();
  const result = useResults(({ grading }) => grading?.walls.find(({ id }) => id === wall.id) ?? null);
  const north = useProject(({ lot }) => lot.north);
  const { id } = wall;
  const change = (patch: Partial<Omit<RetainingWall, "id">>) =>
    tryRun(gradingEdits.changeRetainingWall, { id, patch });
  return (
    <Section
      title={wall.name}
      follows="floor"
      aside={remove(wall.name, () => run(gradingEdits.removeRetainingWall, { id }))}
    >
      {result ? (
        <Facts
          facts={[
            { name: "Ground stands higher behind it by", figure: notation.length(result.exposed) },
            ...(wall.exposed !== null && result.holds > result.exposed + 0.005
              ? [{ name: "What comes to it would stand", figure: notation.length(result.holds) }]
              : []),
            { name: "From the bottom of its footing", figure: notation.length(result.fromFooting) },
            { name: "Loaded from above by", figure: result.loadedBy ?? "nothing" },
            ...result.ends.map((end) => ({
              name: `${wall.holds === "fill" ? "Fill" : "The cut"} runs round its ${compass(end.towards, north)} end by`,
              figure: `${end.meets ? "" : "more than "}${notation.length(end.past)}`,
            })),
            ...(result.ends.length > 0 && result.wantedLength !== null
              ? [{ name: "Length that would keep it back", figure: notation.length(result.wantedLength) }]
              : []),
          ]}
        />
      ) : null}
      <WordsField label="Name" text={wall.name} onCommit={(name) => change({ name })} />
      <Choice
        label="It holds"
        value={wall.holds}
        options={holds}
        onChoose={(value) => change({ holds: value })}
      />
      <Choice
        label="Lower ground"
        value={wall.lowSide}
        options={lowSides}
        onChoose={(lowSide) => change({ lowSide })}
      />
      <LengthField
        label="Height that shows"
        m={wall.exposed}
        placeholder="as needed"
        onEmpty={() => change({ exposed: null })}
        onCommit={(exposed) => change({ exposed })}
      />
      {wall.exposed === null ? null : (
        <LengthField
          label={wall.holds === "fill" ? "Ground level behind it for" : "Ground level in front for"}
          m={wall.level}
          least={0}
          onCommit={(level) => change({ level })}
        />
      )}
      <p className="soft small">{builtWords(wall)}</p>
      <LengthField
        label="Down to its footing's bottom"
        m={wall.buried}
        least={0}
        onCommit={(buried) => change({ buried })}
      />
      <Caution>
        {`Over ${notation.rule("4 ft", "1.22 m")} from the bottom of its footing, or with any load above it, a wall usually needs a permit and an engineer's design.`}
      </Caution>
    </Section>
  );
}

/** What the typed height does to the ground. */
function builtWords({ exposed, holds }: RetainingWall): string {
  if (exposed === null) return "With no height typed it follows the ground that comes to it.";
  return holds === "fill"
    ? "The ground behind is built to this height over the ground in front, all along; the side slopes go on from there."
    : "The ground in front is dug to this height under the ground behind, all along; the side slopes go on from there.";
}

function PointCard({ point }: { point: GradePoint }) {
  const { id } = point;
  const change = (patch: Partial<Omit<GradePoint, "id">>) =>
    tryRun(gradingEdits.changeGradePoint, { id, patch });
  return (
    <Section title={point.name} aside={remove(point.name, () => run(gradingEdits.removeGradePoint, { id }))}>
      <WordsField label="Name" text={point.name} onCommit={(name) => change({ name })} />
      <LengthField label="Height" m={point.height} onCommit={(height) => change({ height })} />
      <Sides fill={point.fillSlope} cut={point.cutSlope} change={change} />
    </Section>
  );
}
