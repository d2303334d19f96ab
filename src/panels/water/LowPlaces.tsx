/** Low places that hold water, and the swale that is laid out of one. */
import { memo } from "react";
import { present, siteEdits } from "../../document";
import { pondAt, swaleOutOf } from "../../solve/pond-swale";
import type { Pond } from "../../solve/results";
import type { LaidProposal } from "../../solve/swale-proposal";
import { goTo, run as runEdit, tell } from "../../store/actions";
import { appStore } from "../../store/store";
import { Action, IconAction } from "../fields/Choice";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { Section } from "../parts";
import { useNotation, useResults } from "../useProject";

export function LowPlaces() {
  const ponds = useResults(({ water }) => water.ponds);
  return (
    <Section
      title="Low places that hold water"
      follows="floor"
      aside={ponds.length === 0 ? "none" : String(ponds.length)}
    >
      {ponds.length > 0 ? (
        <ul className="checks">
          {ponds.map((pond) => (
            <PondRow key={pond.at.join(" ")} pond={pond} />
          ))}
        </ul>
      ) : null}
    </Section>
  );
}

const PondRow = memo(function PondRow({ pond }: { pond: Pond }) {
  const notation = useNotation();
  return (
    <li className="check check-note">
      <Icon name="note" />
      <div>
        <p>
          <b>{`${notation.length(pond.depth)} deep`}</b>
          {`, ${notation.area(pond.area)}, holds ${notation.volume(pond.volume)}${pond.guessed ? "; partly on guessed ground, so it may not be there" : "; a measured hollow"}`}
          <Why kind="pond" id={pond.at.join(" ")} of="depth of the low place" />
        </p>
        <p className="soft small">
          {`It drains once its rim is ${notation.length(pond.depth)} lower where it spills over, or once it is filled so deep.`}{" "}
          <button type="button" className="link" onClick={() => goTo(pond.spill)}>
            Show the rim
          </button>
        </p>
        <Action icon="draw" look="quiet" onPress={() => layOut(pond, notation)}>
          Lay a swale out of it
        </Action>
      </div>
      <IconAction icon="place" label="Show it on the plan" onPress={() => goTo(pond.at)} />
    </li>
  );
});

/** Draws the swale into the plan, or says what it lacks. */
function layOut(pond: Pond, { length }: Notation): void {
  const { history, results } = appStore.getState();
  const project = present(history);
  const proposal = swaleOutOf(project, results, pond);
  if (proposal.kind === "refused") {
    tell({ tone: "caution", text: proposal.why });
    return;
  }
  const { line, depth, leastFall, result } = proposal.route;
  if (!result.drains) {
    tell({
      tone: "caution",
      text: `No bed can come out of this hollow nearby: at the best place it would lie ${length(proposal.short)} under the ground.`,
      more: `${reachWords(proposal, length)}Or fill it, allow a bed less fall, lead it into a pipe, or shoot more ground where it falls.`,
    });
    return;
  }
  runEdit(siteEdits.addSwale, { line, shape: { depth, leastFall } });
  const after = appStore.getState().results;
  const left = pondAt(after, pond.at);
  if (left)
    tell({
      tone: "caution",
      text: `The swale is drawn, but water still stands ${length(left.depth)} deep there.`,
      more: "Something else dams it: a drive, a berm or the building's own earth. Undo it, or drag its line round what dams it.",
    });
}

/** How far a bed reaches, and the floor that would go with one laid on fill. */
function reachWords({ reaches, raised }: LaidProposal, length: Notation["length"]): string {
  const reach = reaches === null ? "" : `Falling as is asked it could come out ${length(reaches)} along. `;
  const floor = raised?.floor ?? null;
  return floor === null
    ? reach
    : `${reach}On fill, laid up from that outlet, a bed works with the floor at ${length(floor)} or higher. `;
}
