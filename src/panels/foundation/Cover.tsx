/** Whether the footing lies deep enough: against frost two ways, into undisturbed ground, and what a level footing can take. */
import type { Foundation } from "../../document";
import { hasStemWall } from "../../document/foundationMeasures";
import type { CoverCheck, FoundationResult } from "../../solve/results";
import { Choice, Toggle } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import type { Notation } from "../notation";
import { FigureTable, Section } from "../parts";
import { useNotation, useResults } from "../useProject";
import { counted, listed } from "../words";
import { changeFoundation } from "./Kind";

const counts = [
  { value: "undisturbed", words: "The ground as it is" },
  { value: "finished", words: "Finished ground" },
] as const;

export function Cover({ foundation }: { foundation: Foundation }) {
  const result = useResults((results) => results.foundation);
  const notation = useNotation();
  return (
    <Section title="Depth and frost">
      <LengthField
        label="Frost depth"
        m={foundation.frostDepth}
        least={0}
        placeholder="ask locally"
        help={`As your building office gives it.${foundation.frostDepth === null ? " Empty: the floor isn't limited by frost yet." : ""}`}
        onEmpty={() => changeFoundation({ frostDepth: null })}
        onCommit={(frostDepth) => changeFoundation({ frostDepth })}
      />
      <Choice
        label="Frost counts from"
        layout="stack"
        value={foundation.frostFrom}
        options={counts}
        help="Inspectors differ on whether raised ground counts: ask yours."
        onChoose={(frostFrom) => changeFoundation({ frostFrom })}
      />
      {result ? <Covers result={result} notation={notation} /> : null}
      {result && hasStemWall(foundation) ? <Steps foundation={foundation} result={result} /> : null}
    </Section>
  );
}

function Covers({ result, notation }: { result: FoundationResult; notation: Notation }) {
  const { cover } = result;
  const row = (words: string, check: CoverCheck) => [
    words,
    notation.length(check.least),
    <span className="foundation-margin" key="where">
      {check.at.place}
    </span>,
    <span className="foundation-margin" key="margin">
      {check.margin === null ? "–" : marginWords(check.margin, notation)}
    </span>,
  ];
  const checks = [
    ["below finished ground", cover.finished],
    ["below the ground as it is", cover.undisturbed],
    ["into undisturbed ground", cover.bearing],
  ] as const;
  const failing = new Set(
    checks.flatMap(([, { margin }], i) => (margin !== null && margin < -1e-6 ? [i] : [])),
  );
  return (
    <>
      <FigureTable
        label="Depth of the footing at its least"
        heads={["bottom of footing", "least", "where", "margin"]}
        rows={checks.map(([words, check]) => row(words, check))}
        marked={failing}
      />
      {checks.map(([words, { failing: corners }]) =>
        corners.length > 0 ? (
          <p className="small foundation-failing" key={words}>
            {`Too little ${words} at ${corners.length === 1 ? "corner" : "corners"} ${listed(corners)}.`}
          </p>
        ) : null,
      )}
    </>
  );
}

function marginWords(margin: number, notation: Notation): string {
  if (margin < -1e-6) return `${notation.length(-margin)} short`;
  return `${notation.length(Math.max(0, margin))} to spare`;
}

function Steps({ foundation, result }: { foundation: Foundation; result: FoundationResult }) {
  const notation = useNotation();
  const { steps } = foundation;
  const { stepped, levelFooting } = result;
  const change = (patch: Partial<Foundation["steps"]>) => changeFoundation({ steps: { ...steps, ...patch } });
  return (
    <>
      {levelFooting ? (
        <p className="small">
          {levelFooting.takes < 0
            ? `A level footing would have to lie ${notation.length(-levelFooting.takes)} deeper even on level ground; `
            : `A level footing takes ${notation.length(levelFooting.takes)} of fall along the walls; `}
          {`there is ${notation.length(levelFooting.fall)}.`}
        </p>
      ) : null}
      {stepped?.asked.map((why) => (
        <p className="small" key={why}>{`Steps are asked for: ${why}.`}</p>
      ))}
      <Toggle label="Step the footing down" on={steps.on} onToggle={(on) => change({ on })} />
      {steps.on ? (
        <>
          <LengthField
            label="One step"
            small
            m={steps.rise}
            least={0.05}
            help="A course of blocks or a form's height."
            onCommit={(rise) => change({ rise })}
          />
          <LengthField
            label="Shortest level piece"
            small
            m={steps.leastRun}
            least={0.1}
            onCommit={(leastRun) => change({ leastRun })}
          />
          <LengthField
            label="Lap at a step"
            small
            m={steps.overlap}
            least={0}
            placeholder={stepped ? notation.length(stepped.overlap) : ""}
            onEmpty={() => change({ overlap: null })}
            onCommit={(overlap) => change({ overlap })}
          />
        </>
      ) : null}
      {stepped?.on ? (
        <p className="small">
          {stepped.levels === 0
            ? "No step is needed: a level footing is deep enough all round."
            : `${counted(stepped.steps.length, "step")} of ${notation.length(stepped.rise)}, ${stepped.levels} down at most; ${notation.volume(Math.max(0, stepped.saved))} of concrete saved against a level trench as deep.`}
        </p>
      ) : null}
    </>
  );
}
