import type { ReactNode } from "react";
import { columns } from "./columns";
import { RowHead } from "./RowHead";

export interface NewRowProps {
  readonly row: number;
  readonly gridId: string;
  /** Column of the cursor, -1 where it stands elsewhere. */
  readonly cursor: number;
  readonly editor: ReactNode;
}

/** The row at the end that isn't a shot yet: typing in it makes one. */
export function NewRow({ row, gridId, cursor, editor }: NewRowProps) {
  return (
    <tr className="book-row book-new" aria-rowindex={row + 2}>
      <RowHead row={row} number={row + 1} />
      {columns.map(({ id }, index) => (
        <td
          key={id}
          id={`${gridId}-${row}-${index}`}
          data-row={row}
          data-column={index}
          className={`book-cell book-${id}${index === cursor ? " book-here" : ""}`}
          aria-colindex={index + 2}
        >
          {index === cursor && editor ? (
            editor
          ) : id === "name" ? (
            <span className="book-missing">next shot</span>
          ) : null}
        </td>
      ))}
    </tr>
  );
}
