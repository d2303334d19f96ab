import { memo } from "react";
import { type Apron, type Point, present, type Swale, siteEdits } from "../../document";
import { pondAt, swaleOutOf } from "../../solve/pond-swale";
import type { Pond, StandingAtWall, SwaleResult, WallWater } from "../../solve/results";
import type { LaidProposal } from "../../solve/swale-proposal";
import { swaleVerdict } from "../../solve/swale-verdict";
import { worstFirst } from "../../solve/wall-verdict";
import { goTo, run as runEdit, setTool, tell, tryRun } from "../../store/actions";
import { appStore } from "../../store/store";
import { Action, IconAction, Toggle } from "../fields/Choice";
import { NumberField, SlopeField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Sides } from "../grading/Sides";
import { SwaleShape } from "../grading/SwaleShape";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { Caution, Facts, Panel, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { wallRule, whyLess } from "../wallRule";
import { BareEarth } from "../water/BareEarth";
import { Fold } from "../water/Fold";
import { FollowedBy } from "../water/FollowedBy";
import { FootingDrain } from "../water/FootingDrain";
import { Leaving } from "../water/Leaving";
import { Pipes } from "../water/Pipes";
import { RoofWater } from "../water/RoofWater";
import { Storm } from "../water/Storm";
import { SwaleInStorm } from "../water/SwaleInStorm";
import { WallMends } from "../water/WallMends";
import { guessedNote, wallName, wallSide } from "../words";

export function WaterPanel() {
  return (
    <Panel step="water" purpose="Rain must leave every wall, and the hill's water must go round.">
      <Walls />
      <Ponds />
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
        {worstFirst(walls).map((wall) => (
          <WallRow
            key={wall.wall}
            wall={wall}
            comes={toWalls[wall.wall] ?? 0}
            side={wallSide(outline, wall.wall, north)}
            ends={[outline[wall.wall] ?? [0, 0], outline[(wall.wall + 1) % outline.length] ?? [0, 0]]}
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
  /** Its ends. */
  readonly ends: readonly [Point, Point];
}

const WallRow = memo(function WallRow({ wall, side, comes, ends: [a, b] }: WallRowProps) {
  const notation = useNotation();
  const towards = Math.round(wall.runsTowards * 100);
  const less = whyLess(wall, notation);
  const fall =
    wall.fallAway >= 0
      ? `falls ${notation.length(wall.fallAway)}`
      : `rises ${notation.length(-wall.fallAway)}`;
  return (
    <li className={`check check-${checkOf(wall)}`}>
      <Icon name={wall.passes ? (wall.verdict === "passes" ? "check" : "note") : "warn"} />
      <div>
        <button
          type="button"
          className="link wall-link"
          onClick={() => goTo(wall.standing?.at ?? [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])}
        >
          <b>{wall.name.replace("-", "–")}</b>
          {`, ${side}`}
        </button>
        {wall.standing ? <p className="soft small">{standingWords(wall.standing, notation)}</p> : null}
        {wall.verdict === "too few shots" ? (
          <p className="soft small">Too few shots about it to say that it stays dry.</p>
        ) : null}
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
      {wall.passes ? null : (
        <div className="mends">
          <WallMends wall={wall.wall} name={wall.name.replace("-", "–")} />
        </div>
      )}
    </li>
  );
});

function checkOf({ verdict, passes }: WallWater): "ok" | "bad" | "note" {
  if (!passes) return "bad";
  return verdict === "passes" ? "ok" : "note";
}

function standingWords({ depth, off, guessed }: StandingAtWall, notation: Notation): string {
  const guess = guessed ? ", if the guessed ground is right" : "";
  const where = off < 0.01 ? "right at it" : `${notation.length(off)} from it`;
  return `Water stands ${where}, ${notation.length(depth)} deep at its deepest${guess}.`;
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

function Ponds() {
  const ponds = useResults(({ water }) => water.ponds);
  return (
    <Section
      title="Low places that hold water"
      follows="floor"
      aside={ponds.length === 0 ? "none" : String(ponds.length)}
    >
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
          <Why kind="pond" id={pond.at.join(" ")} of="depth of the low place" />
        </p>
        <p className="soft small">
          {`It drains once its rim is ${notation.length(pond.depth)} lower where it spills over, or once it is filled so deep.`}{" "}
          <button type="button" className="link" onClick={() => goTo(pond.spill)}>
            Show the rim
          </button>
        </p>
        <Action icon="draw" look="quiet" onPress={() => layOut(pond, notation)}>
          Lay a swale out of it
        </Action>
      </div>
      <IconAction icon="place" label="Show it on the plan" onPress={() => goTo(pond.at)} />
    </li>
  );
});

/** Draws the swale into the plan, or says what it lacks. */
function layOut(pond: Pond, { length }: Notation): void {
  const { history, results } = appStore.getState();
  const project = present(history);
  const proposal = swaleOutOf(project, results, pond);
  if (proposal.kind === "refused") {
    tell({ tone: "caution", text: proposal.why });
    return;
  }
  const { line, depth, leastFall, result } = proposal.route;
  if (!result.drains) {
    tell({
      tone: "caution",
      text: `No bed can come out of this hollow nearby: at the best place it would lie ${length(proposal.short)} under the ground.`,
      more: `${reachWords(proposal, length)}Or fill it, allow a bed less fall, lead it into a pipe, or shoot more ground where it falls.`,
    });
    return;
  }
  runEdit(siteEdits.addSwale, { line, shape: { depth, leastFall } });
  const after = appStore.getState().results;
  const left = pondAt(after, pond.at);
  if (left)
    tell({
      tone: "caution",
      text: `The swale is drawn, but water still stands ${length(left.depth)} deep there.`,
      more: "Something else dams it: a drive, a berm or the building's own earth. Undo it, or drag its line round what dams it.",
    });
}

/** How far a bed reaches, and the floor that would go with one laid on fill. */
function reachWords({ reaches, raised }: LaidProposal, length: Notation["length"]): string {
  const reach = reaches === null ? "" : `Falling as is asked it could come out ${length(reaches)} along. `;
  const floor = raised?.floor ?? null;
  return floor === null
    ? reach
    : `${reach}On fill, laid up from that outlet, a bed works with the floor at ${length(floor)} or higher. `;
}

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
