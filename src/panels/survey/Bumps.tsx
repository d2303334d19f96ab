/** Second looks that found the beam elsewhere: by how much, from which row on, and what waits until it is shot again. */
import { useMemo } from "react";
import { type Setup, type Shot, surveyEdits } from "../../document";
import { run, runTogether } from "../../store/actions";
import { Action, Choice } from "../fields/Choice";
import { Icon } from "../icons";
import { useNotation, useProject, useResults } from "../useProject";
import { counted } from "../words";

const OPEN = "open";
const MISREAD = "misread";
const UNKNOWN = "unknown";

export function Bumps({ setup }: { setup: Setup }) {
  const shots = useProject(({ survey }) => survey.shots);
  const problems = useResults((results) => results.problems);
  const moved = new Set(
    problems.flatMap(({ code, ids }) => (code === "laser-moved" && ids?.[0] ? [ids[0]] : [])),
  );
  const told = new Set(setup.bumps.map(({ check }) => check));
  const checks = shots.filter(
    (shot) => shot.setup === setup.id && shot.kind === "check" && (told.has(shot.id) || moved.has(shot.id)),
  );
  return checks.map((check) => <Bump key={check.id} setup={setup} check={check} shots={shots} />);
}

interface BumpProps {
  readonly setup: Setup;
  readonly check: Shot;
  readonly shots: readonly Shot[];
}

function Bump({ setup, check, shots }: BumpProps) {
  const move = useResults(({ survey }) =>
    survey.setups.find(({ id }) => id === setup.id)?.moves?.find((each) => each.check === check.id),
  );
  const points = useResults(({ survey }) => survey.points);
  const shift = useMemo(
    () => points.find(({ shot }) => shot === check.id)?.shift ?? null,
    [points, check.id],
  );
  const notation = useNotation();
  const told = setup.bumps.find((bump) => bump.check === check.id);
  const by = move?.by ?? (shift === null ? null : -shift);
  const nameOf = (shot: Shot) => shot.name || `row ${shots.indexOf(shot) + 1}`;
  const before = shots
    .slice(0, shots.indexOf(check) + 1)
    .filter((shot) => shot.setup === setup.id && !shot.aside && shot.reading !== null);
  const said = told ? (told.from ?? UNKNOWN) : move ? UNKNOWN : OPEN;
  const options = [
    ...(said === OPEN ? [{ value: OPEN, words: "say what happened" }] : []),
    { value: MISREAD, words: "not bumped, this was misread" },
    { value: UNKNOWN, words: "bumped, nobody knows when" },
    ...before.map((shot) => ({ value: shot.id, words: `bumped before ${nameOf(shot)}` })),
  ];
  const choose = (value: string) => {
    if (value === OPEN) return;
    if (value === MISREAD) misread(setup.id, check.id);
    else run(surveyEdits.reportBump, { check: check.id, from: value === UNKNOWN ? null : value });
  };
  return (
    <section className="survey-bump" aria-label={`The laser at ${nameOf(check)}`}>
      <p className="untied">
        <Icon name="warn" />
        <span>
          {`${nameOf(check)}: the beam seems to stand ${by === null ? "elsewhere" : `${notation.length(Math.abs(by))} ${by > 0 ? "higher" : "lower"}`} than before.`}
        </span>
      </p>
      <Choice label="The laser" layout="stack" value={said} options={options} onChoose={choose} />
      <Waiting shots={shots.filter(({ id }) => move?.waiting.includes(id) ?? false)} nameOf={nameOf} />
    </section>
  );
}

/** The second look is set aside, and with it what was said of a bump. */
function misread(setup: string, check: string): void {
  runTogether("set a second look aside", [
    (project) => surveyEdits.removeBump.run(project, { setup, check }),
    (project) => surveyEdits.setAside.run(project, { id: check, aside: true }),
  ]);
}

interface WaitingProps {
  readonly shots: readonly Shot[];
  readonly nameOf: (shot: Shot) => string;
}

/** Two second looks tell where the beam stood; their rows are made ready to be typed. */
function Waiting({ shots, nameOf }: WaitingProps) {
  if (shots.length === 0) return null;
  const two = shots.slice(0, 2);
  const again = () => run(surveyEdits.lookAgain, { shots: two.map(({ id }) => id) });
  return (
    <>
      <p className="soft small">
        {`${counted(shots.length, "shot")} since the last good look ${shots.length === 1 ? "waits" : "wait"} without a height: ${shots.slice(0, 6).map(nameOf).join(", ")}${shots.length > 6 ? " …" : ""}. Shoot two of them again, or say from which row on the laser stood as now.`}
      </p>
      <Action look="quiet" icon="plus" onPress={again}>
        {`Add rows: ${two.map(nameOf).join(" and ")} again`}
      </Action>
    </>
  );
}
