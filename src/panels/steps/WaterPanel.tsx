import { memo } from "react";
import { type Apron, type Swale, siteEdits } from "../../document";
import type { Pond, SwaleResult, WallWater } from "../../solve/results";
import { swaleVerdict } from "../../solve/swale-verdict";
import { goTo, run as runEdit, setTool, tryRun } from "../../store/actions";
import { Action, IconAction, Toggle } from "../fields/Choice";
import { NumberField, SlopeField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Sides } from "../grading/Sides";
import { SwaleShape } from "../grading/SwaleShape";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import { Caution, Facts, Panel, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { wallRule, whyLess } from "../wallRule";
import { BareEarth } from "../water/BareEarth";
import { FootingDrain } from "../water/FootingDrain";
import { Leaving } from "../water/Leaving";
import { Pipes } from "../water/Pipes";
import { RoofWater } from "../water/RoofWater";
import { Storm } from "../water/Storm";
import { SwaleInStorm } from "../water/SwaleInStorm";
import { guessedNote, wallName, wallSide } from "../words";

export function WaterPanel() {
  return (
    <Panel step="water" purpose="Rain must leave every wall, and the hill's water must go round.">
      <Walls />
      <Swales />
      <Pipes />
      <Storm />
      <Ponds />
      <RoofWater />
      <Leaving />
      <RoundTheWalls />
      <Sides />
      <FootingDrain />
      <BareEarth />
      <Caution>
        Don't send water to a neighbour, a road or a septic field. A ditch at a road, wet land and streams may
        need a permit. This is planning, not an engineer's drainage design.
      </Caution>
    </Panel>
  );
}

function Walls() {
  const walls = useResults(({ water }) => water.walls);
  const toWalls = useResults(({ water }) => water.toWalls);
  const outline = useProject(({ building }) => building?.outline ?? null);
  const north = useProject(({ lot }) => lot.north);
  const notation = useNotation();
  if (!outline || walls.length === 0)
    return (
      <Section title="Walls">
        <p className="soft small">Each wall is checked once there is ground and a building.</p>
      </Section>
    );
  return (
    <Section title="Walls" aside="fall away from the wall, of what is wanted">
      <ul className="checks">
        {walls.map((wall) => (
          <WallRow
            key={wall.wall}
            wall={wall}
            comes={toWalls[wall.wall] ?? 0}
            side={wallSide(outline, wall.wall, north)}
          />
        ))}
      </ul>
      {walls[0] ? <p className="soft small">{wallRule(walls, notation)}</p> : null}
    </Section>
  );
}

/** Less ground than this, m2, is the wall's own strip as the grid has it. */
const worthTelling = 5;

interface WallRowProps {
  readonly wall: WallWater;
  readonly side: string;
  /** Ground whose water comes to it, m2. */
  readonly comes: number;
}

const WallRow = memo(function WallRow({ wall, side, comes }: WallRowProps) {
  const notation = useNotation();
  const towards = Math.round(wall.runsTowards * 100);
  const less = whyLess(wall, notation);
  const fall =
    wall.fallAway >= 0
      ? `falls ${notation.length(wall.fallAway)}`
      : `rises ${notation.length(-wall.fallAway)}`;
  return (
    <li className={`check check-${wall.passes ? "ok" : "bad"}`}>
      <Icon name={wall.passes ? "check" : "warn"} />
      <div>
        <p>
          <b>{wall.name.replace("-", "–")}</b>
          {`, ${side}`}
        </p>
        {less === null ? null : <p className="soft small">{less}</p>}
        {comes > worthTelling ? (
          <p className="soft small">{`Water of ${notation.area(comes)} of ground comes to it.`}</p>
        ) : null}
        {towards > 0 ? <p className="soft small">{`Water runs towards ${towards} % of it.`}</p> : null}
      </div>
      <p className="check-figure">
        {fall} <span className="soft">{`of ${notation.length(wall.needed)}`}</span>
        <Why kind="wall" id={String(wall.wall)} of={`fall away from wall ${wall.name.replace("-", "–")}`} />
      </p>
    </li>
  );
});

function Swales() {
  const swales = useProject(({ grading }) => grading.swales);
  const results = useResults(({ water }) => water.swales);
  return (
    <Section title="Swales">
      {swales.length === 0 ? (
        <p className="soft small">
          A shallow ditch on the uphill side that leads the hill's water round. Draw it from its high end to
          where it comes out at the surface.
        </p>
      ) : null}
      {swales.map((swale) => (
        <SwaleCard key={swale.id} swale={swale} result={results.find(({ id }) => id === swale.id) ?? null} />
      ))}
      <Action
        icon="place"
        look={swales.length === 0 ? "accent" : "quiet"}
        onPress={() => setTool("swale-route")}
      >
        Lay one from start to outlet
      </Action>
      <Action icon="draw" look="quiet" onPress={() => setTool("swale")}>
        {swales.length === 0 ? "Draw it yourself" : "Draw another yourself"}
      </Action>
      <LeastFall />
      <OffWall />
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
          <SwaleInStorm id={id} />
        </>
      ) : null}
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
      <LengthField
        label="Bottom width"
        m={swale.bottomWidth}
        least={0}
        onCommit={(bottomWidth) => change({ bottomWidth })}
      />
      <SwaleShape swale={swale} />
      <NumberField
        label="Side slopes"
        unit=": 1"
        value={swale.sideSlope}
        onCommit={(sideSlope) => change({ sideSlope })}
      />
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

function Ponds() {
  const ponds = useResults(({ water }) => water.ponds);
  return (
    <Section title="Low places that hold water" aside={ponds.length === 0 ? "none" : String(ponds.length)}>
      {ponds.length > 0 ? (
        <ul className="checks">
          {ponds.map((pond) => (
            <PondRow key={pond.at.join(" ")} pond={pond} />
          ))}
        </ul>
      ) : null}
    </Section>
  );
}

const PondRow = memo(function PondRow({ pond }: { pond: Pond }) {
  const notation = useNotation();
  return (
    <li className="check check-note">
      <Icon name="note" />
      <div>
        <p>
          <b>{`${notation.length(pond.depth)} deep`}</b>
          {`, ${notation.area(pond.area)}, holds ${notation.volume(pond.volume)}${pond.guessed ? "; partly on guessed ground, so it may not be there" : "; a measured hollow"}`}
        </p>
        <p className="soft small">
          {`It drains once its rim is ${notation.length(pond.depth)} lower where it spills over, or once it is filled so deep.`}{" "}
          <button type="button" className="link" onClick={() => goTo(pond.spill)}>
            Show the rim
          </button>
        </p>
      </div>
      <IconAction icon="place" label="Show it on the plan" onPress={() => goTo(pond.at)} />
    </li>
  );
});

function RoundTheWalls() {
  const apron = useProject(({ grading }) => grading.apron);
  const slopes = useProject(({ grading }) => grading.slopes);
  const corners = useProject(({ building }) => building?.outline.length ?? 0);
  const change = (patch: Partial<Apron>) => tryRun(siteEdits.changeApron, { patch });
  const leave = (wall: number, as: boolean) =>
    runEdit(siteEdits.changeApron, {
      patch: { leave: as ? [...apron.leave, wall] : apron.leave.filter((other) => other !== wall) },
    });
  return (
    <Section title="Ground round the walls">
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
    </Section>
  );
}
