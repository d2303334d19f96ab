/** No floor keeps every limit: which two clash, by how much, and what would mend it. */
import { useEffect, useState } from "react";
import { mostOptions, optionEdits, type Project } from "../../document";
import { roundedInto } from "../../solve/limit-standing";
import type { BandClash } from "../../solve/results";
import type { WayOut } from "../../solve/ways-out";
import { runTogether } from "../../store/actions";
import { lookFor } from "../../store/solving";
import { roundingStep } from "../../units";
import { Action } from "../fields/Choice";
import { useNotation, useProject } from "../useProject";
import "./band.css";

/** What was found for a plan so far; another plan asks anew. */
interface Found {
  readonly of: Project;
  readonly ways: readonly WayOut[];
  /** "stopped": a way was tried before all had been looked for. */
  readonly state: "looking" | "stopped" | "done";
}

/** Kept, so that they are there again when a way that was tried is undone. */
const known = new WeakMap<Project, Found>();

export function NoHeight({ clash }: { clash: BandClash }) {
  const notation = useNotation();
  const { low, high, lowest, highest, gap } = clash;
  const step = roundingStep(notation.display.length, notation.display.rounding);
  return (
    <div className="no-height">
      <p>
        <strong>{`${notation.length(gap)} apart: `}</strong>
        {`${low.name} (${low.place}) asks for ${notation.length(roundedInto(lowest, "up", step))} or more, ${high.name} (${high.place}) for ${notation.length(roundedInto(highest, "down", step))} or less.`}
      </p>
      <Ways />
    </div>
  );
}

function Ways() {
  const project = useProject((present) => present);
  const [found, setFound] = useState<Found | null>(null);
  const current = found?.of === project ? found : (known.get(project) ?? null);
  const look = () => setFound({ of: project, ways: [], state: "looking" });
  useSearch(current, setFound);
  if (!current)
    return (
      <Action look="quiet" onPress={look}>
        Look for ways out
      </Action>
    );
  return (
    <>
      <p role="status" className="soft">
        {wordsOf(current)}
      </p>
      <ul className="ways" aria-label="Ways out">
        {current.ways.map((way) => (
          <Way key={way.id} way={way} />
        ))}
      </ul>
      {current.state === "stopped" ? (
        <Action look="quiet" onPress={look}>
          Look for all of them
        </Action>
      ) : null}
    </>
  );
}

function wordsOf({ ways, state }: Found): string {
  if (state === "looking") return "Looking: each way is worked out in full…";
  if (ways.length > 0) return "Ways out, each worked out in full:";
  return "No taller wall, stepped footing, other floor, approved fill, lower swale, longer drive or short move gives a height that keeps them all. Look at the limits themselves.";
}

function Way({ way: { what, project, brings, dearer } }: { way: WayOut }) {
  const notation = useNotation();
  const also = [
    `floor at ${notation.length(project.building?.floor ?? Number.NaN)}`,
    ...(dearer === null ? [] : [`${notation.money(Math.abs(dearer))} ${dearer < 0 ? "less" : "more"}`]),
    ...(brings.length === 0
      ? ["nothing new to look at"]
      : [`brings: ${brings.map(({ where, what: said }) => `${where}: ${said}`).join(" ")}`]),
  ];
  return (
    <li>
      <span>
        {what}
        <span className="soft">{`; ${also.join("; ")}`}</span>
      </span>
      <Action look="quiet" onPress={() => tryWay(what, project)}>
        Try it
      </Action>
    </li>
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

/** Each way is seen as it is found. */
function useSearch(current: Found | null, setFound: (found: Found) => void) {
  const of = current?.state === "looking" ? current.of : null;
  useEffect(() => {
    if (!of) return;
    let ways: readonly WayOut[] = [];
    const show = (state: Found["state"]) => {
      known.set(of, { of, ways, state: state === "done" ? "done" : "stopped" });
      setFound({ of, ways, state });
    };
    return lookFor({ kind: "ways-out" }, of, {
      found: (way) => {
        ways = [...ways, way as WayOut];
        show("looking");
      },
      end: () => show("done"),
    });
  }, [of, setFound]);
}
