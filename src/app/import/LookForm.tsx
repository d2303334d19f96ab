/** What came in, over the plan as it is: its unit, where it goes, what is doubtful, and the one act that joins it. */
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { useTheme } from "../../canvas/overlays/useTheme";
import { fitPlan } from "../../canvas/view/planView";
import { breaklineKinds, breaklineWord } from "../../document";
import {
  type FileUnit,
  farApart,
  feetApart,
  fileUnits,
  type Incoming,
  inMetres,
  knownPoints,
  metresPer,
  shifted,
  suggestedOrigin,
  type ThinnedPoints,
  unitWords,
} from "../../files/incoming";
import { Action, Choice } from "../../panels/fields/Choice";
import type { Notation } from "../../panels/notation";
import { type Fact, Facts } from "../../panels/parts";
import { useNotation, useProject, useResults } from "../../panels/useProject";
import { counted } from "../../panels/words";
import { openDialog } from "../../store/actions";
import { type Fit, FitForm } from "./FitForm";
import { joinGround } from "./join";
import { type LineChoices, type LineUse, lineGroups } from "./lineGroups";
import { PreviewPlan } from "./PreviewPlan";

const ask = "ask";

const uses: readonly { value: LineUse; words: string }[] = [
  { value: "leave out", words: "left out" },
  ...breaklineKinds.map((value) => ({ value, words: breaklineWord(value) })),
];

export interface LookFormProps {
  readonly name: string;
  readonly incoming: Incoming;
  readonly thinned: ThinnedPoints | null;
  /** What else can be asked of the file. */
  readonly part: ReactNode;
  readonly onBack: () => void;
}

