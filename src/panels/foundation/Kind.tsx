/** Which kind of foundation, and its section to scale with the dimensions typed on it. */
import { useMemo, useState } from "react";
import { buildingEdits, type Foundation } from "../../document";
import { hasStemWall } from "../../document/foundationMeasures";
import { foundationKindWords, foundationWords } from "../../document/foundationWords";
import { type FoundationKind, foundationKinds } from "../../document/schema";
import { type SectionCut, sectionCuts } from "../../drawing";
import { tryRun } from "../../store/actions";
import { Choice, Toggle } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { Section } from "../parts";
import { useProject, useResults } from "../useProject";
import { useWidth } from "../useWidth";
import { capital } from "../words";
import { LinesKey } from "./LinesKey";
import { SectionDrawing } from "./SectionDrawing";
import "./foundation.css";

const kinds = foundationKinds.map((value) => ({ value, words: capital(foundationKindWords[value]) }));
const walls = [
  { value: "poured", words: "Poured concrete" },
  { value: "block", words: "Block courses" },
] as const;

export const changeFoundation = (patch: Partial<Foundation>) =>
  tryRun(buildingEdits.changeFoundation, { patch });

export function Kind({ foundation }: { foundation: Foundation }) {
  const { kind } = foundation;
  return (
    <Section title="Kind">
      <Choice<FoundationKind>
        label="Kind of foundation"
        layout="stack"
        value={kind}
        options={kinds}
        onChoose={(chosen) => tryRun(buildingEdits.chooseFoundation, { kind: chosen })}
      />
      {hasStemWall(foundation) ? (
        <Choice
          label="Wall of"
          value={foundation.wall}
          options={walls}
          onChoose={(wall) => changeFoundation({ wall })}
        />
      ) : null}
      {foundation.wall === "block" && hasStemWall(foundation) ? (
        <LengthField
          label="Height of a course"
          small
          m={foundation.block.height}
          least={0.05}
          onCommit={(height) => changeFoundation({ block: { ...foundation.block, height } })}
        />
      ) : null}
      {kind === "stem-wall" || kind === "posts" ? (
        <Toggle
          label="Slab inside"
          on={foundation.slabInside}
          onToggle={(slabInside) => changeFoundation({ slabInside })}
        />
      ) : null}
      <Sections foundation={foundation} />
    </Section>
  );
}

function Sections({ foundation }: { foundation: Foundation }) {
  const project = useProject((present) => present);
  const result = useResults((results) => results.foundation);
  const [box, width] = useWidth<HTMLDivElement>(0);
  const [chosen, setChosen] = useState("low");
  const cuts = useMemo(() => (result ? sectionCuts(project, result) : []), [project, result]);
  const cut: SectionCut | undefined = cuts.find(({ id }) => id === chosen) ?? cuts[0];
  return (
    <div className="foundation-sections" ref={box}>
      {cut ? (
        <>
          <Choice
            label="Section"
            layout="stack"
            value={cut.id}
            options={cuts.map(({ id, words }) => ({ value: id, words }))}
            onChoose={setChosen}
          />
          {width > 0 ? <SectionDrawing cut={cut} words={foundationWords(foundation)} width={width} /> : null}
          <LinesKey frost={foundation.frostDepth !== null} />
          <p className="soft small">To scale. Type over a dimension to change it.</p>
        </>
      ) : (
        <p className="soft small">The section shows once there is ground under the building.</p>
      )}
    </div>
  );
}
