/** How water is followed over the ground: a choice that few need. */
import { siteEdits } from "../../document";
import { run } from "../../store/actions";
import { Choice } from "../fields/Choice";
import { useProject } from "../useProject";
import { Fold } from "./Fold";

const methods = [
  { value: "d-infinity", words: "shared between two neighbours (D-infinity)" },
  { value: "d8", words: "to the steepest neighbour alone (D8)" },
] as const;

const aside = { "d-infinity": "D-infinity", d8: "D8" } as const;

export function FollowedBy() {
  const { method } = useProject(({ drainage }) => drainage.flow);
  return (
    <Fold title="How water is followed" aside={aside[method]} open={false}>
      <Choice
        label="A place hands its water on"
        value={method}
        options={methods}
        onChoose={(to) => run(siteEdits.changeDrainage, { part: "flow", patch: { method: to } })}
      />
      <p className="soft small">
        Shared, an even slope drains evenly (Tarboton 1997). To one neighbour alone water keeps to lines, as
        it does in channels. Hollows are filled first (Barnes, Lehman, Mulla 2014).
      </p>
    </Fold>
  );
}
