/** The table drawn. What keys mean lies in `cursor.ts` and `useBook.ts`, what text means in `typing.ts`. */
import { type ReactNode, useEffect, useId, useMemo, useRef } from "react";
import type { Project } from "../../document";
import type { LevelledPoint, SetupResult } from "../../solve/results";
import type { Notation } from "../notation";
import { AskedLine, answerByKey } from "../survey/AskedLine";
import type { Question } from "../survey/asked";
import { useBookRequest } from "../survey/useBookRequest";
import { SortHead } from "../table/SortHead";
import { bookActs } from "./acts";
import { columnsOf } from "./block";
import { CellChoice, CellEditor } from "./CellEditor";
import { choiceOf, columnShare, columns, optionsOf } from "./columns";
import { chosenColumns, chosenRows, firstCursor, moved } from "./cursor";
import { draftKey } from "./drafts";
import { FindBar } from "./FindBar";
import { lineOfRow } from "./lines";
import { NewRow } from "./NewRow";
import { Refused } from "./Refused";
import { SetupLine } from "./SetupLine";
import { ShotRow } from "./ShotRow";
import { StatusLine } from "./StatusLine";
import { type Book, cellOf, lineHeightNow, useBook } from "./useBook";

export interface BookTableProps {
  /** The book was begun a moment ago: typing goes on in it. */
  readonly begun: boolean;
  readonly project: Project;
  readonly points: ReadonlyMap<string, LevelledPoint>;
  readonly setups: readonly SetupResult[];
  readonly notation: Notation;
  /** Readings that are asked about, in the order of the rows. */
  readonly questions: readonly Question[];
}

export function BookTable(props: BookTableProps) {
  const { project, notation, points } = props;
  const gridId = useId();
  const book = useBook(project, points, notation);
  const questions = useMemo(() => asSeen(props.questions, book.rows), [props.questions, book.rows]);
  const { at, column, shot, editing, drafts } = book;
  const begin = useRef(
    props.begun ? () => book.go({ ...firstCursor, row: book.shots.length, anchor: book.shots.length }) : null,
  );
  useEffect(() => {
    begin.current?.();
    begin.current = null;
  }, []);
  const isAsked = questions.length > 0;
  const keepInSight = useRef(() => {});
  keepInSight.current = () => book.sight.show(lineOfRow(book.lines, at.row));
  // biome-ignore lint/correctness/useExhaustiveDependencies: a question takes room from the table, a new row adds to it
  useEffect(() => {
    const frame = requestAnimationFrame(() => keepInSight.current());
    return () => cancelAnimationFrame(frame);
  }, [isAsked, book.shots.length]);
  useBookRequest(
    (id) => {
      const row = id === null ? book.shots.length : book.shots.findIndex((each) => each.id === id);
      const column = id === null ? firstCursor.column : readingColumn;
      if (row >= 0) book.go({ row, column, anchor: row, tabbedFrom: null });
    },
    () => book.table.current?.contains(document.activeElement) === true,
  );
  return (
    <>
      <div className="book-scroll" onScroll={book.sight.onScroll}>
        <table
          ref={book.table}
          className="book-table"
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are typed in is a grid
          role="grid"
          tabIndex={0}
          aria-label="Level book"
          aria-rowcount={book.shots.length + 2}
          aria-colcount={columns.length + 1}
          aria-multiselectable="true"
          aria-activedescendant={editing ? undefined : `${gridId}-${at.row}-${at.column}`}
          onKeyDown={(event) => {
            if (!editing && answerByKey(questions, at.row, event)) event.preventDefault();
            else book.onKeyDown(event);
          }}
          onMouseDown={book.onMouseDown}
          onMouseMove={book.onMouseMove}
          onClick={book.onClick}
          onDoubleClick={(event) => {
            if (cellOf(event)) book.edit(book.shown(), true);
          }}
          onPaste={(event) => {
            if (editing) return;
            event.preventDefault();
            book.paste(event.clipboardData.getData("text"));
          }}
          onCopy={(event) => {
            if (editing) return;
            event.preventDefault();
            event.clipboardData.setData(
              "text/plain",
              bookActs.copied(book.chosen(), columnsOf(at), notation),
            );
          }}
        >
          <Heads book={book} />
          <tbody>
            <Lines {...props} book={book} gridId={gridId} editor={<Editor book={book} project={project} />} />
          </tbody>
        </table>
      </div>
      {book.finding ? (
        <FindBar matches={book.matches} row={at.row} onGo={book.point} onClose={() => book.find(false)} />
      ) : null}
      <Refused
        shots={book.shots}
        drafts={drafts}
        but={draftKey(shot?.id ?? "", column)}
        onGo={(row, at) => {
          book.go({ row, column: at, anchor: row, tabbedFrom: null });
        }}
      />
      <AskedLine
        questions={questions}
        row={at.row}
        names={(row) => book.shots[row]?.name || `row ${row + 1}`}
        onGo={(row) => book.go({ row, column: readingColumn, anchor: row, tabbedFrom: null })}
      />
      <StatusLine
        shot={shot}
        column={columns[at.column]}
        typing={book.typing}
        draft={drafts.get(draftKey(shot?.id ?? "", column)) ?? null}
        notation={notation}
      />
    </>
  );
}

