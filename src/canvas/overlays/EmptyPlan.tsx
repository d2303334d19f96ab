/** What an empty plan says, and what an unfinished one still needs. */
import { useStore } from "zustand";
import { setStep } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { stakeGridStore } from "../../store/stakeGrid";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { isEmpty, planNote } from "./planNote";

export function EmptyPlan() {
  const empty = useApp((state) => state.tool === "select" && isEmpty(shownProject(state)));
  const laying = useStore(stakeGridStore, ({ sheet }) => sheet !== null);
  if (!empty || laying) return null;
  return (
    <div className="plan-card empty-plan">
      <h2>Nothing on the plan yet</h2>
      <p>Type your readings in the level book, or click the plan to place a shot.</p>
      <p className="soft">A bigger reading is lower ground. Three placed shots make the ground.</p>
      <div className="empty-acts">
        <button
          type="button"
          onClick={() => {
            setStep("shots");
            pickTool("shot");
          }}
        >
          Place shots
        </button>
        <button type="button" onClick={() => pickTool("building")}>
          Draw the building
        </button>
        <button type="button" onClick={() => pickTool("lot")}>
          Draw the lot
        </button>
      </div>
    </div>
  );
}

export function PlanNote() {
  const note = useApp((state) => planNote(shownProject(state), state.results));
  return note === null ? null : <p className="plan-note">{note}</p>;
}
