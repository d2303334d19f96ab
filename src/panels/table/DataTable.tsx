/** A table that behaves as a spreadsheet: moved through, typed into, copied from and pasted into by keys. */
import { Button } from "react-aria-components";
import { Icon } from "../icons";
import { CellEditor } from "../levelbook/CellEditor";
import { keptKey } from "./kept";
import type { TableModel, TableRow } from "./model";
import { SortHead } from "./SortHead";
import { type Table, useTable } from "./useTable";
import "./table.css";

export function DataTable({ model }: { model: TableModel }) {
  const table = useTable(model);
  return (
    <div className="table-part">
      <label className="table-find">
        <span>Find</span>
        <input
          ref={table.findField}
          className="field-input field-wide"
          type="search"
          value={table.find}
          onChange={(event) => table.setFind(event.currentTarget.value)}
        />
        <span className="soft small">{`${table.seen} of ${model.rows.length}`}</span>
      </label>
      {model.rows.length === 0 ? <p className="soft">{model.none}</p> : null}
      {model.rows.length > 0 || model.add ? <Grid table={table} /> : null}
      <p className="table-said" role="status">
        {table.said || table.refusedHere?.why}
      </p>
      <RefusedLine table={table} />
    </div>
  );
}

function Grid({ table }: { table: Table }) {
  const { model, rows, at, gridId, editing } = table;
  return (
    <div className="table-scroll" onScroll={table.sight.onScroll}>
      <table
        ref={table.table}
        className={`data-table${table.isLong ? " data-long" : ""}`}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are typed in is a grid
        role="grid"
        tabIndex={0}
        aria-label={model.title}
        aria-rowcount={rows.length + 1}
        aria-multiselectable="true"
        aria-activedescendant={rows.length > 0 && !editing ? `${gridId}-${at.row}-${at.column}` : undefined}
        onKeyDown={table.onKeyDown}
        onMouseDown={table.onMouseDown}
        onMouseMove={table.onMouseMove}
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
        <Rows table={table} />
      </table>
    </div>
  );
}

/** Cells elsewhere in the table that hold what was refused. */
function RefusedLine({ table }: { table: Table }) {
  const { model, rows, refused, at } = table;
  if (refused.size === 0) return null;
  const cells = rows.flatMap((row, index) =>
    model.columns.flatMap((column, across) =>
      refused.has(keptKey({ row: row.id, column: column.id })) && (index !== at.row || across !== at.column)
        ? [{ row: index, column: across }]
        : [],
    ),
  );
  const [first] = cells;
  if (!first) return null;
  return (
    <p className="table-refused small">
      <Icon name="warn" />
      {cells.length === 1 ? "1 cell keeps" : `${cells.length} cells keep`} what was typed and isn’t in the
      plan.
      <Button className="link" onPress={() => table.go({ ...first, anchor: first.row, tabbedFrom: null })}>
        Mend it
      </Button>
    </p>
  );
}

function Heads({ table: { model, sort, sortBy } }: { table: Table }) {
  return (
    <thead>
      <tr>
        {model.columns.map((head, index) => (
          <SortHead
            key={head.id}
            title={head.title}
            column={index}
            sort={sort}
            className={head.figure ? "figure" : ""}
            onSort={sortBy}
          />
        ))}
      </tr>
    </thead>
  );
}

/** The rows; of a long table those in sight, between two empty ones as high as what is not drawn. */
function Rows({ table }: { table: Table }) {
  const { rows, sight, isLong, lineHeight } = table;
  const last = isLong ? Math.min(rows.length, sight.last) : rows.length;
  const first = isLong ? Math.min(sight.first, last) : 0;
  return (
    <tbody>
      {first > 0 ? <tr style={{ height: first * lineHeight }} /> : null}
      {rows.slice(first, last).map((row, index) => (
        <Row key={row.id} table={table} row={row} index={first + index} />
      ))}
      {last < rows.length ? <tr style={{ height: (rows.length - last) * lineHeight }} /> : null}
    </tbody>
  );
}

function Row({ table, row, index }: { table: Table; row: TableRow; index: number }) {
  const { model, at, chosen, gridId, editing } = table;
  const inRow = index >= chosen.rows[0] && index <= chosen.rows[1];
  return (
    <tr aria-rowindex={index + 2}>
      {model.columns.map((column, across) => {
        const here = index === at.row && across === at.column;
        const refused = table.refused.get(keptKey({ row: row.id, column: column.id }));
        return (
          // biome-ignore lint/a11y/useAriaPropsSupportedByRole: in a grid it is a cell that can be selected
          <td
            key={column.id}
            id={`${gridId}-${index}-${across}`}
            data-row={index}
            data-column={across}
            aria-selected={inRow && across >= chosen.columns[0] && across <= chosen.columns[1]}
            className={`${column.figure ? "figure" : ""}${column.typed ? "" : " computed"}${here ? " here" : ""}${refused ? " refused" : ""}`}
            aria-invalid={refused !== undefined}
            title={refused?.why}
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
              <>
                {refused ? <Icon name="warn" /> : null}
                {row.cells[across]}
                {refused ? (
                  <span className="visually-hidden">{`, not understood: ${refused.why}`}</span>
                ) : null}
              </>
            )}
          </td>
        );
      })}
    </tr>
  );
}
