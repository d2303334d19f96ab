/** What the person should know or mend: the whole list by the rail, and each step's own in its panel. */
import { memo, useMemo, useRef, useState } from "react";
import {
  Button,
  Dialog,
  DialogTrigger,
  Heading,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
} from "react-aria-components";
import { applyFix } from "../document";
import { remember } from "../solve/memo";
import type { Fix, Problem } from "../solve/results";
import {
  inOneList,
  isOnlyBeginning,
  lookedAt,
  lookWords,
  severities,
  type ToLookAt,
  worseOf,
} from "../solve/to-look-at";
import { goTo, runTogether, select, setStep } from "../store/actions";
import type { Selected, StepName } from "../store/state";
import { appStore, shownFloor, shownProject } from "../store/store";
import { useApp } from "../store/useApp";
import { Icon, type IconName } from "./icons";
import { stepOfProblem } from "./stepOfProblem";
import { stepTitles } from "./steps";
import { askBook } from "./survey/bookRequest";
import { useNotation, useProject, useResults } from "./useProject";
import { capital } from "./words";

const signs: Readonly<Record<Problem["severity"], IconName>> = {
  error: "stop",
  caution: "warn",
  note: "note",
};

const noProblems: readonly Problem[] = [];

/** Problems of settled results; while something is under the hand the last list stays. */
function useSettledProblems(): readonly Problem[] {
  const settled = useResults((results) => (results.lagging ? null : results.problems));
  const file = useApp((state) => state.file);
  const last = useRef({ file, problems: noProblems });
  // What another plan lacked says nothing of this one.
  if (settled !== null || last.current.file !== file)
    last.current = { file, problems: settled ?? noProblems };
  return last.current.problems;
}

/** Whether nothing is known yet of a plan that was just opened. */
function useFirstLook(): boolean {
  const file = useApp((state) => state.file);
  const isLagging = useResults((results) => results.lagging);
  const known = useRef<typeof file | null>(null);
  if (!isLagging) known.current = file;
  return known.current !== file;
}

/** Several parts of the window ask for the same list in one frame. */
const lookedAtOnce = remember(lookedAt);

/** The list of what to look at, as it is now. */
export function useToLookAt(): ToLookAt {
  const project = useProject((present) => present);
  const problems = useSettledProblems();
  const results = useResults((present) => present);
  const floor = useApp(shownFloor);
  const notation = useNotation();
  return useMemo(
    () => lookedAtOnce(project, problems, results, floor, notation),
    [project, problems, results, floor, notation],
  );
}

export function ProblemsButton({ look }: { look: ToLookAt }) {
  const worst = worseOf(look.settled[0] ?? null, look.moving[0] ?? null)?.severity;
  const isFirstLook = useFirstLook();
  if (!worst)
    return (
      <p className="rail-problems rail-no-problems soft small">
        {isFirstLook ? "Looking at the plan …" : `${lookWords(0)}.`}
      </p>
    );
  return <ProblemsDialog worst={worst} count={look.settled.length + look.moving.length} />;
}

/** The list is asked for once it is open: the button alone stays as it is while only heights move. */
const ProblemsDialog = memo(function ProblemsDialog({ worst, count }: ProblemsDialogProps) {
  return (
    <DialogTrigger>
      <Button className={`rail-problems problems-${worst}`}>
        <Icon name={signs[worst]} />
        <span>{lookWords(count)}</span>
      </Button>
      <Popover className="popover problems-popover" placement="right bottom">
        <Dialog className="problems-dialog">
          {({ close }) => (
            <>
              <Heading slot="title" className="part-title">
                What to look at
              </Heading>
              <AllProblems onJump={close} />
            </>
          )}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
});

interface ProblemsDialogProps {
  readonly worst: Problem["severity"];
  readonly count: number;
}

function AllProblems({ onJump }: { onJump: () => void }) {
  const look = useToLookAt();
  return <ProblemList problems={inOneList(look)} first={12} withStep onJump={onJump} />;
}

/** The problems that are mended in this step; limits and low places stand in its panel already. */
export const StepProblems = memo(function StepProblems({ step }: { step: StepName }) {
  const settled = useSettledProblems();
  const problems = useMemo(
    () =>
      settled
        .filter((problem) => !isOnlyBeginning(problem) && stepOfProblem(problem) === step)
        .sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity)),
    [settled, step],
  );
  return problems.length === 0 ? null : <ProblemList problems={problems} first={3} />;
});

interface ProblemListProps {
  readonly problems: readonly Problem[];
  /** How many are shown at first. */
  readonly first: number;
  readonly withStep?: boolean;
  readonly onJump?: () => void;
}