export function LookForm({ name, incoming, thinned, part, onBack }: LookFormProps) {
  const [thin, setThin] = useState(thinned !== null);
  const known = incoming.units.known ? incoming.units.unit : null;
  const [unit, setUnit] = useState<FileUnit | null>(known);
  const [heights, setHeights] = useState<FileUnit | null>(null);
  const far = useMemo(
    () => (incoming.bounds ? suggestedOrigin(incoming.bounds) : ([0, 0] as const)),
    [incoming],
  );
  const [near, setNear] = useState(true);
  const groups = useMemo(() => lineGroups(incoming.lines), [incoming]);
  const [choices, setChoices] = useState<LineChoices>({});
  const [fault, setFault] = useState<string | null>(null);
  const project = useProject((present) => present);
  const theme = useTheme();
  const isFar = far[0] !== 0 || far[1] !== 0;
  const origin = isFar && near ? far : ([0, 0] as const);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the origin follows from the file and the choice
  const placed = useMemo(() => {
    const part = thin && thinned ? { ...incoming, points: thinned.points } : incoming;
    return inMetres(part, unit ?? "m", origin, heights ?? unit ?? "m");
  }, [incoming, thinned, thin, unit, heights, near]);
  const results = useResults((present) => present);
  const plan = useMemo(() => knownPoints(project, results), [project, results]);
  const lacksUnit = unit === null || (incoming.heightsAsked && heights === null);
  const apart = lacksUnit ? null : farApart(placed.bounds, plan);
  const [fit, setFit] = useState<Fit>({ how: "ask" });
  // biome-ignore lint/correctness/useExhaustiveDependencies: a point of the file lies elsewhere in another unit
  useEffect(() => setFit({ how: "ask" }), [unit, heights, near, thin]);
  const shift = apart !== null && fit.how === "common" ? fit.shift : null;
  const joining = useMemo(() => (shift ? shifted(placed, shift) : placed), [placed, shift]);
  const isAsked = apart !== null && (fit.how === "ask" || (fit.how === "common" && shift === null));
  const [share, setShare] = useState<number | null>(null);
  const stopped = useRef(false);
  useEffect(
    () => () => {
      stopped.current = true;
    },
    [],
  );
  const join = async () => {
    stopped.current = false;
    setFault(null);
    const why = await joinGround(name, joining, choices, {
      tell: setShare,
      isStopped: () => stopped.current,
    });
    setShare(null);
    setFault(why);
    if (why !== null) return;
    openDialog(null);
    fitPlan();
  };
  if (share !== null)
    return (
      <Working
        name={name}
        share={share}
        onStop={() => {
          stopped.current = true;
        }}
      />
    );
  return (
    <>
      <PreviewPlan incoming={joining} project={project} theme={theme} />
      {part}
      <UnitChoice known={known} unit={unit} incoming={incoming} onChoose={setUnit} />
      {incoming.heightsAsked ? <HeightUnit unit={heights} onChoose={setHeights} /> : null}
      {thinned ? (
        <ThinChoice whole={incoming} thinned={thinned} unit={unit} thin={thin} onChoose={setThin} />
      ) : null}
      {isFar ? (
        <Choice
          label="Its places"
          value={near ? "near" : "as written"}
          options={[
            { value: "near", words: `near the plan: less ${far[0]} east, ${far[1]} north` },
            { value: "as written", words: "as they are written" },
          ]}
          onChoose={(chosen) => setNear(chosen === "near")}
        />
      ) : null}
      {groups.map(({ key, words, count, usual }) => (
        <Choice
          key={key}
          label={`${words} (${count})`}
          value={choices[key] ?? usual}
          options={uses}
          help={
            usual === "leave out"
              ? "Contours are drawn from the ground between its points: as breaklines they would shape it a second time."
              : undefined
          }
          onChoose={(use) => setChoices({ ...choices, [key]: use })}
        />
      ))}
      {apart ? <FitForm apart={apart} incoming={placed} plan={plan} fit={fit} onFit={setFit} /> : null}
      <Brought incoming={joining} unit={lacksUnit ? null : unit} />
      {incoming.warnings.length > 0 ? (
        <ul className="import-warnings">
          {incoming.warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      ) : null}
      {fault ? (
        <p className="field-fault import-said" role="alert">
          {fault}
        </p>
      ) : null}
      <div className="dialog-acts">
        <Action look="accent" isDisabled={lacksUnit || isAsked} onPress={() => void join()}>
          Join it to the plan
        </Action>
        <Action look="quiet" onPress={onBack}>
          Back
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </>
  );
}

function Working({ name, share, onStop }: { name: string; share: number; onStop: () => void }) {
  return (
    <>
      <p role="status">{`Working ${name} into the ground…`}</p>
      <progress className="import-progress" max={1} value={share} aria-label={`Working in ${name}`} />
      <div className="dialog-acts">
        <Action onPress={onStop}>Stop</Action>
      </div>
    </>
  );
}

interface ThinChoiceProps {
  readonly whole: Incoming;
  readonly thinned: ThinnedPoints;
  readonly unit: FileUnit | null;
  readonly thin: boolean;
  readonly onChoose: (thin: boolean) => void;
}

/** A crowd of points thinned, with what that costs in height; or all of them, with what that costs in time. */
function ThinChoice({ whole, thinned, unit, thin, onChoose }: ThinChoiceProps) {
  const notation = useNotation();
  const length = (value: number) => notation.length(value * metresPer(unit ?? "m"));
  const lost = `One point in each square of ${length(thinned.cell)}. What is left out lies within ${length(
    thinned.greatest,
  )} of the ground between those kept (root mean square ${length(thinned.rms)}).`;
  return (
    <Choice
      label="Of its points"
      value={thin ? "thin" : "all"}
      options={[
        { value: "thin", words: `a thinned ${thinned.points.x.length}` },
        { value: "all", words: `all ${whole.points.x.length}` },
      ]}
      help={
        thin
          ? unit === null
            ? undefined
            : lost
          : "So many take some seconds; it can be stopped between the steps."
      }
      onChoose={(chosen) => onChoose(chosen === "thin")}
    />
  );
}

interface UnitChoiceProps {
  readonly known: FileUnit | null;
  readonly unit: FileUnit | null;
  readonly incoming: Incoming;
  readonly onChoose: (unit: FileUnit) => void;
}

function UnitChoice({ known, unit, incoming, onChoose }: UnitChoiceProps) {
  const notation = useNotation();
  const { bounds } = incoming;
  const reach = bounds
    ? Math.max(...[bounds.minX, bounds.maxX, bounds.minY, bounds.maxY].map((each) => Math.abs(each)))
    : 0;
  const feet = unit === "ft" || unit === "ft-us";
  const options = [
    ...(unit === null ? [{ value: ask, words: "choose…" }] : []),
    ...fileUnits.map((value) => ({ value: value as string, words: unitWords(value) })),
  ];
  const help =
    unit === null
      ? "The file doesn't say. Nothing can join before it is chosen."
      : feet
        ? feetWords(feetApart(reach), notation)
        : known
          ? "As the file says."
          : undefined;
  return (
    <Choice
      label={incoming.onLocalPlane ? "Its heights are" : "Its numbers are"}
      value={unit ?? ask}
      options={options}
      help={help}
      onChoose={(chosen) => {
        const found = fileUnits.find((each) => each === chosen);
        if (found) onChoose(found);
      }}
    />
  );
}

/** For files whose places have a unit while nothing is said of their heights. */
function HeightUnit({
  unit,
  onChoose,
}: {
  readonly unit: FileUnit | null;
  readonly onChoose: (unit: FileUnit) => void;
}) {
  return (
    <Choice
      label="Its heights are"
      value={unit ?? ask}
      options={[
        ...(unit === null ? [{ value: ask, words: "choose…" }] : []),
        ...fileUnits.map((value) => ({ value: value as string, words: unitWords(value) })),
      ]}
      help={
        unit === null
          ? "The file gives a unit for its places, none for its heights. Nothing can join before it is chosen."
          : undefined
      }
      onChoose={(chosen) => {
        const found = fileUnits.find((each) => each === chosen);
        if (found) onChoose(found);
      }}
    />
  );
}

/** Under a millimetre or two the choice makes no difference that can be measured. */
function feetWords(apart: number, notation: Notation): string {
  return apart < 0.002
    ? "The two kinds of feet make no difference this near to the plan's zero."
    : `The two kinds of feet put its farthest place ${notation.length(apart)} apart.`;
}

/** How much of what, over which extent. */
function Brought({ incoming, unit }: { incoming: Incoming; unit: FileUnit | null }) {
  const notation = useNotation();
  const { points, marks, lines, faces, bounds, crs } = incoming;
  const triangles = faces.triangles.length / 3;
  const what = [
    points.x.length > 0 ? counted(points.x.length, "point") : "",
    marks.x.length > 0 ? counted(marks.x.length, "mark") : "",
    lines.length > 0 ? counted(lines.length, "line") : "",
    triangles > 0 ? counted(triangles, "triangle") : "",
  ].filter(Boolean);
  const facts: Fact[] = [{ name: "It brings", figure: what.join(", ") }];
  if (bounds && unit !== null) {
    facts.push({
      name: "It covers",
      figure: `${notation.length(bounds.maxX - bounds.minX)} × ${notation.length(bounds.maxY - bounds.minY)}`,
    });
    if (!Number.isNaN(bounds.minZ))
      facts.push({
        name: "Heights",
        figure: `${notation.length(bounds.minZ)} to ${notation.length(bounds.maxZ)}`,
        note: "joined as known heights, not levelled from the mark",
      });
  }
  if (crs) facts.push({ name: "It lies on", figure: crs });
  return <Facts facts={facts} />;
}
