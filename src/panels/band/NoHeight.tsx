/** No floor keeps every limit: which two clash, by how much, and what would mend it. */
import { useEffect, useState } from "react";
import { mostOptions, optionEdits, type Project } from "../../document";
import type { BandClash } from "../../solve/results";
import { type WayOut, waysOut } from "../../solve/ways-out";
import { runTogether } from "../../store/actions";
import { Action } from "../fields/Choice";
import { useNotation, useProject } from "../useProject";
import "./band.css";

/** What was found for a plan; another plan asks anew. */
interface Found {
  readonly of: Project;
  readonly ways: readonly WayOut[] | null;
}

export function NoHeight({ clash }: { clash: BandClash }) {
  const notation = useNotation();
  const { low, high, lowest, highest, gap } = clash;
  return (
    <div className="no-height">
      <p>
        <strong>{`${notation.length(gap)} apart: `}</strong>
        {`${low.name} (${low.place}) asks for ${notation.length(lowest)} or more, ${high.name} (${high.place}) for ${notation.length(highest)} or less.`}
      </p>
      <Ways />
    </div>
  );
}

function Ways() {
  const project = useProject((present) => present);
  const notation = useNotation();
  const [found, setFound] = useState<Found | null>(null);
  const current = found?.of === project ? found : null;
  useSearch(current, setFound);
  if (!current)
    return (
      <Action look="quiet" onPress={() => setFound({ of: project, ways: null })}>
        Look for ways out
      </Action>
    );
  if (!current.ways) return <p role="status">Looking: each way is worked out in full…</p>;
  if (current.ways.length === 0)
    return (
      <p role="status">
        No taller wall, stepped footing, other floor, lower swale, longer drive or short move gives a height
        that keeps them all. Look at the limits themselves.
      </p>
    );
  return (
    <ul className="ways" aria-label="Ways out">
      {current.ways.map(({ id, what, project: next }) => (
        <li key={id}>
          <span>
            {what}
            <span className="soft">{`, floor at ${notation.length(next.building?.floor ?? Number.NaN)}`}</span>
          </span>
          <Action look="quiet" onPress={() => tryWay(what, next)}>
            Try it
          </Action>
        </li>
      ))}
    </ul>
  );
}

/** The plan as it is and the plan as it would be stay as options, to be set side by side. */
function tryWay(what: string, next: Project): void {
  const name = what.length > 60 ? `${what.slice(0, 57)}…` : what;
  const free = ({ options }: Project) => mostOptions - options.length;
  const has = ({ options }: Project, wanted: string) => options.some((option) => option.name === wanted);
  const keep = (wanted: string) => (project: Project) =>
    free(project) < 1 || has(project, wanted)
      ? { ok: true as const, project, label: what }
      : optionEdits.keepOption.run(project, { name: wanted });
  runTogether(what, [
    keep("before the ways out"),
    ({ options }) => ({ ok: true, project: { ...next, options }, label: what }),
    keep(name),
  ]);
}

/** The search waits a frame, so that its word is seen first. */
function useSearch(current: Found | null, setFound: (found: Found) => void) {
  useEffect(() => {
    if (!current || current.ways) return;
    const timer = setTimeout(() => setFound({ of: current.of, ways: waysOut(current.of) }), 30);
    return () => clearTimeout(timer);
  }, [current, setFound]);
}
