import { memo, type ReactNode } from "react";
import type { Project, Shot } from "../../document";
import type { LevelledPoint } from "../../solve/results";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { type ColumnId, cellText, columns } from "./columns";
import { type Draft, draftKey } from "./drafts";
import { understood } from "./understood";

export interface ShotRowProps {
  readonly shot: Shot;
  readonly row: number;
  readonly project: Project;
  readonly point: LevelledPoint | undefined;
  readonly notation: Notation;
  readonly drafts: ReadonlyMap<string, Draft>;
  readonly gridId: string;
  /** Column of the cursor, -1 where it stands elsewhere. */
  readonly cursor: number;
  readonly chosen: boolean;
  readonly editor: ReactNode;
}

/** One shot. The cursor's cell gives way to the editor while it is being typed in. */
export const ShotRow = memo(function ShotRow(props: ShotRowProps) {
  const { shot, row, cursor, chosen, editor, gridId } = props;
  const classes = ["book-row", chosen ? "book-chosen" : "", shot.aside ? "book-aside" : ""]
    .filter(Boolean)
    .join(" ");
  return (
    <tr className={classes} aria-rowindex={row + 2} aria-selected={chosen}>
      {columns.map((column, index) => {
        const draft = props.drafts.get(draftKey(shot.id, column.id));
        const here = index === cursor;
        return (
          <td
            key={column.id}
            id={`${gridId}-${row}-${index}`}
            data-row={row}
            data-column={index}
            className={`book-cell book-${column.id}${here ? " book-here" : ""}${draft ? " book-bad" : ""}`}
            aria-colindex={index + 1}
            aria-invalid={draft !== undefined}
            title={draft?.why ?? typedAs(column.id, shot)}
          >
            {here && editor ? (
              editor
            ) : draft ? (
              <NotUnderstood draft={draft} />
            ) : (
              <CellShown id={column.id} {...props} />
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

function CellShown({ id, shot, project, notation, point }: ShotRowProps & { id: ColumnId }) {
  const text = cellText(id, shot, project, notation, point);
  if (id === "reading" && shot.reading) return <Reading m={shot.reading.m} notation={notation} />;
  if (id === "place" && text === "" && shot.kind === "ground")
    return <span className="book-missing">not placed</span>;
  if (id === "reading" && text === "") return <span className="book-missing">not read</span>;
  if (id === "aside")
    return (
      <span className={`book-tick${shot.aside ? " book-ticked" : ""}`}>
        {shot.aside ? "✓" : ""}
        <span className="visually-hidden">{shot.aside ? "set aside" : "counts"}</span>
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

/** A reading is shown as it was understood; how it was typed is a hover away. */
function typedAs(id: ColumnId, shot: Shot): string | undefined {
  return id === "reading" && shot.reading ? `typed as ${shot.reading.text}` : undefined;
}
