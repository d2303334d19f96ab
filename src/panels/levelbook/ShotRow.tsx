import { memo, type ReactNode } from "react";
import type { Project, Shot } from "../../document";
import type { LevelledPoint } from "../../solve/results";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { type RowState, rowState, shortPlusMinus, stateWord, stateWords } from "../survey/rowState";
import { useResults } from "../useProject";
import { type ColumnId, cellText, columns } from "./columns";
import { type Draft, draftKey } from "./drafts";
import { RowHead } from "./RowHead";
import { understood } from "./understood";

export interface ShotRowProps {
  readonly shot: Shot;
  readonly row: number;
  /** As the book was read, from 1 on. */
  readonly number: number;
  readonly project: Project;
  readonly point: LevelledPoint | undefined;
  readonly notation: Notation;
  readonly drafts: ReadonlyMap<string, Draft>;
  /** The reading is asked about, in these words. */
  readonly question: string | null;
  readonly gridId: string;
  /** Column of the cursor, -1 where it stands elsewhere. */
  readonly cursor: number;
  readonly chosen: boolean;
  /** Whole rows are chosen, this one among them. */
  readonly isWhole: boolean;
  /** More than the cursor's cell is chosen: the cells of this row from `leftmost` to `rightmost`. */
  readonly isBlock: boolean;
  readonly leftmost: number;
  readonly rightmost: number;
  readonly editor: ReactNode;
}

/** One shot. The cursor's cell gives way to the editor while it is being typed in. */
export const ShotRow = memo(function ShotRow(props: ShotRowProps) {
  const { shot, row, cursor, chosen, editor, gridId } = props;
  const isKeptOut = useKeptOut(shot.id);
  const state = rowState(shot, props.point, isKeptOut);
  const { isBlock, isWhole } = props;
  const classes = ["book-row", isWhole ? "book-chosen" : "", chosen ? "book-of-chosen" : "", rowClass(state)]
    .filter(Boolean)
    .join(" ");
  return (
    <tr className={classes} aria-rowindex={row + 2} aria-selected={chosen}>
      <RowHead row={row} number={props.number} />
      {columns.map((column, index) => {
        const draft = props.drafts.get(draftKey(shot.id, column.id));
        const here = index === cursor;
        const inBlock = isBlock && index >= props.leftmost && index <= props.rightmost;
        return (
          // biome-ignore lint/a11y/useAriaPropsSupportedByRole: in a grid it is a cell that can be selected
          <td
            key={column.id}
            id={`${gridId}-${row}-${index}`}
            data-row={row}
            data-column={index}
            className={`book-cell book-${column.id}${here ? " book-here" : ""}${draft ? " book-bad" : ""}${inBlock ? " book-in-block" : ""}`}
            aria-selected={isBlock ? inBlock : undefined}
            aria-colindex={index + 2}
            aria-invalid={draft !== undefined}
            title={draft?.why ?? titleOf(column.id, props, isKeptOut)}
          >
            {here && editor ? (
              editor
            ) : draft ? (
              <NotUnderstood draft={draft} />
            ) : (
              <CellShown id={column.id} {...props} isKeptOut={isKeptOut} />
            )}
          </td>
        );
      })}
    </tr>
  );
});

/** The text as it was typed, with a sign beside it; the reason stands in the title and below the table. */
function NotUnderstood({ draft }: { draft: Draft }) {
  return (
    <>
      <Icon name="warn" />
      {draft.text}
      <span className="visually-hidden">{`, not understood: ${draft.why}`}</span>
    </>
  );
}

/** Whether the shot is a tie that contradicts the others. */
function useKeptOut(id: string): boolean {
  return useResults(({ survey }) =>
    survey.setups.some(({ keptOut = [] }) => keptOut.some(({ shot }) => shot === id)),
  );
}

type CellProps = ShotRowProps & { readonly id: ColumnId; readonly isKeptOut: boolean };

function CellShown({ id, shot, project, notation, point, question, isKeptOut }: CellProps) {
  const text = cellText(id, shot, project, notation, point);
  if (id === "reading" && shot.reading)
    return (
      <>
        {question === null ? null : <Asked question={question} />}
        <Reading m={shot.reading.m} notation={notation} />
      </>
    );
  if (id === "height") return <HeightShown {...{ text, shot, point, notation, isKeptOut }} />;
  if (id === "place" && text === "" && shot.kind === "ground")
    return <span className="book-missing">not placed</span>;
  if (id === "reading" && text === "") return <span className="book-missing">not read</span>;
  if (id === "aside")
    return (
      <span className={`book-tick${shot.aside ? " book-ticked" : ""}`}>
        {shot.aside ? "✓" : ""}
        <span className="visually-hidden">
          {shot.aside ? "set aside" : isKeptOut ? "kept out" : "counts"}
        </span>
      </span>
    );
  return text;
}

function Reading({ m, notation }: { m: number; notation: Notation }) {
  const [reading, height] = understood(m, notation);
  return (
    <>
      {reading}
      {height === undefined ? null : <span className="book-understood">{`= ${height}`}</span>}
    </>
  );
}

function rowClass(state: RowState | null): string {
  if (state === null) return "";
  return state === "aside" ? "book-aside" : "book-idle";
}

/** The height with how sure it is, or why there is none. */
function HeightShown(
  props: Pick<CellProps, "shot" | "point" | "notation" | "isKeptOut"> & { readonly text: string },
) {
  const { text, shot, point, notation, isKeptOut } = props;
  const state = rowState(shot, point, isKeptOut);
  const sure = shortPlusMinus(point?.sigma, notation);
  if (state !== null) return <span className="book-missing">{stateWord[state]}</span>;
  return (
    <>
      {text}
      {text && sure ? <span className="book-sigma">{sure}</span> : null}
    </>
  );
}

function Asked({ question }: { question: string }) {
  return (
    <span className="book-question">
      ?<span className="visually-hidden">{` asked about: ${question} `}</span>
    </span>
  );
}

/** A reading is shown as it was understood; how it was typed, and what is asked of it, is a hover away. */
function titleOf(
  id: ColumnId,
  { shot, point, question }: ShotRowProps,
  isKeptOut: boolean,
): string | undefined {
  if (id === "reading" && shot.reading)
    return `typed as ${shot.reading.text}${question === null ? "" : `. ${question}`}`;
  const state = id === "height" ? rowState(shot, point, isKeptOut) : null;
  return state === null ? undefined : stateWords[state];
}
