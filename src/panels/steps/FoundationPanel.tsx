import { Cover } from "../foundation/Cover";
import { Dig } from "../foundation/Dig";
import { Doors } from "../foundation/Doors";
import { Fill } from "../foundation/Fill";
import { Kind } from "../foundation/Kind";
import { TakeOff } from "../foundation/TakeOff";
import { Walls } from "../foundation/Walls";
import { Why } from "../help/Why";
import { Caution, FigureTable, Guide, Panel, Section } from "../parts";
import { Pits } from "../plot/Pits";
import { useNotation, useProject, useResults } from "../useProject";
import { fromTheMark } from "../words";

export function FoundationPanel() {
  const notation = useNotation();
  const foundation = useProject(({ building }) => building?.foundation ?? null);
  return (
    <Panel step="foundation" purpose="How deep to dig, told from the ground and from the mark.">
      {foundation ? (
        <>
          <Kind foundation={foundation} />
          <Trench />
          <Cover foundation={foundation} />
          <Walls />
          <Dig foundation={foundation} />
          <Fill foundation={foundation} />
          <Doors />
          <TakeOff foundation={foundation} />
        </>
      ) : (
        <Guide title="Draw the building first">
          <p>The trench follows its walls.</p>
        </Guide>
      )}
      <Pits />
      <Caution>
        <p>
          {`Protect trench walls at ${notation.rule("5 ft", "1.5 m")} or deeper, and shallower where the soil is bad (OSHA 29 CFR 1926.652). Ladder from ${notation.rule("4 ft", "1.2 m")}. Keep spoil at least ${notation.rule("2 ft", "0.6 m")} back from the edge (1926.651).`}
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
  const posts = useProject(({ building }) => building?.foundation.kind === "posts");
  const title = posts ? "Bottom of the holes" : "Bottom of trench";
  const notation = useNotation();
  if (trench.length === 0)
    return (
      <Section title={title}>
        <p className="soft small">Known once there is ground under the building.</p>
      </Section>
    );
  const bottoms = trench.map((corner) => corner.bottom);
  const [bottom, highest] = [Math.min(...bottoms), Math.max(...bottoms)];
  const rows = trench.map((corner) => [
    corner.corner,
    notation.length(corner.belowGround),
    notation.length(corner.belowStripped),
    notation.length(corner.belowFinished),
  ]);
  return (
    <Section title={title}>
      <p className="answer">
        <span className="answer-figure">
          {notation.length(bottom)}
          <Why kind="trench" of="bottom of trench" />
        </span>
        <span>
          {setout.markHeight === null ? "" : `${fromTheMark(bottom - setout.markHeight, notation)}, `}
          {highest - bottom < 1e-6
            ? "level all round"
            : `at its lowest; ${notation.length(highest)} at its highest`}
        </span>
      </p>
      <FigureTable
        label={posts ? "Holes at each corner" : "Trench at each corner"}
        heads={["corner", "below the ground", "below stripped", "below finished"]}
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
