/** The trench's sides, its soil and where that lies. */
import type { Foundation } from "../../document";
import { trenchSoilWords } from "../../document/foundationWords";
import { trenchSoils } from "../../document/schema";
import type { FoundationResult } from "../../solve/results";
import { Choice } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import type { Notation } from "../notation";
import { Facts, Section } from "../parts";
import { useNotation, useResults } from "../useProject";
import { guessedWords } from "../words";
import { changeFoundation } from "./Kind";

const soils = trenchSoils.map((value) => ({ value, words: trenchSoilWords[value] }));
const usualSides = [
  { value: "sloped", words: "Sloped" },
  { value: "benched", words: "Benched" },
  { value: "shored", words: "Shored, upright" },
] as const;

const sidesIn = (notation: Notation) =>
  [
    { value: "as-needed", words: `Upright, sloped from ${notation.rule("5 ft", "1.5 m")}` },
    ...usualSides,
  ] as const;

export function Dig({ foundation }: { foundation: Foundation }) {
  const result = useResults((results) => results.foundation);
  const notation = useNotation();
  if (foundation.kind === "posts") return <Holes result={result} />;
  const { trench } = foundation;
  const change = (patch: Partial<Foundation["trench"]>) =>
    changeFoundation({ trench: { ...trench, ...patch } });
  return (
    <Section title="Digging">
      <Choice
        label="Soil"
        layout="stack"
        value={trench.soil}
        options={soils}
        help="Who judges the soil on site decides; take C where nobody has."
        onChoose={(soil) => change({ soil })}
      />
      <Choice
        label="Sides"
        layout="stack"
        value={trench.sides}
        options={sidesIn(notation)}
        onChoose={(chosen) => change({ sides: chosen })}
      />
      <LengthField
        label="Room beside the footing"
        small
        m={trench.workingSpace}
        least={0}
        onCommit={(workingSpace) => change({ workingSpace })}
      />
      <LengthField
        label="Spoil back from the edge"
        small
        m={trench.spoilBack}
        least={0}
        onCommit={(spoilBack) => change({ spoilBack })}
      />
      {result ? <Soil result={result} /> : null}
    </Section>
  );
}

function Soil({ result }: { result: FoundationResult }) {
  const notation = useNotation();
  const guessed = useResults((results) => results.guessed.trench);
  const { dig } = result;
  if (!dig) return null;
  const piles = dig.spoil.filter(({ loose }) => loose > 0);
  const widest = piles.reduce((most, { to }) => Math.max(most, to), 0);
  const highest = piles.reduce((most, { height }) => Math.max(most, height), 0);
  return (
    <Facts
      facts={[
        {
          name: "Soil dug, in the bank",
          figure: notation.volume(dig.volume),
          note: [`sides ${dig.sides}`, guessedWords(guessed ?? 0)].filter((part) => part !== "").join("; "),
        },
        { name: "Goes back", figure: notation.volume(dig.backfill) },
        { name: "Left over", figure: notation.volume(dig.leftOver) },
        {
          name: "Deepest",
          figure: notation.length(dig.deepest.depth),
          note: `${dig.deepest.at.place}, from the ground as cut or filled`,
        },
        { name: "Widest at the top", figure: notation.length(dig.widestTop) },
        {
          name: "Heap outside the walls",
          figure: `${notation.length(highest)} high`,
          note: `out to ${notation.length(widest)} from the walls`,
        },
      ]}
    />
  );
}

function Holes({ result }: { result: FoundationResult | null }) {
  const notation = useNotation();
  if (!result) return null;
  const lengths = result.posts.map(({ length }) => length);
  return (
    <Section title="Holes">
      <Facts
        facts={[
          { name: "Posts", figure: String(result.posts.length) },
          { name: "Shortest, hole to floor", figure: notation.length(Math.min(...lengths)) },
          { name: "Longest, hole to floor", figure: notation.length(Math.max(...lengths)) },
          {
            name: "Deepest fill around one",
            figure: notation.length(Math.max(...result.posts.map(({ inFill }) => inFill))),
          },
        ]}
      />
    </Section>
  );
}
