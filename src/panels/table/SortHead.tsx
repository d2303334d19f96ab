import type { Sort } from "./order";
import "./table.css";

interface SortHeadProps {
  readonly title: string;
  readonly column: number;
  readonly sort: Sort | null;
  readonly className: string;
  readonly onSort: (column: number) => void;
}

/** A column's head; a press puts the rows in its order, for the eye only. */
export function SortHead({ title, column, sort, className, onSort }: SortHeadProps) {
  const order = sort?.column === column ? (sort.down ? "descending" : "ascending") : undefined;
  return (
    <th scope="col" aria-sort={order} className={className}>
      <button type="button" className="table-head" tabIndex={-1} onClick={() => onSort(column)}>
        {title}
        <span aria-hidden="true">{order ? (order === "descending" ? " ↓" : " ↑") : ""}</span>
      </button>
    </th>
  );
}
