/** What the foundation takes: concrete, blocks, bars, forms, stone, sheet. */
import type { Foundation } from "../../document";
import { hasSlab, hasStemWall } from "../../document/foundationMeasures";
import type { FoundationTakeOff } from "../../solve/results";
import { Toggle } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import type { Notation } from "../notation";
import { type Fact, Facts, Section } from "../parts";
import { useNotation, useResults } from "../useProject";
import { changeFoundation } from "./Kind";

export function TakeOff({ foundation }: { foundation: Foundation }) {
  const takeOff = useResults((results) => results.foundation?.takeOff ?? null);
  const notation = useNotation();
  return (
    <Section title="What it takes">
      {takeOff ? <Facts facts={factsOf(takeOff, notation)} /> : null}
      <NumberField
        label="Waste of concrete, %"
        value={100 * foundation.concreteWaste}
        least={0}
        onCommit={(percent) => changeFoundation({ concreteWaste: percent / 100 })}
      />
      {hasStemWall(foundation) ? (
        <Toggle
          label="Drain pipe beside the footing"
          on={foundation.drain}
          onToggle={(drain) => changeFoundation({ drain })}
        />
      ) : null}
      <Steel foundation={foundation} />
    </Section>
  );
}

function factsOf(takeOff: FoundationTakeOff, notation: Notation): Fact[] {
  const { blocks, steel, forms, drain } = takeOff;
  const volume = (name: string, m3: number): Fact[] =>
    m3 > 0 ? [{ name, figure: notation.volume(m3) }] : [];
  const area = (name: string, m2: number): Fact[] => (m2 > 0 ? [{ name, figure: notation.area(m2) }] : []);
  return [
    ...volume("Concrete, footing", takeOff.footing),
    ...(blocks
      ? [
          {
            name: "Blocks",
            figure: String(blocks.count),
            note: `${blocks.courses} courses of ${blocks.perCourse}`,
          },
        ]
      : volume("Concrete, wall", takeOff.wall)),
    ...volume("Concrete, slab", takeOff.slab),
    ...volume("Concrete, thickened edge", takeOff.edge),
    ...volume("Concrete, pads", takeOff.pads),
    ...volume("Concrete to order, with waste", takeOff.withWaste),
    ...(steel.total > 0 ? [{ name: "Bars, with laps", figure: notation.length(steel.total) }] : []),
    ...area("Forms, footing", forms.footing),
    ...area("Forms, wall", forms.wall),
    ...area("Forms, edge", forms.edge),
    ...volume("Base stone", takeOff.base),
    ...area("Insulation", takeOff.insulation.area),
    ...area("Vapour sheet, with laps", takeOff.vapourSheet),
    ...(drain
      ? [
          { name: "Drain pipe", figure: notation.length(drain.pipe) },
          { name: "Drain stone", figure: notation.volume(drain.stone) },
        ]
      : []),
  ];
}

/** Counts as the drawing or the designer has them. */
function Steel({ foundation }: { foundation: Foundation }) {
  const { steel } = foundation;
  const change = (patch: Partial<Foundation["steel"]>) => changeFoundation({ steel: { ...steel, ...patch } });
  const walled = hasStemWall(foundation);
  if (!walled && !hasSlab(foundation)) return null;
  return (
    <details className="foundation-steel">
      <summary>Bars, as your drawing has them</summary>
      {walled || foundation.kind === "thickened-edge" ? (
        <NumberField
          label="Bars along the footing"
          value={steel.footingBars}
          decimals={0}
          least={0}
          onCommit={(footingBars) => change({ footingBars: Math.round(footingBars) })}
        />
      ) : null}
      {walled ? (
        <>
          <NumberField
            label="Rows along the wall"
            value={steel.wallRows}
            decimals={0}
            least={0}
            onCommit={(wallRows) => change({ wallRows: Math.round(wallRows) })}
          />
          <LengthField
            label="Uprights every"
            small
            m={steel.uprightSpacing}
            least={0.05}
            placeholder="none"
            onEmpty={() => change({ uprightSpacing: null })}
            onCommit={(uprightSpacing) => change({ uprightSpacing })}
          />
        </>
      ) : null}
      {hasSlab(foundation) ? (
        <LengthField
          label="Slab bars every"
          small
          m={steel.slabSpacing}
          least={0.05}
          placeholder="none"
          onEmpty={() => change({ slabSpacing: null })}
          onCommit={(slabSpacing) => change({ slabSpacing })}
        />
      ) : null}
    </details>
  );
}
