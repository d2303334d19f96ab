import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { DataTable } from "../../src/panels/table/DataTable";
import type { TableModel } from "../../src/panels/table/model";

afterEach(cleanup);

const stakes = (count: number): TableModel => ({
  title: "Stakes",
  none: "None.",
  columns: [
    { id: "name", title: "name", typed: false },
    { id: "height", title: "height", typed: false, figure: true },
  ],
  rows: Array.from({ length: count }, (_, i) => ({
    id: String(i),
    cells: [`stake ${i}`, `${(count - i) / 100} m`],
  })),
  write: () => ({ ok: false, why: "This is computed, not typed." }),
});
const drawn = () => screen.getAllByRole("row").length;
const grid = () => screen.getByRole("grid", { name: "Stakes" });

describe("a long table", () => {
  it("draws only the rows in sight, wherever the cursor goes, and tells how many there are", () => {
    render(<DataTable model={stakes(10_000)} />);
    expect(drawn()).toBeLessThan(60);
    expect(grid().getAttribute("aria-rowcount")).toBe("10001");
    grid().focus();
    fireEvent.keyDown(grid(), { key: "PageDown" });
    expect(grid().getAttribute("aria-activedescendant")).toMatch(/-1\d-0$/);
  });

  it("is put in order by size, and searched, over all its rows", () => {
    render(<DataTable model={stakes(10_000)} />);
    fireEvent.click(screen.getByRole("button", { name: "height" }));
    expect(screen.getByText("stake 9999")).toBeTruthy();
    fireEvent.keyDown(grid(), { key: "f", ctrlKey: true });
    fireEvent.change(screen.getByRole("searchbox", { name: /Find/ }), { target: { value: "stake 777" } });
    expect(screen.getByText("11 of 10000")).toBeTruthy();
  });

  it("a short one shows every row", () => {
    render(<DataTable model={stakes(100)} />);
    expect(drawn()).toBe(101);
  });
});
