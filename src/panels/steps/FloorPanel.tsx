import { memo } from "react";
import { buildingEdits } from "../../document";
import { billFigure } from "../../help";
import { isWithin, spanWords } from "../../solve/limit-standing";
import { loadsWords } from "../../solve/load-words";
import type { CornerResult } from "../../solve/results";
import { setStep, tryRun } from "../../store/actions";
import { shownFloor } from "../../store/store";
import { useApp } from "../../store/useApp";
import { INCH, roundingStep } from "../../units";
import { NoHeight } from "../band/NoHeight";
import { RuleSetChoice } from "../band/RuleSetChoice";
import { whyOfItem } from "../cost/BillLines";
import { CostChart } from "../cost/CostChart";
import { Action } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { floorStep } from "../floorStep";
import { Why } from "../help/Why";
import { Facts, FigureTable, Guide, Panel, Section } from "../parts";
import { useAsRested } from "../useAsRested";
import { useNotation, useProject, useResults } from "../useProject";
import { fromTheMark } from "../words";
import { CurveChart } from "./CurveChart";
import { LimitList } from "./LimitList";

export function FloorPanel() {
  const built = useProject(({ building }) => building !== null);
  return (
    <Panel step="floor" purpose="The one height that everything else follows.">
      {built ? (
        <>
          <BigFloor />
          <Corners />
          <Limits />
          <Curve />
          <CostChart />
          <Order />
        </>
      ) : (
        <Guide title="Draw the building first">
          <p>Its floor can be dragged, typed and stepped once it stands on the plan.</p>
          <Action look="accent" onPress={() => setStep("building")}>
            Go to the building
          </Action>
        </Guide>
      )}
    </Panel>
  );
}

function BigFloor() {
  const floor = useApp(shownFloor);
  const mark = useResults(({ survey }) => survey.mark);
  const notation = useNotation();
  const step = floorStep(notation.display).words;
  return (
    <div className="big-floor">
      <LengthField
        label="Height of the finished floor"
        layout="bare"
        figure
        m={floor}
        onCommit={(m) =>
          tryRun(buildingEdits.setFloor, { floor: m, label: `floor to ${notation.length(m)}` })
        }
      />
      <p className="big-floor-mark">
        {mark && floor !== null ? fromTheMark(floor - mark.height, notation) : "no mark to tell it from"}
      </p>
      <p className="soft small">{`Drag it on the rod, type it here, or step it by ${step} with Alt and the arrows.`}</p>
    </div>
  );
}

function Corners() {
  const corners = useResults((results) => results.corners);
  const beam = useBeam();
  const notation = useNotation();
  if (corners.length === 0) return null;
  const heads = ["corner", "ground", "floor above it", ...(beam === null ? [] : ["ground reads"])];
  const rows = corners.map((corner) => cornerCells(corner, beam, notation));
  const marked = new Set(corners.flatMap((corner, index) => (corner.floorAboveGround < 0 ? [index] : [])));
  return (
    <Section title="Corners">
      <FigureTable label="The floor at each corner" heads={heads} rows={rows} marked={marked} steady />
      {corners.some((corner) => corner.guessed) ? (
        <p className="soft small">~ the ground there is guessed: it lies outside the shots.</p>
      ) : null}
    </Section>
  );
}

function cornerCells(corner: CornerResult, beam: number | null, notation: ReturnType<typeof useNotation>) {
  const out = corner.floorAboveGround;
  return [
    corner.name,
    `${corner.guessed ? "~ " : ""}${notation.length(corner.ground)}`,
    <span key="out">
      {out < 0 ? `${notation.length(-out)} below` : notation.length(out)}
      <Why kind="corner" id={corner.name} of={`floor above the ground at ${corner.name}`} />
    </span>,
    ...(beam === null ? [] : [notation.reading(beam - corner.ground)]),
  ];
}

/** Today's beam, or that of the only set-up. */
function useBeam(): number | null {
  return useResults(
    ({ setout, survey }) =>
      setout.beam ??
      (survey.setups.length === 1 && survey.setups[0]?.reads !== "up"
        ? (survey.setups[0]?.beam ?? null)
        : null),
  );
}

