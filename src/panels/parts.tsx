/** What panels are built of: the head, sections, rows of facts, tables of figures. */
import { memo, type ReactNode } from "react";
import { openDialog } from "../store/actions";
import type { StepName } from "../store/state";
import { IconAction } from "./fields/Choice";
import { Why, type WhyProps } from "./help/Why";
import { StepProblems } from "./Problems";
import { Standing } from "./Standing";
import { stepTitles } from "./steps";
import { type Follows, useLags } from "./useLags";

export interface PanelProps {
  readonly step: StepName;
  /** What this step settles, in one line. */
  readonly purpose: string;
  readonly children: ReactNode;
}

export function Panel({ step, purpose, children }: PanelProps) {
  return (
    <>
      <div className="panel-head">
        <h2 className="panel-title">{stepTitles[step]}</h2>
        <p className="panel-purpose">{purpose}</p>
        <Standing step={step} />
        <div className="panel-guide">
          <IconAction icon="help" label="Guide to this step" onPress={() => openDialog("guide")} />
        </div>
      </div>
      <StepProblems step={step} />
      {children}
    </>
  );
}

export interface SectionProps {
  readonly title: string;
  /** Beside the title, on the right. */
  readonly aside?: ReactNode;
  /** What its figures are worked out from, where they come late: then they are marked as old until they are there. */
  readonly follows?: Follows;
  readonly children: ReactNode;
}

export function Section({ title, aside, follows, children }: SectionProps) {
  const lags = useLags(follows);
  return (
    <section className={lags ? "part part-lags" : "part"}>
      <div className="part-head">
        <h3 className="part-title">{title}</h3>
        {lags ? <span className="part-aside part-lags-word">as before this move</span> : null}
        {aside && !(lags && typeof aside === "string") ? <span className="part-aside">{aside}</span> : null}
      </div>
      {children}
    </section>
  );
}

export interface Fact {
  readonly name: string;
  readonly figure: string;
  readonly note?: string;
  /** Where the figure comes from can be asked. */
  readonly why?: WhyProps;
}

/** Named figures, one a row. */
export const Facts = memo(function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl className="facts">
      {facts.map((fact) => (
        <FactRow key={fact.name} {...fact} />
      ))}
    </dl>
  );
});

/** One that says the same as before stays as it is, whoever made it anew. */
const FactRow = memo(
  function FactRow({ name, figure, note, why }: Fact) {
    return (
      <div className="fact">
        <dt>
          {name}
          {note ? <span className="fact-note">{note}</span> : null}
        </dt>
        <dd>
          {figure}
          {why ? <Why {...why} /> : null}
        </dd>
      </div>
    );
  },
  (a, b) => a.name === b.name && a.figure === b.figure && a.note === b.note && sameWhy(a.why, b.why),
);

function sameWhy(a: WhyProps | undefined, b: WhyProps | undefined): boolean {
  return a?.kind === b?.kind && a?.id === b?.id && a?.of === b?.of;
}

export interface FigureTableProps {
  readonly label: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
  /** Rows that need a look, by index. */
  readonly marked?: ReadonlySet<number>;
  /** Columns of one width, so that none moves when its figures change under the hand. */
  readonly steady?: boolean;
}

/** A table of figures: the first column names the row, the others are figures. */
export function FigureTable({ label, heads, rows, marked, steady }: FigureTableProps) {
  return (
    <table className={steady ? "figures figures-steady" : "figures"} aria-label={label}>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((cells, row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its order
          <FigureRow key={row} cells={cells} heads={heads} marked={marked?.has(row) ?? false} />
        ))}
      </tbody>
    </table>
  );
}

interface FigureRowProps {
  readonly cells: readonly ReactNode[];
  readonly heads: readonly string[];
  readonly marked: boolean;
}

/** One that says the same as before stays as it is. */
const FigureRow = memo(
  function FigureRow({ cells, heads, marked }: FigureRowProps) {
    return (
      <tr className={marked ? "figures-marked" : undefined}>
        {cells.map((cell, column) =>
          column === 0 ? (
            <th key={heads[column]} scope="row">
              {cell}
            </th>
          ) : (
            <td key={heads[column]}>{cell}</td>
          ),
        )}
      </tr>
    );
  },
  (a, b) => a.marked === b.marked && sameItems(a.heads, b.heads) && sameItems(a.cells, b.cells),
);

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}

/** What to do next where there is nothing yet. */
export function Guide({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div className="guide">
      <p className="guide-title">{title}</p>
      {children}
    </div>
  );
}

/** A usual caution, where work can hurt someone. */
export function Caution({ children }: { children: ReactNode }) {
  return (
    <div className="caution" role="note">
      {children}
    </div>
  );
}
