/** The bill's prices, as they are typed, and what they come to. */
import { siteEdits } from "../../document";
import type { BillItem } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { countedIn, type ReadersUnit } from "../../units";
import { WordsField } from "../fields/fields";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { parseMoney } from "./money";

export function Prices() {
  const bill = useResults((results) => results.bill);
  const cost = useResults((results) => results.cost);
  const from = useProject(({ pricesFrom }) => pricesFrom);
  const notation = useNotation();
  const bought = bill.filter(
    ({ id, quantity, price }) => price !== null || (quantity > 0 && cost.unpriced.includes(id)),
  );
  if (bought.length === 0) return null;
  const facts = [
    ...bought.flatMap(({ item, cost: part }) =>
      part === null ? [] : [{ name: item, figure: notation.money(part) }],
    ),
    {
      name: cost.unpriced.length === 0 ? "Together" : "Together, of what has a price",
      figure: notation.money(cost.total),
      note:
        cost.unpriced.length === 0
          ? "all fill brought in, all cut taken away"
          : `${cost.unpriced.length} without a price yet`,
    },
  ];
  return (
    <Section title="Prices">
      {bought.map((item) => (
        <PriceField key={item.id} item={item} unit={pricedIn(item, countedIn(item.unit, notation.display))} />
      ))}
      <p className="soft small">
        In your own money; none is known until you type it. Concrete is reckoned with its waste.
      </p>
      <WordsField
        label="Prices are from"
        text={from}
        onCommit={(text) => tryRun(siteEdits.setPricesFrom, { text })}
      />
      {bought.some(({ price }) => price !== null) ? <Facts facts={facts} /> : null}
    </Section>
  );
}

/** Stone is reckoned as it lies compacted, all else that trucks bring as it lies loose on them. */
function pricedIn({ id, trucked }: BillItem, unit: ReadersUnit): ReadersUnit {
  return trucked && !id.endsWith("-loose") ? { ...unit, each: `${unit.each}, as laid` } : unit;
}

function PriceField({ item, unit: { each, size } }: { item: BillItem; unit: ReadersUnit }) {
  const price = useProject(({ prices }) => prices[item.id] ?? null);
  const commit = (text: string): string | null => {
    const typed = text.trim();
    if (typed === "") return refusal(tryRun(siteEdits.setPrice, { item: item.id, price: null }));
    const number = parseMoney(typed);
    if (!(number >= 0)) return `Can't read "${typed}" as a price. Write a number alone, like 42.50.`;
    return refusal(tryRun(siteEdits.setPrice, { item: item.id, price: number / size }));
  };
  const shown = price === null ? "" : (price * size).toFixed(2);
  return <TypedField label={item.item} unit={each} shown={shown} commit={commit} />;
}