const readingColumn = columns.findIndex(({ id }) => id === "reading");

/** The questions with the rows as they are seen, in that order. */
function asSeen(questions: readonly Question[], rows: readonly number[]): readonly Question[] {
  if (rows.every((row, seen) => row === seen)) return questions;
  const seenAt = new Map(rows.map((row, seen) => [row, seen]));
  return questions
    .map((question) => ({ ...question, row: seenAt.get(question.row) ?? question.row }))
    .sort((a, b) => a.row - b.row);
}

function Heads({ book }: { book: Book }) {
  return (
    <>
      <colgroup>
        <col className="book-heads" />
        {columns.map((column) => (
          <col key={column.id} style={{ width: columnShare(column) }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th scope="col" className="book-rowhead" aria-colindex={1}>
            <span className="visually-hidden">row</span>
          </th>
          {columns.map(({ id, title }, index) => (
            <SortHead
              key={id}
              title={title}
              column={index}
              sort={book.order}
              className={`book-${id}`}
              onSort={book.sortBy}
            />
          ))}
        </tr>
      </thead>
    </>
  );
}

interface LinesProps extends BookTableProps {
  readonly book: Book;
  readonly gridId: string;
  readonly editor: ReactNode;
}

/** The lines in sight, between two empty rows as high as what is not drawn. */
function Lines({ book, gridId, editor, project, points, setups, notation, questions }: LinesProps) {
  const asked = useMemo(() => new Map(questions.map(({ shot, words }) => [shot, words])), [questions]);
  const { at, lines, shots, editing } = book;
  const lineHeight = lineHeightNow();
  const { first } = book.sight;
  const last = Math.min(lines.length, book.sight.last);
  const [chosenFirst, chosenLast] = chosenRows(at);
  const [leftmost, rightmost] = chosenColumns(at);
  return (
    <>
      {first > 0 ? <tr style={{ height: first * lineHeight }} /> : null}
      {lines.slice(first, last).map((line) => {
        if (line.kind === "setup") {
          const setup = project.survey.setups.find(({ id }) => id === line.setup);
          const result = setups.find(({ id }) => id === line.setup);
          return (
            <SetupLine
              key={`setup ${line.before}`}
              name={setup?.name ?? "no set-up"}
              result={result}
              notation={notation}
            />
          );
        }
        const here = line.row === at.row;
        const shared = {
          row: line.row,
          gridId,
          cursor: here ? at.column : -1,
          editor: here && editing ? editor : null,
        };
        const shot = shots[line.row];
        if (!shot) return <NewRow key="new" {...shared} />;
        const chosen = line.row >= chosenFirst && line.row <= chosenLast;
        return (
          <ShotRow
            key={shot.id}
            {...shared}
            shot={shot}
            point={points.get(shot.id)}
            project={project}
            notation={notation}
            drafts={book.drafts}
            question={asked.get(shot.id) ?? null}
            number={book.rowAt(line.row) + 1}
            chosen={chosen}
            isBlock={chosen && (chosenFirst !== chosenLast || leftmost !== rightmost)}
            isWhole={chosen && at.wholeTo !== undefined}
            leftmost={leftmost}
            rightmost={rightmost}
          />
        );
      })}
      {last < lines.length ? <tr style={{ height: (lines.length - last) * lineHeight }} /> : null}
    </>
  );
}

function Editor({ book, project }: { book: Book; project: Project }) {
  const { at, column, shot, editing, shots } = book;
  const title = columns[at.column]?.title ?? "";
  if (!editing) return null;
  if (columns[at.column]?.entry === "choice" && shot)
    return (
      <CellChoice
        label={title}
        value={choiceOf(column, shot)}
        options={optionsOf(column, shot, project)}
        onChoose={(value) => {
          bookActs.choose(book.rowAt(at.row), column, value);
          book.stop();
        }}
        onDone={(event) => {
          const extent = { rows: shots.length + 1, columns: columns.length, page: 1 };
          const next = event ? moved(at, event, extent) : null;
          if (next) book.go(next);
          else book.stop(event !== null);
        }}
      />
    );
  return (
    <CellEditor
      key={`${at.row} ${at.column}`}
      label={title}
      start={editing.start}
      selectAll={editing.selectAll}
      onTyping={book.setTyping}
      onDone={book.finish}
      onCancel={book.stop}
      onPasteBlock={book.paste}
    />
  );
}
