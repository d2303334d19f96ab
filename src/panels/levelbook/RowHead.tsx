/** A row's head: its number as the book was read; a press chooses the whole row. */
export function RowHead({ row, number }: { readonly row: number; readonly number: number }) {
  return (
    <th scope="row" className="book-rowhead" data-head={row} aria-colindex={1} title="Choose the whole row">
      {number}
    </th>
  );
}
