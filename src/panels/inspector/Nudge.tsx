/** The arrow keys' step: a person's own, kept outside the plan; emptied it is the usual one again. */
import type { Edit } from "../../document";
import { present } from "../../document";
import { setNudgeStep } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { usualNudge } from "../../units";
import { LengthField } from "../fields/LengthField";
import { useNotation } from "../useProject";

export function Nudge({ label = "Arrow keys move it by (with Shift ten times)" }: { label?: string }) {
  const own = useApp((state) => state.nudgeStep);
  const { display } = useNotation();
  return (
    <div className="inspector-nudge">
      <LengthField
        label={label}
        m={own ?? usualNudge(display.length)}
        least={0.0001}
        onCommit={(m) => take(m)}
        onEmpty={() => take(null)}
      />
    </div>
  );
}

/** Nothing of the plan changes. */
function take(step: number | null): Edit {
  setNudgeStep(step);
  return { ok: true, project: present(appStore.getState().history), label: "set the step of the arrow keys" };
}