function Limits() {
  const band = useResults((results) => results.band);
  const notation = useNotation();
  if (band.rules.length === 0) return null;
  const range = band.empty
    ? "no height meets them all"
    : band.spans
        .map((span) =>
          spanWords(span, notation, roundingStep(notation.display.length, notation.display.rounding)),
        )
        .join(", or ");
  return (
    <Section title="What limits the floor" aside={range}>
      {band.clash ? <NoHeight clash={band.clash} /> : null}
      <LimitList rules={band.rules} />
      <RuleSetChoice />
    </Section>
  );
}

function Curve() {
  const curve = useResults((results) => results.curve);
  const spans = useResults(({ band }) => band.spans);
  const here = useResults(({ earthwork }) => earthwork?.total ?? null);
  const floor = useApp(shownFloor);
  const display = useProject((project) => project.display);
  if (curve.length < 2 || floor === null) return null;
  return (
    <Section title="Fill and cut as the floor moves" aside="from the ground as it is" follows="layout">
      <CurveChart curve={curve} here={here} floor={floor} spans={spans} display={display} />
      <p className="soft small">
        Between the ground as it is and the finished ground, no topsoil taken off. The shaded heights keep
        every limit.
      </p>
      <Balance />
    </Section>
  );
}

/** Where nothing would come in or go out, with a step to it. */
function Balance() {
  const balance = useResults((results) => results.balance);
  const spans = useResults(({ band }) => band.spans);
  const notation = useNotation();
  if (!balance) return null;
  const { floor } = balance;
  if (floor === null)
    return (
      <p className="soft small">
        {balance.why === "fill at every floor"
          ? "At none of these floors does the cut make the fill: some must come in."
          : "At none of these floors is the cut used up: some must go out."}
      </p>
    );
  const setFloor = () =>
    tryRun(buildingEdits.setFloor, { floor, label: `floor to where the cut makes the fill` });
  const allowed = isWithin(spans, floor);
  return (
    <p className="small balance">
      <span>
        The cut, compacted, makes the earth fill at <strong>{notation.length(floor)}</strong>, if it is fit to
        use{allowed ? "." : "; the limits don't allow that floor."}
      </span>
      {allowed ? (
        <Action look="quiet" onPress={setFloor}>
          Set the floor there
        </Action>
      ) : null}
    </p>
  );
}

const ordered = ["fill", "fill-inside", "fill-loads", "cut", "cut-loads", "base"];

const Order = memo(function Order() {
  const bill = useResults((results) => results.bill);
  const notation = useNotation();
  const oneStep = useOneStep();
  const strips = useProject(({ materials }) => materials.stripDepth > 0);
  const wanted = useAsRested(bill.filter(({ quantity }) => quantity > 0).map(({ id }) => id));
  const withStep = useAsRested(oneStep.known);
  const items = ordered.flatMap((id) =>
    wanted.includes(id) ? (bill.find((item) => item.id === id) ?? []) : [],
  );
  if (items.length === 0) return null;
  const facts = items.map((item) => ({
    name: item.item,
    figure: billFigure(item, notation),
    why: whyOfItem(item),
  }));
  return (
    <Section
      title="To order at this floor"
      aside={strips ? "from the ground once stripped" : "from the ground as it is"}
    >
      <Facts facts={withStep ? [...facts, oneStep.fact] : facts} />
    </Section>
  );
});

/** What one step of the floor costs in loads. */
function useOneStep() {
  const steps = useResults(({ oneStep }) => oneStep);
  const notation = useNotation();
  const inches = notation.display.area === "ft2";
  const name = `${inches ? "One inch" : "One centimetre"} higher`;
  const more = steps.find(({ step }) => step === (inches ? INCH : 0.01));
  if (!more || (more.fill === 0 && more.cut === 0))
    return { known: false, fact: { name, figure: "–", note: "not known at this height" } };
  return {
    known: true,
    fact: { name, figure: `${notation.volume(more.fill)} more fill`, note: loadsWords(more) },
  };
}
