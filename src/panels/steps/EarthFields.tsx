import { figureSource, type Materials, siteEdits, soilOf, soils } from "../../document";
import { tryRun } from "../../store/actions";
import { CUBIC_YARD, halfWidth, parseNumber, SHORT_TON } from "../../units";
import { Undercuts } from "../cost/Undercuts";
import { Action, Choice, Toggle } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { LengthField, refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { useNotation, useProject, useResults } from "../useProject";
import { counted } from "../words";

/** What the earth is counted with: stripping, soil, holes, stone and the truck. */
export function EarthFields() {
  const notation = useNotation();
  const materials = useProject((project) => project.materials);
  const change = (patch: Partial<Materials>) => tryRun(siteEdits.changeMaterials, { patch });
  const { stumpHole } = materials;
  return (
    <>
      <LengthField
        label="Strip topsoil"
        small
        m={materials.stripDepth}
        least={0}
        onCommit={(stripDepth) => change({ stripDepth })}
      />
      <StripByPits />
      <LengthField
        label="Topsoil back on top"
        small
        m={materials.respread}
        least={0}
        help={`Where nothing is built or driven on. ${notation.rule("4 to 6 in", "10 to 15 cm")} lets grass grow: common practice.`}
        onCommit={(respread) => change({ respread })}
      />
      <SoilFields />
      <Toggle
        label="My own cut makes the fill, as far as it goes"
        on={materials.cutAsFill}
        onToggle={(cutAsFill) => change({ cutAsFill })}
      />
      <LengthField
        label="Stump holes, across"
        small
        m={stumpHole.width}
        least={0}
        onCommit={(width) => change({ stumpHole: { ...stumpHole, width } })}
      />
      <LengthField
        label="Stump holes, deep"
        small
        m={stumpHole.depth}
        least={0}
        onCommit={(depth) => change({ stumpHole: { ...stumpHole, depth } })}
      />
      <Undercuts />
      <NumberField
        label="Stone, loose for one compacted"
        value={materials.stoneLoose}
        help={`Crushed stone 1.15 to 1.2. From: ${figureSource(materials, "stoneLoose")}.`}
        onCommit={(stoneLoose) => change({ stoneLoose })}
      />
      <TruckFields />
    </>
  );
}

/** A usual soil to take, or figures of one's own. */
function SoilFields() {
  const materials = useProject((project) => project.materials);
  const { swell, shrink, weights } = materials;
  const notation = useNotation();
  const change = (patch: Partial<Materials>) => tryRun(siteEdits.changeMaterials, { patch });
  const taken = soilOf(materials);
  const own = { value: "own" as const, words: "figures of your own" };
  return (
    <>
      <Choice
        label="Soil"
        value={taken?.kind ?? own.value}
        options={[...soils.map(({ kind, name }) => ({ value: kind, words: name })), ...(taken ? [] : [own])]}
        onChoose={(kind) => {
          const soil = soils.find((each) => each.kind === kind);
          if (soil)
            change({ swell: soil.swell, shrink: soil.shrink, weights: { ...weights, earth: soil.weight } });
        }}
        help="Usual figures, to be typed over below: tests of your own soil count for more."
      />
      <NumberField
        label="Swell"
        value={swell}
        help={`Loose for one in the bank. From: ${figureSource(materials, "swell")}.`}
        onCommit={(next) => change({ swell: next })}
      />
      <NumberField
        label="Shrink"
        value={shrink}
        help={`Compacted for one in the bank. From: ${figureSource(materials, "shrink")}.`}
        onCommit={(next) => change({ shrink: next })}
      />
      {(["earth", "topsoil", "stone"] as const).map((of) => (
        <WeightField
          key={of}
          label={{ earth: "Earth weighs, in the bank", topsoil: "Topsoil, loose", stone: "Stone, loose" }[of]}
          perVolume={weights[of]}
          source={figureSource(materials, of === "earth" ? "weight" : of)}
          yards={notation.display.volume === "yd3"}
          onCommit={(kg) => change({ weights: { ...weights, [of]: kg } })}
        />
      ))}
    </>
  );
}

interface WeightFieldProps {
  readonly label: string;
  /** kg/m3. */
  readonly perVolume: number;
  /** Where the figure comes from. */
  readonly source: string;
  readonly yards: boolean;
  readonly onCommit: (perVolume: number) => ReturnType<typeof tryRun>;
}

function WeightField({ label, perVolume, source, yards, onCommit }: WeightFieldProps) {
  const size = yards ? POUND / CUBIC_YARD : 1;
  return (
    <NumberField
      label={label}
      unit={yards ? "lb/yd³" : "kg/m³"}
      value={perVolume / size}
      decimals={0}
      help={`From: ${source}.`}
      onCommit={(typed) => onCommit(typed * size)}
    />
  );
}

/** kg; exact. */
const POUND = 0.45359237;

function TruckFields() {
  const truck = useProject((project) => project.truck);
  const notation = useNotation();
  const yards = notation.display.volume === "yd3";
  const ton = yards ? SHORT_TON : 1000;
  const holds = (text: string): string | null => {
    const number = numberIn(text);
    if (!(number > 0))
      return `Can't read "${text.trim()}" as a volume. Write a number of ${yards ? "cubic yards" : "cubic metres"}, like 12.`;
    return refusal(tryRun(siteEdits.changeTruck, { patch: { volume: number * (yards ? CUBIC_YARD : 1) } }));
  };
  const carries = (text: string): string | null => {
    if (text.trim() === "") return refusal(tryRun(siteEdits.changeTruck, { patch: { payload: null } }));
    const number = numberIn(text);
    if (!(number > 0)) return `Can't read "${text.trim()}" as a weight. Write a number of tons, like 14.`;
    return refusal(tryRun(siteEdits.changeTruck, { patch: { payload: number * ton } }));
  };
  return (
    <>
      <TypedField label="A truck holds, loose" shown={notation.volume(truck.volume)} commit={holds} />
      <TypedField
        label="and may carry"
        placeholder="not typed"
        unit={yards ? "tons" : "t"}
        shown={truck.payload === null ? "" : String(Math.round((truck.payload / ton) * 100) / 100)}
        help="Earth and stone fill a truck by weight before it is full: of both the smaller counts."
        commit={carries}
      />
    </>
  );
}

function numberIn(text: string): number {
  return parseNumber(halfWidth(text).replace(/[^\d.,-]/g, ""));
}

/** What the test pits met, offered for the strip; nothing is taken unasked. */
function StripByPits() {
  const topsoil = useResults(({ pits }) => pits.topsoil);
  const strip = useProject(({ materials }) => materials.stripDepth);
  const notation = useNotation();
  if (topsoil === null) return null;
  const { mean, least, most, count, of } = topsoil;
  const pits = count === of ? counted(of, "test pit") : `${count} of ${counted(of, "test pit")}`;
  const range = count > 1 ? `, from ${notation.length(least)} to ${notation.length(most)}` : "";
  const taken = Math.abs(mean - strip) < 0.0005;
  return (
    <div className="usual">
      <span className="soft small">
        {`${pits}: ${notation.length(mean)} of topsoil${count > 1 ? " on average" : ""}${range}.`}
        {taken ? " The strip goes by it." : ""}
      </span>
      {taken ? null : (
        <Action
          look="quiet"
          onPress={() => tryRun(siteEdits.changeMaterials, { patch: { stripDepth: mean } })}
        >
          {`Take ${notation.length(mean)}`}
        </Action>
      )}
    </div>
  );
}
