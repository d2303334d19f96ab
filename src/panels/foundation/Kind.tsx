/** Which kind of foundation, and its section to scale with the dimensions typed on it. */
import { useMemo, useState } from "react";
import { buildingEdits, type Foundation } from "../../document";
import { hasSlab, hasStemWall, wholeCourses } from "../../document/foundationMeasures";
import { foundationKindWords, foundationWords } from "../../document/foundationWords";
import { type FoundationKind, foundationKinds } from "../../document/schema";
import { type SectionCut, sectionCuts } from "../../drawing";
import type { FootingSize } from "../../solve/results";
import { tryRun } from "../../store/actions";
import { Choice, Toggle } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { FigureTable, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
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

const noSizes: readonly FootingSize[] = [];

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
      {hasSlab(foundation) || kind === "crawl-space" ? null : (
        <p className="soft small">
          Without a slab the top of the base stone is the floor; make the stone nothing for a floor of earth.
        </p>
      )}
      <WholeCourses foundation={foundation} />
      <Sections foundation={foundation} />
      <Sizes foundation={foundation} />
    </Section>
  );
}

/** Blocks are laid whole: said where the typed height is not that of whole courses. */
function WholeCourses({ foundation }: { foundation: Foundation }) {
  const notation = useNotation();
  const { wallHeight, block } = foundation;
  const courses = wholeCourses(foundation);
  if (courses === null || Math.abs(courses * block.height - wallHeight) < 1e-4) return null;
  return (
    <p className="small">
      {`${notation.length(wallHeight)} is not whole courses: ${courses} are counted, the top one cut. Whole: ${notation.length((courses - 1) * block.height)} or ${notation.length(courses * block.height)}.`}
    </p>
  );
}

const builds = [
  { value: "light-frame", words: "Light frame" },
  { value: "veneer", words: "Brick veneer or hollow block" },
  { value: "masonry", words: "Solid or grouted masonry" },
] as const;
const storeys = [
  { value: "1", words: "One storey" },
  { value: "2", words: "Two storeys" },
  { value: "3", words: "Three storeys" },
] as const;
const soils = [
  { value: "clay", words: "Clay or silt" },
  { value: "sand", words: "Sand or silty gravel" },
  { value: "gravel", words: "Gravel" },
  { value: "rock", words: "Sedimentary rock" },
] as const;

/** What the footing carries and stands on, and the published least dimensions. */
function Sizes({ foundation }: { foundation: Foundation }) {
  const sizes = useResults((results) => results.foundation?.sizes ?? noSizes);
  const notation = useNotation();
  const { load } = foundation;
  const change = (patch: Partial<Foundation["load"]>) => changeFoundation({ load: { ...load, ...patch } });
  if (sizes.length === 0) return null;
  const bound = ({ least, most }: FootingSize) =>
    [
      least === null ? "" : `from ${notation.length(least)}`,
      most === null ? "" : `to ${notation.length(most)}`,
    ]
      .filter(Boolean)
      .join(" ");
  return (
    <details className="foundation-steel">
      <summary>Against published dimensions</summary>
      <Choice
        label="Walls above"
        layout="stack"
        value={load.built}
        options={builds}
        onChoose={(built) => change({ built })}
      />
      <Choice
        label="Storeys"
        value={String(load.storeys) as "1" | "2" | "3"}
        options={storeys}
        onChoose={(count) => change({ storeys: Number(count) })}
      />
      <Choice
        label="Under the footing"
        layout="stack"
        value={load.soil}
        options={soils}
        onChoose={(soil) => change({ soil })}
      />
      <FigureTable
        label="Dimensions against published ones"
        heads={["", "typed", "published"]}
        rows={sizes.map((size) => [size.what, notation.length(size.value), bound(size)])}
        marked={new Set(sizes.flatMap(({ passes }, i) => (passes ? [] : [i])))}
      />
      <p className="soft small">
        International Residential Code tables R403.1 and R403.1.1, R506.1 (2012); later editions go by snow
        load. Your local code decides.
      </p>
    </details>
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
