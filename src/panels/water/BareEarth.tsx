/** Earth that lies bare while the work goes on: steep and long slopes, and the silt barrier. */
import { type Drainage, siteEdits } from "../../document";
import { goTo, tryRun } from "../../store/actions";
import { IconAction } from "../fields/Choice";
import { SlopeField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Icon } from "../icons";
import { Facts } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { Fold } from "./Fold";

export function BareEarth() {
  const { steepness, length } = useProject(({ drainage }) => drainage.bareEarth);
  const bare = useResults(({ water }) => water.bareEarth);
  const notation = useNotation();
  if (!bare) return null;
  const change = (patch: Partial<Drainage["bareEarth"]>) =>
    tryRun(siteEdits.changeDrainage, { part: "bareEarth", patch });
  return (
    <Fold
      title="While the earth lies bare"
      aside={bare.slopes.length === 0 ? "no slope marked" : `${bare.slopes.length} marked`}
      open={false}
    >
      <ul className="checks">
        {bare.slopes.map((slope) => (
          <li key={slope.at.join(" ")} className="check check-note">
            <Icon name="note" />
            <p>{`Up to ${notation.slope(slope.steepness)} steep, ${notation.length(slope.length)} long, ${notation.area(slope.area)}: cover it, or break it with a berm.`}</p>
            <IconAction icon="place" label="Show the slope" onPress={() => goTo(slope.at)} />
          </li>
        ))}
      </ul>
      <Facts
        facts={[
          {
            name: "Silt barrier along the low side",
            figure: notation.length(bare.barrierLength),
            note:
              bare.barrierBeyond > 0
                ? `${notation.length(bare.barrierBeyond)} of it would lie over the lot's line: keep it on your side, or ask the neighbour`
                : "some way off the toe, along the ground's own level where it can",
          },
          { name: "Ground opened", figure: notation.area(bare.disturbed) },
        ]}
      />
      <SlopeField
        label="Marked if steeper than"
        ratio={steepness}
        onCommit={(next) => change({ steepness: next })}
      />
      <LengthField label="and longer than" m={length} onCommit={(next) => change({ length: next })} />
    </Fold>
  );
}
