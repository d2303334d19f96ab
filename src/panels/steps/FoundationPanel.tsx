import { buildingEdits, type Foundation } from "../../document";
import { tryRun } from "../../store/actions";
import { LengthField } from "../fields/LengthField";
import { Why } from "../help/Why";
import { Caution, FigureTable, Guide, Panel, Section } from "../parts";
import { Pits } from "../plot/Pits";
import { useNotation, useProject, useResults } from "../useProject";
import { fromTheMark } from "../words";

export function FoundationPanel() {
  const foundation = useProject(({ building }) => building?.foundation ?? null);
  return (
    <Panel step="foundation" purpose="How deep to dig, told from the ground and from the mark.">
      {foundation ? (
        <>
          <Trench />
          <Dimensions foundation={foundation} />
        </>
      ) : (
        <Guide title="Draw the building first">
          <p>The trench follows its walls.</p>
        </Guide>
      )}
      <Pits />
      <Caution>
        <p>
          Protect trench walls at 5 ft (1.5 m) or deeper, and shallower where the soil is bad (OSHA 29 CFR
          1926.652). Ladder from 4 ft. Keep spoil at least 2 ft back from the edge (1926.651).
        </p>
        <p>
          Don't backfill against a wall before it is braced or cured, nor on one side only. Local code and
          licensed people decide on footings, soils and walls that hold back earth.
        </p>
      </Caution>
    </Panel>
  );
}

function Trench() {
  const trench = useResults((results) => results.trench);
  const setout = useResults((results) => results.setout);
  const today = useProject(({ worksheet }) => worksheet.markReading !== null);
  const notation = useNotation();
  if (trench.length === 0)
    return (
      <Section title="Bottom of trench">
        <p className="soft small">Known once there is ground under the building.</p>
      </Section>
    );
  const bottom = trench[0]?.bottom ?? 0;
  const rows = trench.map((corner) => [
    corner.corner,
    notation.length(corner.belowGround),
    notation.length(corner.belowFinished),
  ]);
  return (
    <Section title="Bottom of trench">
      <p className="answer">
        <span className="answer-figure">
          {notation.length(bottom)}
          <Why kind="trench" of="bottom of trench" />
        </span>
        <span>
          {setout.markHeight === null ? "" : `${fromTheMark(bottom - setout.markHeight, notation)}, `}
          level all round
        </span>
      </p>
      <FigureTable
        label="Trench at each corner"
        heads={["corner", "below the ground", "below finished ground"]}
        rows={rows}
      />
      <p className="soft small">
        {setout.beam !== null && today
          ? `Look for ${notation.reading(setout.beam - bottom)} on the rod today.`
          : "Type today's reading on the mark in the set-out step to see what to read there."}
      </p>
    </Section>
  );
}

function Dimensions({ foundation }: { foundation: Foundation }) {
  const change = (patch: Partial<Foundation>) => tryRun(buildingEdits.changeFoundation, { patch });
  return (
    <Section title="Dimensions">
      <LengthField
        label="Wall height"
        m={foundation.wallHeight}
        help="From the top of the footing to the top of the wall."
        onCommit={(wallHeight) => change({ wallHeight })}
      />
      <LengthField
        label="Wall thickness"
        small
        m={foundation.wallThickness}
        onCommit={(wallThickness) => change({ wallThickness })}
      />
      <LengthField
        label="Footing width"
        small
        m={foundation.footingWidth}
        onCommit={(footingWidth) => change({ footingWidth })}
      />
      <LengthField
        label="Footing thickness"
        small
        m={foundation.footingThickness}
        onCommit={(footingThickness) => change({ footingThickness })}
      />
      <LengthField
        label="Slab"
        small
        m={foundation.slabThickness}
        least={0}
        onCommit={(slabThickness) => change({ slabThickness })}
      />
      <LengthField
        label="Base stone under it"
        small
        m={foundation.baseThickness}
        least={0}
        onCommit={(baseThickness) => change({ baseThickness })}
      />
      <LengthField
        label="Frost depth"
        m={foundation.frostDepth}
        least={0}
        placeholder="ask locally"
        help="As your building office gives it. Empty: the floor isn't limited by frost yet."
        onEmpty={() => change({ frostDepth: null })}
        onCommit={(frostDepth) => change({ frostDepth })}
      />
    </Section>
  );
}
