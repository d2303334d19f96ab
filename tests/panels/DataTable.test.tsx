import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { newProject, present, undoLabel, usualKeepClear } from "../../src/document";
import { notationOf } from "../../src/panels/notation";
import { DataTable } from "../../src/panels/table/DataTable";
import { clearKept } from "../../src/panels/table/kept";
import type { TableModel } from "../../src/panels/table/model";
import { tableOf } from "../../src/panels/table/tables";
import { showProject, undoEdit } from "../../src/store/actions";
import { appStore, shownProject } from "../../src/store/store";
import { useApp } from "../../src/store/useApp";

afterEach(() => {
  cleanup();
  clearKept();
});

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

describe("a block of cells", () => {
  const picked = () => grid().querySelectorAll('td[aria-selected="true"]').length;
  const cell = (row: number, column: number) =>
    grid().querySelector(`[data-row="${row}"][data-column="${column}"]`) as HTMLElement;

  it("is chosen by Shift and arrows, and copied as it is", () => {
    render(<DataTable model={stakes(10)} />);
    fireEvent.click(cell(2, 0));
    fireEvent.keyDown(grid(), { key: "ArrowDown", shiftKey: true });
    fireEvent.keyDown(grid(), { key: "ArrowRight", shiftKey: true });
    expect(picked()).toBe(4);
    const clipboardData = { setData: vi.fn() };
    fireEvent.copy(grid(), { clipboardData });
    expect(clipboardData.setData).toHaveBeenCalledWith("text/plain", "stake 2\t0.08 m\nstake 3\t0.07 m");
    fireEvent.keyDown(grid(), { key: "ArrowUp" });
    expect(picked()).toBe(1);
  });

  it("is chosen by a drag and by Shift and a press", () => {
    render(<DataTable model={stakes(10)} />);
    fireEvent.mouseDown(cell(1, 0), { button: 0, buttons: 1 });
    fireEvent.mouseMove(cell(4, 1), { buttons: 1 });
    expect(picked()).toBe(8);
    fireEvent.click(cell(0, 0));
    expect(picked()).toBe(1);
    fireEvent.click(cell(2, 1), { shiftKey: true });
    expect(picked()).toBe(6);
  });
});

describe("a block in another order of the rows", () => {
  const marked = () =>
    [...grid().querySelectorAll('td[data-column="0"][aria-selected="true"]')].map((cell) => cell.textContent);
  const cell = (row: number) => grid().querySelector(`[data-row="${row}"][data-column="0"]`) as HTMLElement;

  it("stays with its rows when a head is pressed", () => {
    render(<DataTable model={stakes(10)} />);
    fireEvent.click(cell(1));
    fireEvent.click(cell(3), { shiftKey: true });
    fireEvent.click(screen.getByRole("button", { name: "height" }));
    expect(cell(0).textContent).toBe("stake 9");
    expect(marked()).toEqual(["stake 3", "stake 2", "stake 1"]);
  });

  it("is dropped to the cursor's row when what is searched for hides a part of it", () => {
    render(<DataTable model={stakes(10)} />);
    fireEvent.click(cell(1));
    fireEvent.click(cell(3), { shiftKey: true });
    fireEvent.change(screen.getByRole("searchbox", { name: /Find/ }), { target: { value: "stake 3" } });
    expect(marked()).toEqual(["stake 3"]);
  });
});

/** The plan's own table, as its window shows it. */
function Features() {
  const project = useApp(shownProject);
  return (
    <DataTable
      model={tableOf("features", project, appStore.getState().results, notationOf(project.display))}
    />
  );
}

describe("rows typed and pasted below the last", () => {
  const features = () => present(appStore.getState().history).lot.features.map(({ name }) => name);
  const table = () => screen.getByRole("grid", { name: "Features of the lot" });

  it("tell how many were taken; without a distance they keep the usual one", () => {
    showProject(newProject(), { name: null, token: null });
    render(<Features />);
    const three = "oak\ttree\t10'\t1'\t1'\nelm\ttree\t\t\t\nspring\twell\t\t9'\t9'\n";
    fireEvent.paste(table(), { clipboardData: { getData: () => three } });
    expect(undoLabel(appStore.getState().history)).toBe("paste 2 rows");
    const [, well] = present(appStore.getState().history).lot.features;
    expect(well?.keepClear).toBe(usualKeepClear({ kind: "well", trunk: null })?.m);
    expect(well?.keepClear).toBeGreaterThan(0);
  });

  it("are added, and gone again with one undo", () => {
    showProject(newProject(), { name: null, token: null });
    render(<Features />);
    const rows = "oak\ttree\t10'\t5'\t7'\nspring\twell\t\t20'\t30'\n";
    fireEvent.paste(table(), { clipboardData: { getData: () => rows } });
    expect(features()).toEqual(["oak", "spring"]);
    expect(screen.getAllByRole("row")).toHaveLength(4);
    act(undoEdit);
    expect(features()).toEqual([]);
    fireEvent.paste(table(), { clipboardData: { getData: () => "elm\ttree" } });
    expect(screen.getByText("elm")).toBeTruthy();
    expect(screen.getByRole("status").textContent).toContain("“elm” isn't added yet");
  });
});

