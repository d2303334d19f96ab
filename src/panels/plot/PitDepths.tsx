import { pitEdits, type TestPit } from "../../document";
import { tryRun } from "../../store/actions";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { useNotation } from "../useProject";
import "./plot.css";

const words: Readonly<Record<pitEdits.PitDepth, string>> = {
  topsoil: "Topsoil down to",
  oldFill: "Old fill down to",
  rock: "Rock at",
  water: "Water at",
  depth: "Dug to",
};

/** How deep a pit met what; empty: it didn't. */
export function PitDepths({ pit, locked = false }: { pit: TestPit; locked?: boolean }) {
  const { id } = pit;
  const notation = useNotation();
  return (
    <div className="pit-depths">
      {pitEdits.pitDepths.map((which) => (
        <TypedField
          key={which}
          layout="stack"
          label={words[which]}
          shown={pit[which] === null ? "" : notation.length(pit[which].m)}
          placeholder="not met"
          locked={locked}
          commit={(text) => refusal(tryRun(pitEdits.setPitDepth, { id, which, text }))}
        />
      ))}
    </div>
  );
}
