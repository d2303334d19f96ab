import { type Feature, type Lot, lotFault, type Point, siteEdits } from "../../document";
import { lotLines } from "../../plot";
import { run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { formatLand } from "../../units";
import type { RunCommand } from "../command";
import { Action, IconAction } from "../fields/Choice";
import { AngleField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Told } from "../inspector/Told";
import { Caution, type Fact, Facts, Guide, Panel, Section } from "../parts";
import { DeedSection } from "../plot/DeedSection";
import { FeatureCard } from "../plot/FeatureCard";
import { Setbacks } from "../plot/Setbacks";
import { useNotation, useProject, useResults } from "../useProject";
import { Pictures } from "./Pictures";

export function LotPanel({ run }: { run: RunCommand }) {
  const lot = useProject((project) => project.lot);
  const drawn = lot.outline.length >= 3;
  return (
    <Panel step="lot" purpose="The lines you may not cross, and what must stay clear.">
      {drawn ? (
        <LotCorners lot={lot} />
      ) : (
        <Guide title="Draw the lot's lines">
          <p>
            Click its corners in order on the plan, or type each distance from the last one. Come back to the
            first corner, or press Enter, to close it. A rough lot will do to begin with.
          </p>
          <Action icon="draw" look="accent" onPress={() => pickTool("lot")}>
            Draw the lot
          </Action>
        </Guide>
      )}
      <DeedSection />
      <Setbacks />
      <Section title="North">
        <AngleField
          label="True north"
          radians={lot.north}
          help="Clockwise from the top of the plan."
          onCommit={(north) => tryRun(siteEdits.setNorth, { north })}
        />
      </Section>
      <Features features={lot.features} />
      <Pictures run={run} />
      <Caution>
        Only a licensed surveyor settles where a lot line runs. Have buried and overhead lines located before
        any digging; private lines are not marked by the locating service.
      </Caution>
    </Panel>
  );
}

function LotCorners({ lot }: { lot: Lot }) {
  const { outline } = lot;
  const notation = useNotation();
  const size = useResults((results) => results.plot.lot);
  const corners = lotLines(lot).flatMap(({ first, curve }) => {
    const at = outline[first];
    return at ? [{ index: first, at, curve }] : [];
  });
  const change = (index: number, corner: Point) =>
    tryRun(siteEdits.setLotOutline, { outline: outline.map((old, i) => (i === index ? corner : old)) });
  const remove = (index: number) =>
    runEdit(siteEdits.setLotOutline, { outline: outline.filter((_, i) => i !== index) });
  const area: Fact = lotFault(outline)
    ? { name: "Area", figure: "not known", note: "the lines enclose no ground" }
    : {
        name: "Area",
        figure: notation.area(size?.area ?? 0),
        note: formatLand(size?.area ?? 0, notation.display.area),
        why: { kind: "lot area", of: "area of the lot" },
      };
  const facts: Fact[] = [area, { name: "Round it", figure: notation.length(size?.perimeter ?? 0) }];
  return (
    <Section title="Corners" aside="east and north, on the plan">
      <ol className="coordinates">
        {corners.map(({ index, at: [x, y], curve }, order) => (
          <li key={index} className="coordinate">
            <span className="coordinate-name">{order + 1}</span>
            <LengthField
              layout="bare"
              label={`Corner ${order + 1}, east`}
              m={x}
              onCommit={(m) => change(index, [m, y])}
            />
            <LengthField
              layout="bare"
              label={`Corner ${order + 1}, north`}
              m={y}
              onCommit={(m) => change(index, [x, m])}
            />
            <IconAction
              icon="trash"
              label={`Remove corner ${order + 1}`}
              isDisabled={outline.length <= 3}
              onPress={() => remove(index)}
            />
            {curve ? (
              <span className="soft small coordinate-curve">{`curve, R ${notation.length(curve.radius)}, L ${notation.length(curve.length)}`}</span>
            ) : null}
          </li>
        ))}
      </ol>
      <Facts facts={facts} />
      <Action icon="draw" look="quiet" onPress={() => pickTool("lot")}>
        Draw it again
      </Action>
    </Section>
  );
}

function Features({ features }: { features: readonly Feature[] }) {
  const outline = useProject((project) => project.lot.outline);
  const add = () => {
    const [x, y] = outline[0] ?? [0, 0];
    runEdit(siteEdits.addFeature, { kind: "tree", points: [[x, y]] });
  };
  return (
    <Section title="What stands on it">
      {features.length === 0 ? (
        <p className="soft small">
          Trees to keep, a well, a septic field, buried lines: what the work must stay clear of.
        </p>
      ) : null}
      {features.map((feature) => (
        <Told key={feature.id} thing={{ kind: "feature", id: feature.id }}>
          <FeatureCard feature={feature} />
        </Told>
      ))}
      <Action icon="draw" look="quiet" onPress={() => pickTool("feature")}>
        Put things on the plan
      </Action>
      <Action icon="plus" look="quiet" onPress={add}>
        Add one by its coordinates
      </Action>
    </Section>
  );
}