describe("a cell that is refused", () => {
  const table = () => screen.getByRole("grid", { name: "Features of the lot" });
  const cell = (row: number, column: number) =>
    table().querySelector(`[data-row="${row}"][data-column="${column}"]`) as HTMLElement;
  const clear = () => present(appStore.getState().history).lot.features.map(({ keepClear }) => keepClear);
  const paste = (text: string) => fireEvent.paste(table(), { clipboardData: { getData: () => text } });

  function withTwo(): void {
    showProject(newProject(), { name: null, token: null });
    render(<Features />);
    paste("oak\ttree\t3 m\t5 m\t7 m\nelm\ttree\t4 m\t6 m\t8 m\n");
    fireEvent.click(cell(0, 2));
    fireEvent.keyDown(table(), { key: "ArrowDown", shiftKey: true });
    paste("far");
  }

  it("keeps what was typed, says why, and leaves the plan as it was", () => {
    withTwo();
    expect([cell(0, 2), cell(1, 2)].map((each) => each.textContent)).toEqual([
      expect.stringMatching(/^far, not understood: /),
      expect.stringMatching(/^far, not understood: /),
    ]);
    expect(cell(1, 2).getAttribute("aria-invalid")).toBe("true");
    expect(clear()).toEqual([3, 4]);
    expect(screen.getByRole("status").textContent).toContain("2 cells not understood");
  });

  it("is still there when the table is opened again, and the way to it", () => {
    withTwo();
    cleanup();
    render(<Features />);
    expect(screen.getByText(/2 cells keep what was typed/)).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Mend it" }));
    expect(cell(0, 2).className).toContain("here");
    expect(screen.getByRole("status").textContent).toContain("far");
  });

  it("is mended by typing, or taken back by Esc and Delete", () => {
    withTwo();
    fireEvent.click(cell(0, 2));
    fireEvent.keyDown(table(), { key: "Escape" });
    expect(cell(0, 2).getAttribute("aria-invalid")).toBe("false");
    fireEvent.click(cell(1, 2));
    fireEvent.keyDown(table(), { key: "F2" });
    expect((screen.getByRole("textbox", { name: "keep clear" }) as HTMLInputElement).value).toBe("far");
    fireEvent.keyDown(screen.getByRole("textbox", { name: "keep clear" }), { key: "Escape" });
    paste("5 m");
    expect(clear()).toEqual([3, 5]);
    expect(cell(1, 2).getAttribute("aria-invalid")).toBe("false");
    paste("near");
    fireEvent.keyDown(table(), { key: "Delete" });
    expect(clear()).toEqual([3, 5]);
    expect(cell(1, 2).getAttribute("aria-invalid")).toBe("false");
  });

  it("goes with its plan", () => {
    withTwo();
    act(clearKept);
    expect(cell(0, 2).getAttribute("aria-invalid")).toBe("false");
  });
});

it("a row that is begun is still there when the table is opened again", () => {
  showProject(newProject(), { name: null, token: null });
  render(<Features />);
  const table = () => screen.getByRole("grid", { name: "Features of the lot" });
  fireEvent.paste(table(), { clipboardData: { getData: () => "elm\ttree" } });
  cleanup();
  render(<Features />);
  expect(screen.getByText("elm")).toBeTruthy();
  fireEvent.click(table().querySelector('[data-row="0"][data-column="3"]') as HTMLElement);
  fireEvent.paste(table(), { clipboardData: { getData: () => "5 m\t7 m" } });
  expect(present(appStore.getState().history).lot.features.map(({ name }) => name)).toEqual(["elm"]);
});