/** A longer list is read on site, not here. */
const mostShown = 60;

const ProblemList = memo(function ProblemList({ problems, first, withStep, onJump }: ProblemListProps) {
  const [all, setAll] = useState(false);
  const count = all ? mostShown : first;
  return (
    <ul className="problems">
      {problems.slice(0, count).map((problem) => (
        <li
          key={`${problem.code} ${problem.where} ${problem.what} ${problem.at ?? ""}`}
          className={`problem problem-${problem.severity}`}
        >
          <Icon name={signs[problem.severity]} />
          <div>
            <p>
              <b>{`${capital(problem.where)}.`}</b> {problem.what}
            </p>
            {problem.how ? <p className="soft small">{problem.how}</p> : null}
            <ProblemLinks problem={problem} withStep={withStep ?? false} onJump={onJump} />
          </div>
        </li>
      ))}
      {problems.length > count ? (
        <li className="problems-more">
          {all ? (
            <span className="soft small">{`and ${problems.length - count} more`}</span>
          ) : (
            <Button className="link" onPress={() => setAll(true)}>{`Show all ${problems.length}`}</Button>
          )}
        </li>
      ) : null}
    </ul>
  );
});

interface ProblemLinksProps {
  readonly problem: Problem;
  readonly withStep: boolean;
  readonly onJump?: (() => void) | undefined;
}

function ProblemLinks({ problem, withStep, onJump }: ProblemLinksProps) {
  const step = stepOfProblem(problem);
  const selected = things(problem.ids ?? []);
  const jump = () => {
    if (withStep) setStep(step);
    if (selected.length > 0) select(selected);
    if (problem.at) goTo(problem.at);
    // The keyboard goes where the mending is: the book takes it at its next row, or at the shot that is named.
    if (withStep && step === "shots" && !problem.at)
      askBook(selected.flatMap((thing) => (thing.kind === "shot" ? [thing.id] : []))[0] ?? null);
    onJump?.();
  };
  const fixes = problem.fixes ?? [];
  if (!withStep && !problem.at && selected.length === 0 && fixes.length === 0) return null;
  return (
    <span className="problem-links">
      <Mends fixes={fixes} />
      <Button className="link" onPress={jump}>
        {problem.at || selected.length > 0 ? "Show it" : `Go to ${stepTitles[step].toLowerCase()}`}
      </Button>
    </span>
  );
}

/** One-click mends; those that differ in one thing only stand in one list. */
function Mends({ fixes }: { fixes: readonly Fix[] }) {
  const choices = [...new Set(fixes.flatMap(({ choice }) => choice ?? []))];
  return (
    <>
      {fixes
        .filter(({ choice }) => choice === undefined)
        .map((fix) => (
          <Button key={fix.words} className="link" onPress={() => mend(fix)}>
            {fix.words}
          </Button>
        ))}
      {choices.map((choice) => (
        <MendChoice key={choice} name={choice} fixes={fixes.filter((fix) => fix.choice === choice)} />
      ))}
    </>
  );
}

function MendChoice({ name, fixes }: { name: string; fixes: readonly Fix[] }) {
  return (
    <MenuTrigger>
      <Button className="link">{`${name}…`}</Button>
      <Popover className="popover">
        <Menu
          className="list"
          aria-label={name}
          onAction={(key) => {
            const fix = fixes[Number(key)];
            if (fix) mend({ ...fix, words: `${name} ${fix.words}` });
          }}
        >
          {fixes.map((fix, i) => (
            <MenuItem className="list-item" key={fix.words} id={String(i)} textValue={fix.words}>
              {fix.words}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** What one click can do about it, as one step to undo. */
function mend(fix: Fix): void {
  runTogether(fix.words.charAt(0).toLowerCase() + fix.words.slice(1), [(project) => applyFix(project, fix)]);
}

/** Document ids as things that can be selected. */
function things(ids: readonly string[]): Selected[] {
  const { survey, building, grading, lot } = shownProject(appStore.getState());
  const kinds = [
    ["shot", survey.shots],
    ["mark", survey.marks],
    ["door", building?.doors ?? []],
    ["drive", grading.drives],
    ["swale", grading.swales],
    ["pad", grading.pads],
    ["berm", grading.berms],
    ["retaining-wall", grading.walls],
    ["grade-point", grading.points],
    ["feature", lot.features],
    ["breakline", survey.breaklines],
    ["pit", survey.pits],
  ] as const;
  return ids.flatMap((id) => {
    const kind = kinds.find(([, list]) => list.some((thing) => thing.id === id))?.[0];
    return kind ? [{ kind, id }] : [];
  });
}
