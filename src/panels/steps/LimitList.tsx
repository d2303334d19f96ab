import { memo, useState } from "react";
import { Button, Disclosure, DisclosurePanel } from "react-aria-components";
import { siteEdits } from "../../document";
import { hasBearing } from "../../solve/floor-standing";
import { byTightness, type LimitState, limitOf, roundedInto, spanWords } from "../../solve/limit-standing";
import type { BandRule } from "../../solve/results";
import { goTo, run as runEdit } from "../../store/actions";
import { shownFloor } from "../../store/store";
import { useApp } from "../../store/useApp";
import { roundingStep } from "../../units";
import { Action, Toggle } from "../fields/Choice";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { useAsRested } from "../useAsRested";
import { useNotation, useProject } from "../useProject";
import { capital } from "../words";
import { hasOwnValue, LimitValue } from "./LimitValue";

/** The rules of the floor band, the tightest first; each opens to show its source, its value and its switch. */
export function LimitList({ rules }: { rules: readonly BandRule[] }) {
  const [all, setAll] = useState(false);
  const sorted = useAsRested(useOrdered(rules)).flatMap((id) => rules.find((rule) => rule.id === id) ?? []);
  const bearingIds = useAsRested(
    rules.filter((rule) => hasBearing(rule) || !rule.on || rule.atAnyFloor === "broken").map(({ id }) => id),
  );
  const bearing = sorted.filter(({ id }) => bearingIds.includes(id));
  const shown = all ? sorted : bearing;
  const hidden = sorted.length - bearing.length;
  return (
    <>
      <ul className="limits">
        {shown.map((rule) => (
          <LimitRow key={rule.id} rule={rule} />
        ))}
      </ul>
      {hidden > 0 ? <MoreLimits all={all} hidden={hidden} onAll={setAll} /> : null}
    </>
  );
}

interface MoreLimitsProps {
  readonly all: boolean;
  readonly hidden: number;
  readonly onAll: (all: boolean) => void;
}

const MoreLimits = memo(function MoreLimits({ all, hidden, onAll }: MoreLimitsProps) {
  return (
    <Action look="quiet" onPress={() => onAll(!all)}>
      {all ? "Only those that bear on it" : `${hidden} more that don't bear on it now`}
    </Action>
  );
});

/** Ids of the rules, the tightest first. */
function useOrdered(rules: readonly BandRule[]): readonly string[] {
  const notation = useNotation();
  const floor = useApp(shownFloor) ?? 0;
  return byTightness(rules, floor, notation).map(({ id }) => id);
}

/** A row stays as it is while only the floor moves: what follows the floor is in the two small parts. */
const LimitRow = memo(
  function LimitRow({ rule }: { rule: BandRule }) {
    return (
      <li>
        <Disclosure className={`limit${rule.on ? "" : " limit-off"}`}>
          <Button slot="trigger" className="limit-head">
            <span className="limit-name">
              <b>{kindWords[rule.kind]}</b>
              {rule.name}
            </span>{" "}
            <Icon name="down" /> <span className="limit-place">{rule.place}</span>{" "}
            <LimitStanding rule={rule} />
          </Button>
          <DisclosurePanel className="limit-more">
            <LimitMore rule={rule} />
          </DisclosurePanel>
        </Disclosure>
      </li>
    );
  },
  ({ rule: a }, { rule: b }) =>
    a.id === b.id &&
    a.height === b.height &&
    String(a.heights) === String(b.heights) &&
    a.on === b.on &&
    a.place === b.place &&
    a.value === b.value,
);

const kindWords: Readonly<Record<BandRule["kind"], string>> = {
  notBelow: "Not below: ",
  notAbove: "Not above: ",
  within: "Within: ",
};

const stateWords: Readonly<Record<LimitState, string>> = {
  kept: "kept",
  near: "kept, with little to spare",
  broken: "not kept",
  aside: "not kept at any floor",
  silent: "no bearing yet",
  off: "off",
};

/** The sign and the margin at the floor of this moment. */
function LimitStanding({ rule }: { rule: BandRule }) {
  const notation = useNotation();
  const floor = useApp(shownFloor) ?? 0;
  const { state, margin } = limitOf(rule, floor, notation);
  return (
    <>
      <LimitSign state={state} />
      <span className={`limit-margin limit-margin-${state}`}>{margin}</span>
      <span className="visually-hidden">{`, ${stateWords[state]}`}</span>
    </>
  );
}

const LimitSign = memo(function LimitSign({ state }: { state: LimitState }) {
  return (
    <svg className={`limit-sign limit-sign-${state}`} viewBox="0 0 12 12" aria-hidden="true">
      {state === "broken" ? <path d="M6 .8 11.5 11H.5z" /> : null}
      {state === "near" || state === "aside" ? <path d="M6 .8 11.2 6 6 11.2.8 6z" /> : null}
      {["kept", "silent", "off"].includes(state) ? <circle cx="6" cy="6" r="4" /> : null}
    </svg>
  );
});

/** Rounded so that what is read and typed keeps the limit. */
function endWords({ kind }: BandRule, height: number, { length, display }: Notation): string {
  const step = roundingStep(display.length, display.rounding);
  return length(roundedInto(height, kind === "notBelow" ? "up" : "down", step));
}

function LimitMore({ rule }: { rule: BandRule }) {
  const notation = useNotation();
  const rules = useProject((project) => project.rules);
  const { off } = rules;
  const own = hasOwnValue(rule, rules);
  const toggle = (on: boolean) =>
    runEdit(siteEdits.changeRules, {
      patch: { off: on ? off.filter((id) => id !== rule.id) : [...off, rule.id] },
    });
  return (
    <>
      {rule.height === null ? null : (
        <p>
          {`${rule.kind === "notBelow" ? "Lowest" : "Highest"} floor it allows: ${endWords(rule, rule.height, notation)}.`}
          <Why
            kind="limit"
            id={rule.id}
            of={`${rule.kind === "notBelow" ? "lowest" : "highest"} floor it allows`}
          />
        </p>
      )}
      {rule.heights ? (
        <p>{`It allows ${rule.heights.map((span) => spanWords(span, notation, roundingStep(notation.display.length, notation.display.rounding))).join(", or ")}.`}</p>
      ) : null}
      <LimitValue rule={rule} />
      <p className="soft small">
        {own
          ? `Your own value. Source of the usual one: ${rule.source}.`
          : `Source: ${capital(rule.source)}.`}
      </p>
      <div className="card-acts">
        <Toggle label="Counts" on={rule.on} onToggle={toggle} />
        {rule.at ? (
          <Action look="quiet" icon="place" onPress={() => rule.at && goTo(rule.at)}>
            Show the place
          </Action>
        ) : null}
      </div>
    </>
  );
}
