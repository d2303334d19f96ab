import { billFigure } from "../../help";
import type { BillItem } from "../../solve/results";
import { Prices } from "../cost/Prices";
import type { WhyProps } from "../help/Why";
import type { Notation } from "../notation";
import { type Fact, Facts, Guide, Panel, Section } from "../parts";
import { useNotation, useResults } from "../useProject";
import { EarthFields } from "./EarthFields";

export { billFigure };

export function QuantitiesPanel() {
  const bill = useResults((results) => results.bill);
  const notation = useNotation();
  return (
    <Panel step="quantities" purpose="What comes in and what goes out at the present floor.">
      {bill.length === 0 ? (
        <Guide title="Nothing to count yet">
          <p>The bill follows the ground, the building and its floor.</p>
        </Guide>
      ) : (
        <>
          <Section title="Earth">
            <Facts facts={bill.filter(isEarth).map((item) => billFact(item, notation))} />
          </Section>
          <Section title="Stone and concrete">
            <Facts facts={bill.filter((item) => !isEarth(item)).map((item) => billFact(item, notation))} />
          </Section>
        </>
      )}
      <Certainty />
      <Prices />
      <Section title="What it is counted with">
        <EarthFields />
      </Section>
    </Panel>
  );
}

const earth = ["topsoil", "fill", "cut", "left-over", "short"];

function isEarth({ id }: BillItem): boolean {
  return earth.some((kind) => id === kind || id.startsWith(`${kind}-`));
}

export function billFact(item: BillItem, notation: Notation): Fact {
  return { name: item.item, figure: billFigure(item, notation), note: item.how, why: whyOfItem(item) };
}

export function whyOfItem({ id, item }: BillItem): WhyProps {
  return { kind: "bill", id, of: item.toLowerCase() };
}

/** How sure the earth figures are. */
function Certainty() {
  const earthwork = useResults((results) => results.earthwork);
  const notation = useNotation();
  if (!earthwork) return null;
  const guessed = Math.round(earthwork.guessedShare * 100);
  return (
    <Section title="How sure this is">
      <Facts
        facts={[
          { name: "Under the floor", figure: "exact", note: "on the triangles between the shots" },
          {
            name: "Outside the walls",
            figure: `± ${notation.volume(earthwork.outside.error)}`,
            note: "from two grids, one finer",
          },
          {
            name: "Rests on guessed ground",
            figure: `${guessed} %`,
            note: guessed > 20 ? "more shots outside the walls would help" : "beyond the outermost shots",
          },
        ]}
      />
    </Section>
  );
}
