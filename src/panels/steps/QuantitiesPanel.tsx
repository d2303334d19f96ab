import { siteEdits } from "../../document";
import { billFigure } from "../../help";
import type { BillItem } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { CUBIC_YARD } from "../../units";
import { NumberField } from "../fields/fields";
import { LengthField, refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import type { WhyProps } from "../help/Why";
import type { Notation } from "../notation";
import { type Fact, Facts, Guide, Panel, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

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
      <Materials />
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

function Materials() {
  const materials = useProject((project) => project.materials);
  const truck = useProject((project) => project.truck);
  const notation = useNotation();
  const yards = notation.display.volume === "yd3";
  const unit = yards ? CUBIC_YARD : 1;
  const changeTruck = (text: string): string | null => {
    const number = Number(text.replace(/[^\d.,-]/g, "").replace(",", "."));
    if (!(number > 0))
      return `Can't read "${text.trim()}" as a volume. Write a number of ${yards ? "cubic yards" : "cubic metres"}, like 12.`;
    return refusal(tryRun(siteEdits.changeTruck, { patch: { volume: number * unit } }));
  };
  return (
    <Section title="What it is counted with">
      <LengthField
        label="Strip topsoil"
        m={materials.stripDepth}
        least={0}
        onCommit={(stripDepth) => tryRun(siteEdits.changeMaterials, { patch: { stripDepth } })}
      />
      <NumberField
        label="Swell"
        value={materials.swell}
        help="Loose for one in the bank: loam 1.10 to 1.25, clay 1.25 to 1.40, sand and gravel 1.10 to 1.15."
        onCommit={(swell) => tryRun(siteEdits.changeMaterials, { patch: { swell } })}
      />
      <NumberField
        label="Shrink"
        value={materials.shrink}
        help="Compacted for one in the bank: loam 0.85 to 0.95, clay 0.80 to 0.90, sand and gravel 0.90 to 1."
        onCommit={(shrink) => tryRun(siteEdits.changeMaterials, { patch: { shrink } })}
      />
      <TypedField label="A truck holds, loose" shown={notation.volume(truck.volume)} commit={changeTruck} />
    </Section>
  );
}
