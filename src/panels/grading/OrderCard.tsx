/** The acts on the ground in the order in which they shape it, and where one changes what another made. */
import { gradingEdits } from "../../document";
import type { ActResult } from "../../solve/results";
import { goTo, run } from "../../store/actions";
import { Action, IconAction } from "../fields/Choice";
import { Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import "./grading.css";

const noActs: readonly ActResult[] = [];

export function OrderCard() {
  const acts = useResults(({ grading }) => grading?.order ?? noActs);
  const typed = useProject(({ grading }) => grading.order.length > 0);
  const piped = useResults(({ water }) => water.pipes.length > 0);
  if (acts.length < 2) return null;
  const move = (from: number, by: -1 | 1) => {
    const ids = acts.map(({ id }) => id);
    const [moved] = ids.splice(from, 1);
    if (moved === undefined) return;
    ids.splice(from + by, 0, moved);
    run(gradingEdits.setGradingOrder, { order: ids });
  };
  return (
    <Section title="Order of shaping">
      <p className="soft small">
        {`Each shapes the ground that those above it leave: the later one wins.${piped ? " Where a swale crosses a drive neither does: a pipe takes it under, in either order." : ""}`}
      </p>
      <ol className="order-list" aria-label="Order of shaping">
        {acts.map((act, i) => (
          <li className="order-item" key={act.id}>
            <span className="order-name">{act.name}</span>
            <IconAction
              icon="up"
              label={`${act.name}: earlier`}
              isDisabled={i === 0}
              onPress={() => move(i, -1)}
            />
            <IconAction
              icon="down"
              label={`${act.name}: later`}
              isDisabled={i === acts.length - 1}
              onPress={() => move(i, 1)}
            />
          </li>
        ))}
      </ol>
      <Conflicts />
      {typed ? (
        <Action look="quiet" onPress={() => run(gradingEdits.setGradingOrder, { order: [] })}>
          Take the usual order
        </Action>
      ) : null}
    </Section>
  );
}

function Conflicts() {
  const notation = useNotation();
  const conflicts = useResults(({ grading }) => grading?.conflicts) ?? [];
  const pipes = useResults(({ water }) => water.pipes);
  if (conflicts.length === 0 && pipes.length === 0) return null;
  return (
    <ul className="order-list" aria-label="Where they meet">
      {conflicts.map((conflict) => (
        <li className="order-item" key={`${conflict.first} ${conflict.second}`}>
          <span className="small">
            {`${conflict.secondName} ${conflict.by < 0 ? "cuts" : "raises"} ${conflict.firstName} by up to ${notation.length(Math.abs(conflict.by))}`}
          </span>
          <IconAction icon="place" label="Show where" onPress={() => goTo(conflict.at)} />
        </li>
      ))}
      {pipes.map(({ name, at }) => (
        <li className="order-item" key={name}>
          <span className="small">{`${name}: a pipe takes it, whatever the order`}</span>
          <IconAction icon="place" label="Show where" onPress={() => goTo(at)} />
        </li>
      ))}
    </ul>
  );
}
