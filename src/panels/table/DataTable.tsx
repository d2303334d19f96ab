/** A table that behaves as a spreadsheet: moved through, typed into, copied from and pasted into by keys. */
import { CellEditor } from "../levelbook/CellEditor";
import type { TableModel, TableRow } from "./model";
import { type Table, useTable } from "./useTable";
import "./table.css";

export function DataTable({ model }: { model: TableModel }) {
  const table = useTable(model);
  return (
    <div className="table-part">
      <label className="table-find">
        <span>Find</span>
        <input
          className="field-input field-wide"
          type="search"
          value={table.find}
          onChange={(event) => table.setFind(event.currentTarget.value)}
        />
        <span className="soft small">{`${table.rows.length} of ${model.rows.length}`}</span>
      </label>
      {model.rows.length === 0 ? <p className="soft">{model.none}</p> : <Grid table={table} />}
      <p className="table-said" role="status">
        {table.said}
      </p>
    </div>
  );
}

function Grid({ table }: { table: Table }) {
  const { model, rows, at, gridId, editing } = table;
  return (
    <div className="table-scroll">
      <table
        ref={table.table}
        className="data-table"
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are typed in is a grid
        role="grid"
        tabIndex={0}
        aria-label={model.title}
        aria-rowcount={rows.length + 1}
        aria-multiselectable="true"
        aria-activedescendant={rows.length > 0 && !editing ? `${gridId}-${at.row}-${at.column}` : undefined}
        onKeyDown={table.onKeyDown}
        onClick={table.onClick}
        onDoubleClick={() => table.edit(table.cell, true)}
        onCopy={(event) => {
          if (editing) return;
          event.preventDefault();
          event.clipboardData.setData("text/plain", table.copied());
        }}
        onPaste={(event) => {
          if (editing) return;
          event.preventDefault();
          table.paste(event.clipboardData.getData("text"));
        }}
      >
        <Heads table={table} />
        <tbody>
          {rows.map((row, index) => (
            <Row key={row.id} table={table} row={row} index={index} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Heads({ table: { model, sort, sortBy } }: { table: Table }) {
  return (
    <thead>
      <tr>
        {model.columns.map((head, index) => {
          const order = sort?.column === index ? (sort.down ? "descending" : "ascending") : undefined;
          return (
            <th key={head.id} scope="col" aria-sort={order} className={head.figure ? "figure" : undefined}>
              <button type="button" className="table-head" tabIndex={-1} onClick={() => sortBy(index)}>
                {head.title}
                <span aria-hidden="true">{order ? (order === "descending" ? " ↓" : " ↑") : ""}</span>
              </button>
            </th>
          );
        })}
      </tr>
    </thead>
  );
}

function Row({ table, row, index }: { table: Table; row: TableRow; index: number }) {
  const { model, at, chosen, gridId, editing } = table;
  return (
    <tr aria-rowindex={index + 2} aria-selected={index >= chosen[0] && index <= chosen[1]}>
      {model.columns.map((column, across) => {
        const here = index === at.row && across === at.column;
        return (
          <td
            key={column.id}
            id={`${gridId}-${index}-${across}`}
            data-row={index}
            data-column={across}
            className={`${column.figure ? "figure" : ""}${column.typed ? "" : " computed"}${here ? " here" : ""}`}
          >
            {here && editing ? (
              <CellEditor
                label={column.title}
                start={editing.start}
                selectAll={editing.selectAll}
                onTyping={table.onTyping}
                onDone={table.finish}
                onCancel={table.leave}
                onPasteBlock={table.paste}
              />
            ) : (
              row.cells[across]
            )}
          </td>
        );
      })}
    </tr>
  );
}
