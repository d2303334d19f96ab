/** Figures of one side of the apron and its slopes, where they differ from those of all sides. */
import { useState } from "react";
import { type ApronSide, gradingEdits, siteEdits } from "../../document";
import type { SideReach } from "../../solve/results";
import { run, tryRun } from "../../store/actions";
import { Choice } from "../fields/Choice";
import { NumberField, SlopeField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

const noSides: readonly SideReach[] = [];
const cornerOptions = [
  { value: "round", words: "round" },
  { value: "mitred", words: "mitred" },
] as const;

export function Sides() {
  const sides = useResults(({ grading }) => grading?.sides ?? noSides);
  const corners = useProject(({ grading }) => grading.slopes.corners);
  const [chosen, setChosen] = useState("0");
  const side = sides.find(({ wall }) => String(wall) === chosen) ?? sides[0];
  if (!side) return null;
  return (
    <Section title="Sides and corners" follows="floor">
      <Choice
        label="Corners of slopes"
        value={corners}
        options={cornerOptions}
        onChoose={(value) => run(siteEdits.changeSlopes, { patch: { corners: value } })}
      />
      <Choice
        label="Side"
        value={String(side.wall)}
        options={sides.map(({ wall, name }) => ({ value: String(wall), words: name }))}
        onChoose={setChosen}
      />
      <Reach side={side} />
      <SideFields wall={side.wall} />
    </Section>
  );
}

/** How far its slopes run, from the wall. */
function Reach({ side }: { side: SideReach }) {
  const notation = useNotation();
  const figures = [
    side.fill ? { name: "Fill runs out to", figure: notation.length(side.fill.distance) } : null,
    side.cut ? { name: "Cut runs out to", figure: notation.length(side.cut.distance) } : null,
    side.farther === null
      ? null
      : { name: "It meets the ground only about", figure: notation.length(Math.round(side.farther)) },
    side.endWall
      ? {
          name: side.farther === null ? "It never meets the ground; a wall to end it" : "A wall to end it",
          figure: notation.length(side.endWall.height),
        }
      : null,
  ].flatMap((fact) => fact ?? []);
  return figures.length > 0 ? <Facts facts={figures} /> : null;
}

function SideFields({ wall }: { wall: number }) {
  const own = useProject(({ grading }) => grading.apron.sides.find((side) => side.wall === wall));
  const { apron, slopes } = useProject(({ grading }) => grading);
  const change = (patch: Partial<Omit<ApronSide, "wall">>) =>
    tryRun(gradingEdits.changeApronSide, { wall, patch });
  return (
    <>
      <LengthField
        label="Wall left showing"
        m={own?.showing ?? apron.showing}
        least={0}
        onEmpty={() => change({ showing: null })}
        onCommit={(showing) => change({ showing })}
      />
      <SlopeField
        label="Side falls away"
        ratio={own?.fall ?? apron.fall}
        onEmpty={() => change({ fall: null })}
        onCommit={(fall) => change({ fall })}
      />
      <LengthField
        label="Apron's width there"
        m={own?.width ?? apron.width}
        onEmpty={() => change({ width: null })}
        onCommit={(width) => change({ width })}
      />
      <NumberField
        label="Fill slope there"
        unit=": 1"
        value={own?.fill ?? slopes.fill}
        onCommit={(fill) => change({ fill: fill === slopes.fill ? null : fill })}
      />
      <NumberField
        label="Cut slope there"
        unit=": 1"
        value={own?.cut ?? slopes.cut}
        onCommit={(cut) => change({ cut: cut === slopes.cut ? null : cut })}
      />
    </>
  );
}
