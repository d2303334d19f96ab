/** The bill in the order of work: each line opens to show how it came about, how sure it is and how it comes. */
import { useState } from "react";
import { Button, Disclosure, DisclosurePanel } from "react-aria-components";
import { billFigure, whyOf } from "../../help";
import { guessedOfItem } from "../../solve/guessed-of-bill";
import type { BillItem, WorkStage } from "../../solve/results";
import { Why, type WhyProps } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { guessedWords } from "../words";
import "./cost.css";

const stageTitles: Readonly<Record<WorkStage, string>> = {
  strip: "First: topsoil off",
  undercut: "Stumps and soft ground",
  earth: "Cut and fill",
  trench: "Trench",
  foundation: "Foundation",
  drain: "Drain round the footing",
  base: "Under the slab",
  drive: "Drive and parking",
  topsoil: "Last: topsoil and seed",
  hours: "Hours",
};

export function BillLines() {
  const bill = useResults((results) => results.bill);
  const stages = [...new Set(bill.map(({ stage }) => stage))];
  return stages.map((stage) => (
    <Section key={stage} title={stageTitles[stage]}>
      <ul className="bill-lines">
        {bill
          .filter((item) => item.stage === stage)
          .map((item) => (
            <BillLine key={item.id} item={item} />
          ))}
      </ul>
    </Section>
  ));
}

function BillLine({ item }: { item: BillItem }) {
  const notation = useNotation();
  const comes = truckWords(item, notation);
  const guessed = useResults((results) => guessedWords(guessedOfItem(item, results) ?? 0));
  const [open, setOpen] = useState(false);
  return (
    <li>
      <Disclosure isExpanded={open} onExpandedChange={setOpen}>
        <div className="bill-row">
          <Button slot="trigger" className="bill-head">
            <span>
              {item.item}
              {comes ? <span className="bill-note">{comes}</span> : null}
              {guessed ? <span className="bill-note bill-guessed">{guessed}</span> : null}
            </span>
            <span className="bill-figure">
              {billFigure(item, notation)}
              {item.cost === null ? null : <span className="bill-note">{notation.money(item.cost)}</span>}
            </span>
            <Icon name="down" />
          </Button>
          <Why {...whyOfItem(item)} />
        </div>
        <DisclosurePanel className="bill-more">
          {open ? <BillMore item={item} notation={notation} /> : null}
        </DisclosurePanel>
      </Disclosure>
    </li>
  );
}

function BillMore({ item, notation }: { item: BillItem; notation: Notation }) {
  const { range, waste, how } = item;
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const inputs = whyOf({ kind: "bill", id: item.id }, { project, results, figures: notation })?.inputs ?? [];
  const figure = (quantity: number) => billFigure({ ...item, quantity }, notation);
  return (
    <>
      <p className="small">{`${how}.`}</p>
      {inputs.length > 0 ? <Facts facts={inputs} /> : null}
      {range && figure(range[0]) !== figure(range[1]) ? (
        <p className="soft small">{`Between ${figure(range[0])} and ${figure(range[1])} by what is known of the ground.`}</p>
      ) : null}
      {waste > 0 ? (
        <p className="soft small">{`With ${Math.round(waste * 100)} % of waste: ${figure(item.quantity * (1 + waste))}.`}</p>
      ) : null}
    </>
  );
}

export function whyOfItem({ id, item }: BillItem): WhyProps {
  return { kind: "bill", id, of: item.toLowerCase() };
}

/** "41.7 m³ loose, 62 t, 7 loads". */
function truckWords({ trucked, quantity }: BillItem, notation: Notation): string {
  if (!trucked || quantity <= 0) return "";
  const loads = `${trucked.loads} ${trucked.loads === 1 ? "load" : "loads"}`;
  return `${notation.volume(trucked.loose)} loose, ${notation.mass(trucked.mass)}, ${loads}`;
}
