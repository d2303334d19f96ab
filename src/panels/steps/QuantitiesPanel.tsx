import { BillLines } from "../cost/BillLines";
import { CostChart } from "../cost/CostChart";
import { Prices } from "../cost/Prices";
import { WorkFields } from "../cost/WorkFields";
import { Action } from "../fields/Choice";
import { Facts, Guide, Panel, Section } from "../parts";
import type { StepPanelProps } from "../SidePanel";
import { useNotation, useResults } from "../useProject";
import { EarthFields } from "./EarthFields";

export function QuantitiesPanel({ run }: StepPanelProps) {
  const counted = useResults(({ bill }) => bill.length > 0);
  return (
    <Panel
      step="quantities"
      purpose="What comes in and what goes out at the present floor, in the order of work."
    >
      {counted ? (
        <>
          <BillLines />
          <Action icon="sheet" look="quiet" onPress={() => run("plan.exportBill")}>
            Export the bill for a spreadsheet
          </Action>
        </>
      ) : (
        <Guide title="Nothing to count yet">
          <p>The bill follows the ground, the building and its floor.</p>
        </Guide>
      )}
      <Certainty />
      <CostChart />
      <Prices />
      <Section title="What it is counted with">
        <EarthFields />
      </Section>
      <WorkFields />
    </Panel>
  );
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
