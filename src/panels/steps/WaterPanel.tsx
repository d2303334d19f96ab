import { memo } from "react";
import { type Apron, type Swale, siteEdits } from "../../document";
import type { SwaleResult } from "../../solve/results";
import { swaleVerdict } from "../../solve/swale-verdict";
import { goTo, run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { Action, IconAction, Toggle } from "../fields/Choice";
import { NumberField, SlopeField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Sides } from "../grading/Sides";
import { SwaleShape } from "../grading/SwaleShape";
import { Icon } from "../icons";
import { Told } from "../inspector/Told";
import { Caution, Facts, Panel, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { BareEarth } from "../water/BareEarth";
import { Fold } from "../water/Fold";
import { FollowedBy } from "../water/FollowedBy";
import { FootingDrain } from "../water/FootingDrain";
import { Leaving } from "../water/Leaving";
import { LowPlaces } from "../water/LowPlaces";
import { Pipes } from "../water/Pipes";
import { RoofWater } from "../water/RoofWater";
import { Storm } from "../water/Storm";
import { SwaleInStorm } from "../water/SwaleInStorm";
import { WallChecks } from "../water/WallChecks";
import { guessedNote, wallName } from "../words";

export function WaterPanel() {
  return (
    <Panel step="water" purpose="Rain must leave every wall, and the hill's water must go round.">
      <WallChecks />
      <LowPlaces />
      <Swales />
      <Pipes />
      <Storm />
      <RoofWater />
      <Leaving />
      <RoundTheWalls />
      <Sides />
      <FootingDrain />
      <BareEarth />
      <FollowedBy />
      <Caution>
        Don't send water to a neighbour, a road or a septic field. A ditch at a road, wet land and streams may
        need a permit. This is planning, not an engineer's drainage design.
      </Caution>
    </Panel>
  );
}

function Swales() {
  const swales = useProject(({ grading }) => grading.swales);
  const results = useResults(({ water }) => water.swales);
  const leastFall = useProject(({ rules }) => rules.leastSwaleFall);
  const notation = useNotation();
  return (
    <Section title="Swales">
      {swales.length === 0 ? (
        <p className="soft small">
          A shallow ditch on the uphill side that leads the hill's water round. Draw it from its high end to
          where it comes out at the surface.
        </p>
      ) : null}
      {swales.map((swale) => (
        <Told key={swale.id} thing={{ kind: "swale", id: swale.id }}>
          <SwaleCard swale={swale} result={results.find(({ id }) => id === swale.id) ?? null} />
        </Told>
      ))}
      <Action
        icon="place"
        look={swales.length === 0 ? "accent" : "quiet"}
        onPress={() => pickTool("swale-route")}
      >
        Lay one from start to outlet
      </Action>
      <Action icon="draw" look="quiet" onPress={() => pickTool("swale")}>
        {swales.length === 0 ? "Draw it yourself" : "Draw another yourself"}
      </Action>
      <Fold title="What is asked of swales" aside={notation.slope(leastFall)} open={false}>
        <LeastFall />
        <OffWall />
      </Fold>
    </Section>
  );
}

function LeastFall() {
  const fall = useProject(({ rules }) => rules.leastSwaleFall);
  const notation = useNotation();
  return (
    <SlopeField
      label="Least bed fall"
      ratio={fall}
      help={`${notation.slope(0.01)} is the least that works in grass, ${notation.slope(0.02)} is better.`}
      onCommit={(ratio) => tryRun(siteEdits.changeRules, { patch: { leastSwaleFall: ratio } })}
    />
  );
}

function OffWall() {
  const notation = useNotation();
  const off = useProject(({ rules }) => rules.swaleOffWall);
  return (
    <LengthField
      label="Laid off the walls by"
      m={off}
      help={`How far a line that is laid for you keeps from every wall: ${notation.rule("10 ft", "3 m")} leaves room for the apron (common practice).`}
      onCommit={(swaleOffWall) => tryRun(siteEdits.changeRules, { patch: { swaleOffWall } })}
    />
  );
}

/** Side slopes that a mower can go on, run for one of rise: common practice, no source. */
const mown = 3;

const SwaleCard = memo(function SwaleCard({ swale, result }: { swale: Swale; result: SwaleResult | null }) {
  const { id } = swale;
  const notation = useNotation();
  const leastFall = useProject(({ rules }) => rules.leastSwaleFall);
  const guessed = useResults((results) => results.guessed.swales);
  const change = (patch: Partial<Omit<Swale, "id">>) => tryRun(siteEdits.changeSwale, { id, patch });
  return (
    <div className="card">
      <WordsField label="Name" text={swale.name} onCommit={(name) => change({ name })} />
      {result ? (
        <>
          <p className={`check check-${result.drains ? "ok" : "bad"}`}>
            <Icon name={result.drains ? "check" : "warn"} />
            <span>
              <b>{`It ${swaleVerdict(result, leastFall)}.`}</b> {result.why}
            </span>
          </p>
          <Facts
            facts={[
              {
                name: "Length",
                figure: notation.length(result.length),
                ...guessedNote(guessed.find((each) => each.id === id)?.share),
              },
              {
                name: "Least fall of its bed",
                figure: notation.slope(result.leastFall),
                why: { kind: "swale", id, of: `least fall of ${swale.name}` },
              },
            ]}
          />
          <SwaleInStorm id={id} drains={result.drains} />
        </>
      ) : null}
      <Fold title="Its shape" aside={`${notation.length(swale.depth)} deep at its high end`} open={false}>
        <LengthField
          label="Depth at its high end"
          m={swale.depth}
          least={0}
          onCommit={(depth) => change({ depth })}
        />
        <SlopeField
          label="Bed falls"
          ratio={swale.fall}
          placeholder="evenly"
          help="Empty: an even fall to the ground at its outlet."
          onEmpty={() => change({ fall: null })}
          onCommit={(fall) => change({ fall })}
        />
        <SwaleShape swale={swale} />
        <NumberField
          label="Side slopes"
          unit=": 1"
          value={swale.sideSlope}
          onCommit={(sideSlope) => change({ sideSlope })}
          help={
            swale.sideSlope < mown
              ? `Steeper than ${mown} : 1: it can't be mown with a machine, and grass holds badly (common practice).`
              : undefined
          }
        />
      </Fold>
      <div className="card-acts">
        <Action icon="place" look="quiet" onPress={() => goTo(swale.line[0] ?? [0, 0])}>
          Show it
        </Action>
        <IconAction
          icon="trash"
          label={`Remove ${swale.name}`}
          onPress={() => runEdit(siteEdits.removeSwale, { id })}
        />
      </div>
    </div>
  );
});

function RoundTheWalls() {
  const apron = useProject(({ grading }) => grading.apron);
  const slopes = useProject(({ grading }) => grading.slopes);
  const { slope, length } = useNotation();
  const corners = useProject(({ building }) => building?.outline.length ?? 0);
  const change = (patch: Partial<Apron>) => tryRun(siteEdits.changeApron, { patch });
  const leave = (wall: number, as: boolean) =>
    runEdit(siteEdits.changeApron, {
      patch: { leave: as ? [...apron.leave, wall] : apron.leave.filter((other) => other !== wall) },
    });
  return (
    <Fold
      title="Ground round the walls"
      aside={`${slope(apron.fall)} over ${length(apron.width)}`}
      open={false}
    >
      <SlopeField label="Falls away by" ratio={apron.fall} onCommit={(fall) => change({ fall })} />
      <LengthField label="Over a width of" m={apron.width} onCommit={(width) => change({ width })} />
      <LengthField
        label="Wall left showing"
        small
        m={apron.showing}
        least={0}
        onCommit={(showing) => change({ showing })}
      />
      <NumberField
        label="Fill slopes"
        unit=": 1"
        value={slopes.fill}
        help="Run for one of rise: 2 is the steepest for earth, 3 can be mown, 4 is gentle."
        onCommit={(fill) => tryRun(siteEdits.changeSlopes, { patch: { fill } })}
      />
      <NumberField
        label="Cut slopes"
        unit=": 1"
        value={slopes.cut}
        onCommit={(cut) => tryRun(siteEdits.changeSlopes, { patch: { cut } })}
      />
      {corners > 0 ? (
        <fieldset className="toggles">
          <legend className="field-label">Leave the ground as it is along</legend>
          {Array.from({ length: corners }, (_, wall) => (
            <Toggle
              key={wallName(corners, wall)}
              label={wallName(corners, wall)}
              on={apron.leave.includes(wall)}
              onToggle={(on) => leave(wall, on)}
            />
          ))}
        </fieldset>
      ) : null}
    </Fold>
  );
}
