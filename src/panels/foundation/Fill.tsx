/** Fill that walls hold on one side, and fill under the slab. */
import type { Foundation } from "../../document";
import { hasSlab } from "../../document/foundationMeasures";
import { backfillSoilWords } from "../../document/foundationWords";
import { backfillSoils } from "../../document/schema";
import type { FoundationResult } from "../../solve/results";
import { Choice } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { FigureTable, Section } from "../parts";
import { useNotation, useResults } from "../useProject";
import { counted } from "../words";
import { changeFoundation } from "./Kind";

const soils = backfillSoils.map((value) => ({ value, words: backfillSoilWords[value] }));
const kinds = [
  { value: "sand-gravel", words: "Clean sand or gravel" },
  { value: "earth", words: "Earth" },
] as const;

export function Fill({ foundation }: { foundation: Foundation }) {
  const result = useResults((results) => results.foundation);
  if (!result) return null;
  return (
    <>
      {result.unbalanced.length > 0 ? <AgainstWalls foundation={foundation} result={result} /> : null}
      {result.slabFill ? <UnderSlab foundation={foundation} result={result} /> : null}
    </>
  );
}

function AgainstWalls({ foundation, result }: { foundation: Foundation; result: FoundationResult }) {
  const notation = useNotation();
  const rows = result.unbalanced.map(({ name, worst, holds, limit, passes }) => [
    name,
    holds === "none" ? "none" : `${notation.length(worst)} ${holds}`,
    limit === null ? "not in the tables" : notation.length(limit),
    passes ? "keeps" : "ask an engineer",
  ]);
  const over = new Set(result.unbalanced.flatMap(({ passes }, i) => (passes ? [] : [i])));
  return (
    <Section title="Fill against walls">
      <Choice
        label="Soil against the wall"
        layout="stack"
        value={foundation.backfillSoil}
        options={soils}
        onChoose={(backfillSoil) => changeFoundation({ backfillSoil })}
      />
      <FigureTable
        label="Fill that each wall holds on one side"
        heads={["wall", "higher side", "limit", ""]}
        rows={rows}
        marked={over}
      />
      <p className="soft small">
        {`Outside it is counted down to ${hasSlab(foundation) ? "the slab's top" : "the lower of the footing's top and the ground inside"}, inside down to the ground outside. ${result.unbalanced[0]?.source}.`}
      </p>
    </Section>
  );
}

function UnderSlab({ foundation, result }: { foundation: Foundation; result: FoundationResult }) {
  const notation = useNotation();
  const fill = result.slabFill;
  if (!fill) return null;
  const { slabFill } = foundation;
  const change = (patch: Partial<Foundation["slabFill"]>) =>
    changeFoundation({ slabFill: { ...slabFill, ...patch } });
  const rows = fill.corners.map(({ corner, depth, lifts }) => [
    corner,
    notation.depth(depth),
    depth > 0 ? counted(lifts, "lift") : "–",
  ]);
  return (
    <Section title="Fill under the slab">
      <Choice
        label="Fill of"
        layout="stack"
        value={slabFill.kind}
        options={kinds}
        onChoose={(kind) => change({ kind })}
      />
      <LengthField
        label="A lift, compacted"
        small
        m={slabFill.lift}
        least={0.05}
        onCommit={(lift) => change({ lift })}
      />
      <FigureTable
        label="Fill under the slab at each corner"
        heads={["corner", "stripped ground to base stone", "lifts"]}
        rows={rows}
      />
      <p className={fill.passes ? "small" : "small foundation-failing"}>
        {fill.greatest > 0
          ? `At most ${notation.length(fill.greatest)}, in ${counted(fill.lifts, "lift")}; ${fill.passes ? "within" : "over"} the ${notation.length(fill.limit)} of ${fill.source}.`
          : "No fill: the floor is dug in everywhere."}
      </p>
      {fill.passes ? null : (
        <p className="small">
          A taller wall doesn't help here: lower the floor into the high side, take a crawl space, or have an
          engineer specify the fill and its tests.
        </p>
      )}
    </Section>
  );
}
