/** The bill's prices, as they are typed, and what they come to. */
import { siteEdits } from "../../document";
import type { BillItem } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { CUBIC_YARD } from "../../units";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

export function Prices() {
  const bill = useResults((results) => results.bill);
  const cost = useResults((results) => results.cost);
  const notation = useNotation();
  const bought = bill.filter(
    ({ id, quantity, price }) => price !== null || (quantity > 0 && cost.unpriced.includes(id)),
  );
  if (bought.length === 0) return null;
  const yards = notation.display.volume === "yd3";
  const facts = [
    ...bought.flatMap(({ item, cost: part }) => (part === null ? [] : [{ name: item, figure: money(part) }])),
    {
      name: cost.unpriced.length === 0 ? "Together" : "Together, of what has a price",
      figure: money(cost.total),
      note:
        cost.unpriced.length === 0
          ? "all fill brought in, all cut taken away"
          : `${cost.unpriced.length} without a price yet`,
    },
  ];
  return (
    <Section title="Prices" aside={yards ? "for a cubic yard" : "for a cubic metre"}>
      {bought.map((item) => (
        <PriceField key={item.id} item={item} unit={yards ? CUBIC_YARD : 1} />
      ))}
      <p className="soft small">
        In your own money; none is known until you type it. Concrete is reckoned with its waste.
      </p>
      {bought.some(({ price }) => price !== null) ? <Facts facts={facts} /> : null}
    </Section>
  );
}

/** `unit`: m3 in the unit that the price is typed for. */
function PriceField({ item, unit }: { item: BillItem; unit: number }) {
  const price = useProject(({ prices }) => prices[item.id] ?? null);
  const commit = (text: string): string | null => {
    const typed = text.trim();
    if (typed === "") return refusal(tryRun(siteEdits.setPrice, { item: item.id, price: null }));
    const number = Number(typed.replace(",", "."));
    if (!(number >= 0)) return `Can't read "${typed}" as a price. Write a number alone, like 42.50.`;
    return refusal(tryRun(siteEdits.setPrice, { item: item.id, price: number / unit }));
  };
  return <TypedField label={item.item} shown={price === null ? "" : money(price * unit)} commit={commit} />;
}

function money(amount: number): string {
  return amount.toFixed(2);
}
