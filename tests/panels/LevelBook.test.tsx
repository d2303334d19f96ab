import { act, cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newProject, type Project, present, type Shot, surveyEdits } from "../../src/document";
import { optionsOf } from "../../src/panels/levelbook/columns";
import { clearDrafts } from "../../src/panels/levelbook/drafts";
import { LevelBook } from "../../src/panels/levelbook/LevelBook";
import { editCell } from "../../src/panels/levelbook/typing";
import { askBook } from "../../src/panels/survey/bookRequest";
import { select, showProject, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { demoProject } from "../support/demo";

const project = (): Project => present(appStore.getState().history);
const shots = () => project().survey.shots;
const grid = () => screen.getByRole("grid", { name: "Level book" });

/** The cell of the cursor, as a screen reader is told. */
function here(): HTMLElement {
  const id = grid().getAttribute("aria-activedescendant") ?? "";
  const cell = document.getElementById(id);
  if (!cell) throw new Error(`no cell ${id}`);
  return cell;
}

/** Presses a key where the focus is. */
function press(key: string, held: object = {}): void {
  fireEvent.keyDown(document.activeElement ?? document.body, { key, ...held });
}

/** Types a text as keys: the first opens the cell, the rest goes into its field. */
function type(text: string): void {
  press(text.charAt(0));
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement)) throw new Error("no field opened");
  fireEvent.change(field, { target: { value: text } });
}

function open(opened: Project): void {
  clearDrafts();
  showProject(opened, { name: null, token: null });
  render(<LevelBook />);
}

afterEach(cleanup);

describe("an empty level book", () => {
  beforeEach(() => open(newProject()));

  it("asks for a mark and its reading first, and opens with both", () => {
    fireEvent.change(screen.getByLabelText(/The mark/), { target: { value: "bolt" } });
    fireEvent.change(screen.getByLabelText(/Reading on it/), { target: { value: "62 5/8" } });
    expect(screen.getByText("= 62⅝″ = 5′ 2⅝″")).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Open the level book" }));
    expect(project().survey.marks[0]).toMatchObject({ name: "bolt", height: { text: "100'", m: 30.48 } });
    expect(shots()[0]).toMatchObject({ name: "bolt", kind: "mark", reading: { text: "62 5/8" } });
    expect(within(grid()).getByText("level")).toBeTruthy();
    undoEdit();
    expect(project().survey).toMatchObject({ marks: [], shots: [] });
  });

  it("keeps what was typed and says why it can't be read", () => {
    fireEvent.change(screen.getByLabelText(/Reading on it/), { target: { value: "sixty" } });
    fireEvent.click(screen.getByRole("button", { name: "Open the level book" }));
    expect(screen.getByRole("alert").textContent).toContain('"sixty"');
    expect(screen.getByLabelText(/Reading on it/)).toHaveProperty("value", "sixty");
    expect(shots()).toHaveLength(0);
  });
});

describe("typing in the level book", () => {
  beforeEach(() => {
    open(demoProject("pottery-studio"));
    grid().focus();
    press("Home", { ctrlKey: true });
    press("ArrowRight");
  });

  it("goes to the reading it is asked for at once: keys pressed as soon as a dialog is gone are typed there", () => {
    const fifth = shots()[4] as Shot;
    act(() => askBook(fifth.id));
    type("70");
    press("Enter");
    expect(shots()[4]?.reading?.text).toBe("70");
    expect(shots().filter(({ reading }) => reading?.text === "70")).toHaveLength(1);
  });

  it("shows a reading as understood, in its own notation and as a height", () => {
    press("ArrowRight");
    expect(here().textContent).toBe("40⅜″= 3′ 4⅜″");
    expect(here().title).toBe('typed as 40 3/8"');
  });

  it("types over a cell, keeps it by Enter and goes down", () => {
    press("ArrowRight");
    type("41");
    expect(screen.getByText("understood as 41″ = 3′ 5″")).toBeTruthy();
    press("Enter");
    expect(shots()[0]?.reading).toEqual({ text: "41", m: 1.0414 });
    expect(here().dataset).toMatchObject({ row: "1", column: "2" });
    undoEdit();
    expect(shots()[0]?.reading?.text).toBe('40 3/8"');
  });

  it("Esc takes the typing back", () => {
    type("nonsense");
    press("Escape");
    expect(shots()[0]?.name).toBe("bolt");
    expect(document.activeElement).toBe(grid());
  });

  it("a bad reading stays in its cell with its message, and is mended there", () => {
    press("ArrowRight");
    const before = shots()[0]?.reading;
    type("40 3/");
    press("Enter");
    expect(screen.getByText("bolt, reading:").closest("p")?.textContent).toContain('but not "/"');
    fireEvent.click(screen.getByRole("button", { name: "Mend it" }));
    expect(here().dataset).toMatchObject({ row: "0", column: "2" });
    expect(screen.queryByRole("button", { name: "Mend it" })).toBeNull();
    expect(here().firstElementChild?.nextSibling?.textContent).toBe("40 3/");
    expect(here().getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByRole("alert").textContent).toContain('but not "/"');
    expect(shots()[0]?.reading).toEqual(before);
    press("F2");
    expect(document.activeElement).toHaveProperty("value", "40 3/");
    fireEvent.change(document.activeElement as Element, { target: { value: "40 3/4" } });
    press("Enter");
    press("ArrowUp");
    expect(here().getAttribute("aria-invalid")).toBe("false");
    expect(shots()[0]?.reading?.text).toBe("40 3/4");
  });

  it("Enter at the end adds a row, which joins the last set-up", () => {
    const count = shots().length;
    press("ArrowDown", { ctrlKey: true });
    expect(here().textContent).toBe("next shot");
    type("by the gate");
    press("Tab");
    type("66");
    press("Enter");
    expect(shots()).toHaveLength(count + 1);
    expect(shots().at(-1)).toMatchObject({ name: "by the gate", reading: { text: "66" }, setup: "u1" });
    expect(here().dataset).toMatchObject({ row: String(count + 1), column: "1" });
  });

  it("a bad reading in a new row makes the row and keeps the text", () => {
    const count = shots().length;
    press("ArrowDown", { ctrlKey: true });
    press("ArrowRight");
    type("oops");
    press("Enter");
    expect(shots()).toHaveLength(count + 1);
    expect(within(grid()).getByText("oops")).toBeTruthy();
  });

  it("Delete clears the chosen cells, Ctrl+Delete removes the rows", () => {
    const count = shots().length;
    press("End", { ctrlKey: true });
    press("ArrowUp");
    press("ArrowUp", { shiftKey: true });
    expect(appStore.getState().selection).toHaveLength(2);
    press("Home");
    press("ArrowRight");
    press("ArrowRight");
    press("Delete");
    expect(shots().at(-2)?.reading).toBeNull();
    expect(shots().at(-1)?.reading).not.toBeNull();
    press("Delete", { ctrlKey: true });
    expect(shots()).toHaveLength(count - 1);
  });

  it("a figure typed on a cell of choices goes to the reading, in the empty row too; a letter there says why not", () => {
    const count = shots().length;
    press("ArrowDown", { ctrlKey: true });
    press("ArrowRight");
    press("ArrowRight");
    press("k");
    expect(screen.getByText(/^Nothing was taken: this row is empty/)).toBeTruthy();
    type("64");
    press("Enter");
    expect(shots()).toHaveLength(count + 1);
    expect(shots().at(-1)?.reading?.text).toBe("64");
  });

  it("a letter picks a kind; Space sets a shot aside", () => {
    press("ArrowDown");
    press("ArrowRight");
    press("ArrowRight");
    press("c");
    expect(shots()[1]).toMatchObject({ kind: "check", of: "m1" });
    press("End");
    press(" ");
    expect(shots()[1]?.aside).toBe(true);
  });

  it("sets a shot aside only by Space or a click on its box, says so, and can be undone", () => {
    press("ArrowDown");
    press("End");
    press("x");
    press("5");
    fireEvent.click(here());
    expect(shots()[1]?.aside).toBe(false);
    press(" ");
    expect(screen.getByText("corner A is set aside: it counts in nothing.")).toBeTruthy();
    expect(appStore.getState().history.steps.at(-1)?.label).toBe("set shot aside");
    const box = here().querySelector(".book-tick");
    if (!box) throw new Error("no box");
    fireEvent.click(box);
    expect(shots()[1]?.aside).toBe(false);
    expect(screen.getByText("corner A counts again.")).toBeTruthy();
    act(undoEdit);
    expect(shots()[1]?.aside).toBe(true);
  });

  it("Enter after Tabs goes back to the column where the row was begun, past a cell it can't read", () => {
    type("by the gate");
    press("Tab");
    type("oops");
    press("Tab");
    press("Tab");
    press("Tab");
    type("12', 3'");
    press("Enter");
    expect(here().dataset).toMatchObject({ row: "1", column: "1" });
  });

  it("pastes rows of a spreadsheet as one step to undo", () => {
    const before = shots();
    press("ArrowDown", { ctrlKey: true });
    fireEvent.paste(grid(), { clipboardData: { getData: () => "p1\t60\t1\t2\np2\tbad\t3\t4" } });
    expect(shots().slice(-2)).toMatchObject([
      { name: "p1", reading: { text: "60" }, place: { kind: "at" } },
      { name: "p2", reading: null, place: { kind: "at" } },
    ]);
    press("ArrowDown");
    expect(within(grid()).getByText("bad")).toBeTruthy();
    expect(appStore.getState().messages.at(-1)?.text).toContain("1 cell could not be read");
    undoEdit();
    expect(shots()).toEqual(before);
  });

  describe("a block of cells", () => {
    const cell = (row: number, column: string) =>
      grid().querySelector(`[data-row="${row}"].book-${column}`) as HTMLElement;
    const inBlock = () => grid().querySelectorAll('td[aria-selected="true"]').length;
    const paste = (text: string) => fireEvent.paste(grid(), { clipboardData: { getData: () => text } });
    const copied = () => {
      const clipboardData = { setData: vi.fn() };
      fireEvent.copy(grid(), { clipboardData });
      return String(clipboardData.setData.mock.calls[0]?.[1]);
    };

    it("is chosen over columns by a drag, by Shift and arrows, and by Shift and a press", () => {
      fireEvent.mouseDown(cell(1, "name"), { button: 0, buttons: 1 });
      fireEvent.mouseMove(cell(3, "reading"), { buttons: 1 });
      expect(inBlock()).toBe(6);
      fireEvent.click(cell(0, "name"));
      expect(inBlock()).toBe(0);
      press("ArrowRight", { shiftKey: true });
      press("ArrowDown", { shiftKey: true });
      expect(inBlock()).toBe(4);
      fireEvent.click(cell(2, "kind"), { shiftKey: true });
      expect(inBlock()).toBe(9);
    });

    it("is one of cells in a single column too: painted, copied, filled down and emptied alone", () => {
      const before = shots();
      fireEvent.click(cell(1, "reading"));
      press("ArrowDown", { shiftKey: true });
      press("ArrowDown", { shiftKey: true });
      const painted = [...grid().querySelectorAll(".book-in-block")];
      expect(painted).toEqual([1, 2, 3].map((row) => cell(row, "reading")));
      expect(inBlock()).toBe(3);
      expect(grid().querySelectorAll(".book-chosen")).toHaveLength(0);
      expect(copied().split("\n")).toEqual(before.slice(1, 4).map(({ reading }) => reading?.text));
      press("d", { ctrlKey: true });
      expect(shots().map(({ reading }) => reading?.text)).toEqual(
        before.map(({ reading }, row) => (row === 2 || row === 3 ? before[1]?.reading : reading)?.text),
      );
      undoEdit();
      press("Delete");
      expect(shots().slice(1, 4)).toEqual(before.slice(1, 4).map((shot) => ({ ...shot, reading: null })));
      undoEdit();
      expect(shots()).toEqual(before);
    });

    it("of one column that was copied here falls on another column, row by row", () => {
      const before = shots();
      fireEvent.click(cell(1, "name"));
      fireEvent.click(cell(2, "name"), { shiftKey: true });
      const text = copied();
      fireEvent.click(cell(4, "note"));
      paste(text);
      expect(shots().map(({ note }) => note)).toEqual(
        before.map(({ note }, row) => (row === 4 || row === 5 ? before[row - 3]?.name : note)),
      );
      expect(shots().map(({ name }) => name)).toEqual(before.map(({ name }) => name));
    });

    const heads = () => [...grid().querySelectorAll<HTMLElement>("[data-head]")];
    const wholeRows = () =>
      [...grid().querySelectorAll(".book-chosen")].map(
        (row) => Number(row.getAttribute("aria-rowindex")) - 2,
      );

    it("is whole rows by Shift+Space, and by a press or a drag on the rows' heads", () => {
      fireEvent.click(cell(2, "reading"));
      expect(wholeRows()).toEqual([]);
      press(" ", { shiftKey: true });
      expect(wholeRows()).toEqual([2]);
      press("ArrowDown", { shiftKey: true });
      expect(wholeRows()).toEqual([2, 3]);
      expect(here()).toBe(cell(3, "reading"));
      const [, second, third, fourth] = heads();
      fireEvent.click(second as HTMLElement);
      expect(wholeRows()).toEqual([1]);
      fireEvent.click(third as HTMLElement, { shiftKey: true });
      expect(wholeRows()).toEqual([1, 2]);
      fireEvent.mouseDown(second as HTMLElement, { button: 0, buttons: 1 });
      fireEvent.mouseMove(fourth as HTMLElement, { buttons: 1 });
      expect(wholeRows()).toEqual([1, 2, 3]);
      fireEvent.click(cell(2, "name"));
      expect(wholeRows()).toEqual([]);
    });

    it("of whole rows is copied with all its columns, and falls on whole rows from any of their cells", () => {
      const before = shots();
      fireEvent.click(cell(1, "reading"));
      press(" ", { shiftKey: true });
      const text = copied();
      expect(text.split("\t")).toHaveLength(9);
      fireEvent.click(cell(4, "reading"));
      press(" ", { shiftKey: true });
      paste(text);
      expect(shots()[4]).toEqual({ ...before[1], id: before[4]?.id });
      undoEdit();
      fireEvent.click(cell(4, "note"));
      paste(text);
      expect(shots()[4]).toEqual({ ...before[1], id: before[4]?.id });
      undoEdit();
      expect(shots()).toEqual(before);
    });

    it("is copied as it is seen, and pasted cell upon cell where the cursor stands", () => {
      fireEvent.click(cell(1, "reading"));
      fireEvent.click(cell(2, "note"), { shiftKey: true });
      const text = copied();
      expect(text.split("\n").map((line) => line.split("\t").length)).toEqual([6, 6]);
      const before = shots();
      fireEvent.click(cell(4, "reading"));
      paste(text);
      expect(shots()[4]).toMatchObject({
        name: before[4]?.name,
        reading: { text: before[1]?.reading?.text },
        kind: before[1]?.kind,
        note: before[1]?.note,
      });
      expect(shots()[5]?.reading?.text).toBe(before[2]?.reading?.text);
      undoEdit();
      expect(shots()).toEqual(before);
    });

    it("of east and north falls on the place it is pasted on, not on name and reading", () => {
      const before = shots();
      for (const text of ["30', 50'", "30'\t50'", "30'; 50'"]) {
        fireEvent.click(cell(2, "place"));
        paste(text);
        const place = shots()[2]?.place;
        expect(place).toMatchObject({ kind: "at" });
        if (place?.kind !== "at") throw new Error("no place");
        expect([place.x / 0.3048, place.y / 0.3048]).toEqual([expect.closeTo(30, 9), expect.closeTo(50, 9)]);
        expect(shots()[2]).toEqual({ ...before[2], place });
        undoEdit();
      }
      fireEvent.click(cell(2, "place"));
      paste("east\tnorth\n11'\t12'\n61'\t13'");
      expect(shots().slice(2, 4)).toMatchObject([
        { name: before[2]?.name, reading: before[2]?.reading, place: { kind: "at" } },
        { name: before[3]?.name, reading: before[3]?.reading, place: { kind: "at" } },
      ]);
      undoEdit();
      expect(shots()).toEqual(before);
    });

    it("of one place that was copied here goes on the next place", () => {
      const placed = shots().findIndex(({ place }) => place.kind === "at");
      fireEvent.click(cell(placed, "place"));
      const text = copied();
      fireEvent.click(cell(4, "place"));
      const before = shots()[4];
      paste(text);
      expect(shots()[4]).toMatchObject({
        name: before?.name,
        reading: before?.reading,
        place: { kind: "at" },
      });
    });

    it("laid out as the book's own columns brings kind and place too", () => {
      press("ArrowDown", { ctrlKey: true });
      fireEvent.click(cell(shots().length, "name"));
      paste("extra 1\t4.21\tground\t\t30', 50'\nextra 2\t4.22\tcheck\t\t30', 52'");
      expect(shots().slice(-2)).toMatchObject([
        { name: "extra 1", reading: { text: "4.21" }, kind: "ground", place: { kind: "at" } },
        { name: "extra 2", reading: { text: "4.22" }, kind: "check", place: { kind: "at" } },
      ]);
    });

    it("of name, reading and place in one cell brings the place", () => {
      fireEvent.click(cell(shots().length, "name"));
      paste("extra 1\t4.21\t30', 50'\nextra 2\t4.22\tA");
      expect(shots().slice(-2)).toMatchObject([{ place: { kind: "at" } }, { place: { kind: "corner" } }]);
    });

    it.each(["kind", "of", "place", "height", "note"])(
      "of four columns is refused in words on %s, and nothing changes",
      (column) => {
        const before = shots();
        fireEvent.click(cell(2, column));
        paste("a\t1\t2\t3\nb\t4\t5\t6");
        expect(shots()).toEqual(before);
        expect(appStore.getState().messages.at(-1)?.text).toContain("Nothing was pasted");
      },
    );

    it("of kinds alone falls on the kinds", () => {
      fireEvent.click(cell(2, "kind"));
      paste("check\nground");
      expect(shots().slice(2, 4)).toMatchObject([{ kind: "check" }, { kind: "ground" }]);
    });

    it("takes a single text in each of its cells; refused ones keep it, with the reason", () => {
      const before = shots();
      fireEvent.click(cell(1, "name"));
      fireEvent.click(cell(2, "reading"), { shiftKey: true });
      paste("66");
      expect(shots().slice(1, 3)).toMatchObject([
        { name: "66", reading: { text: "66" } },
        { name: "66", reading: { text: "66" } },
      ]);
      undoEdit();
      expect(shots()).toEqual(before);
      paste("east bank");
      expect(shots()[1]?.reading).toEqual(before[1]?.reading);
      expect(cell(1, "reading").textContent).toMatch(/^east bank, not understood: /);
      expect(appStore.getState().messages.at(-1)?.text).toContain("2 cells could not be read");
    });

    it("is filled down and emptied in all its columns, each one step to undo", () => {
      const before = shots();
      fireEvent.click(cell(1, "name"));
      fireEvent.click(cell(3, "reading"), { shiftKey: true });
      press("d", { ctrlKey: true });
      for (const shot of shots().slice(2, 4))
        expect(shot).toMatchObject({ name: before[1]?.name, reading: { text: before[1]?.reading?.text } });
      undoEdit();
      expect(shots()).toEqual(before);
      press("Delete");
      expect(shots().slice(1, 4)).toMatchObject([1, 2, 3].map(() => ({ name: "", reading: null })));
      undoEdit();
      expect(shots()).toEqual(before);
    });
  });

  it("selects on the plan what the cursor stands on, and follows the plan's selection", () => {
    press("ArrowDown");
    expect(appStore.getState().selection).toEqual([{ kind: "shot", id: shots()[1]?.id }]);
    const fifth = shots()[4]?.id ?? "";
    act(() => select([{ kind: "shot", id: fifth }]));
    expect(here().dataset.row).toBe("4");
  });

  it("tells each set-up's beam and how it got its height", () => {
    expect(within(grid()).getByText("beam at 103′ 4⅜″, reading on capped bolt")).toBeTruthy();
  });
});

it("a tie that contradicts the others says in its row that it is kept out", () => {
  const joinery = demoProject("joinery-shed");
  const setup = joinery.survey.setups.at(-1)?.id;
  const mark = joinery.survey.marks[0]?.id;
  if (!setup || !mark) throw new Error("the demo has no set-ups");
  const added = surveyEdits.addShot.run(joinery, {
    name: "close",
    setup,
    kind: "mark",
    of: mark,
    reading: "1.250 m",
  });
  if (!added.ok) throw new Error(added.why);
  open(added.project);
  grid().focus();
  press("Home", { ctrlKey: true });
  press("ArrowDown", { ctrlKey: true });
  press("ArrowUp");
  const row = here().closest("tr");
  expect(row?.textContent).toContain("close");
  expect(row?.querySelector(".book-height")?.textContent).toBe("kept out");
});

describe("a level book of thousands of rows", () => {
  it("draws only those in sight", () => {
    const studio = demoProject("pottery-studio");
    const [, one] = studio.survey.shots;
    if (!one) throw new Error("the studio has no shots");
    const many = Array.from({ length: 5000 }, (_, i) => ({
      ...one,
      id: `s${i + 100}`,
      name: `p${i}`,
      place: { kind: "at" as const, x: i % 70, y: Math.floor(i / 70) },
    }));
    open({ ...studio, survey: { ...studio.survey, shots: many } });
    expect(grid().getAttribute("aria-rowcount")).toBe("5002");
    expect(within(grid()).getAllByRole("row").length).toBeLessThan(60);
  });
});

describe("the level book as a spreadsheet", () => {
  beforeEach(() => {
    open(demoProject("pottery-studio"));
    grid().focus();
    press("Home", { ctrlKey: true });
    press("ArrowRight");
  });

  const names = () => [...grid().querySelectorAll(".book-row > .book-name")].map((cell) => cell.textContent);
  const sortBy = (head: string) => fireEvent.click(within(grid()).getByRole("button", { name: head }));

  it("Ctrl+D fills the first of the chosen rows down, one step to undo", () => {
    const before = shots().map(({ note }) => note);
    press("End");
    press("ArrowLeft");
    press("ArrowDown");
    type("wet clay");
    press("Enter");
    press("ArrowUp");
    press("ArrowDown", { shiftKey: true });
    press("ArrowDown", { shiftKey: true });
    press("d", { ctrlKey: true });
    expect(shots().map(({ note }) => note)).toEqual(
      before.map((note, row) => (row >= 1 && row <= 3 ? "wet clay" : note)),
    );
    undoEdit();
    expect(shots().map(({ note }) => note)).toEqual(
      before.map((note, row) => (row === 1 ? "wet clay" : note)),
    );
  });

  it("Ctrl+D with one row takes the reading of the row above", () => {
    press("ArrowRight");
    press("ArrowDown");
    press("d", { ctrlKey: true });
    expect(shots()[1]?.reading).toEqual(shots()[0]?.reading);
    expect(shots()[2]?.reading).not.toEqual(shots()[0]?.reading);
  });

  it("a press on a head sorts what is seen; the book keeps its order, and typing goes to the row seen", () => {
    const asRead = shots().map(({ id }) => id);
    sortBy("reading");
    const least = [...shots()]
      .filter((shot) => shot.reading)
      .sort((a, b) => (a.reading?.m ?? 0) - (b.reading?.m ?? 0))[0];
    expect(names()[0]).toBe(least?.name);
    expect(shots().map(({ id }) => id)).toEqual(asRead);
    press("Home", { ctrlKey: true });
    press("ArrowRight");
    type("lowest reading");
    press("Enter");
    expect(shots().find(({ id }) => id === least?.id)?.name).toBe("lowest reading");
    expect(shots().map(({ id }) => id)).toEqual(asRead);
    sortBy("reading");
    expect(names()[0]).not.toBe("lowest reading");
    sortBy("reading");
    expect(names()[0]).toBe(shots()[0]?.name);
  });

  const marked = () =>
    [...grid().querySelectorAll('.book-row[aria-selected="true"] > .book-name')].map(
      ({ textContent }) => textContent,
    );
  const selected = () => {
    const ids = appStore.getState().selection.flatMap((thing) => (thing.kind === "shot" ? thing.id : []));
    return shots().flatMap(({ id, name }) => (ids.includes(id) ? [name] : []));
  };

  it("a sort leaves no other rows marked than those selected; Ctrl+D fills what is marked", () => {
    press("ArrowRight");
    press("ArrowDown");
    press("ArrowDown", { shiftKey: true });
    press("ArrowDown", { shiftKey: true });
    const chosen = marked();
    expect(chosen).toHaveLength(3);
    expect(selected()).toEqual(chosen);
    sortBy("reading");
    expect(marked().every((name) => chosen.includes(name))).toBe(true);
    expect(new Set(marked())).toEqual(new Set(selected()));
    sortBy("reading");
    expect(new Set(marked())).toEqual(new Set(selected()));
    const [first] = marked();
    const before = shots().map(({ reading }) => reading?.text);
    press("d", { ctrlKey: true });
    const changed = shots().filter(({ reading }, row) => reading?.text !== before[row]);
    expect(first).toBeTruthy();
    for (const { name } of changed) expect(marked()).toContain(name);
  });

  it("rows removed, and pasted over, in another order are those that were seen", () => {
    sortBy("reading");
    const seen = names();
    press("Home", { ctrlKey: true });
    press("ArrowRight");
    fireEvent.paste(grid(), { clipboardData: { getData: () => "first\nsecond\n" } });
    expect(names().slice(0, 2)).toEqual(["first", "second"]);
    expect(shots().filter(({ name }) => name === seen[2])).not.toHaveLength(0);
    press("ArrowDown", { shiftKey: true });
    press("Delete", { ctrlKey: true });
    expect(shots().filter(({ name }) => name === "first" || name === "second")).toHaveLength(0);
    expect(names()[0]).toBe(seen[2]);
  });

  it("Ctrl+F finds words: Enter goes from row to row, Esc back to the table", () => {
    press("f", { ctrlKey: true });
    const field = document.activeElement as HTMLInputElement;
    fireEvent.change(field, { target: { value: shots()[4]?.name.toUpperCase() } });
    press("Enter");
    expect(here().closest("tr")?.querySelector(".book-name")?.textContent).toBe(shots()[4]?.name);
    expect(document.activeElement).toBe(field);
    fireEvent.change(field, { target: { value: "no such word" } });
    expect(screen.getByText("In no row.")).toBeTruthy();
    press("Escape");
    expect(document.activeElement).toBe(grid());
  });
});

describe("another set-up", () => {
  beforeEach(() => {
    vi.useFakeTimers();
    open(demoProject("pottery-studio"));
  });
  afterEach(() => void vi.useRealTimers());
  const begin = () => {
    fireEvent.click(screen.getByRole("button", { name: "Set-up" }));
    act(() => void vi.advanceTimersByTime(100));
  };

  it("is headed in the book, and typing goes on at the reading of its tie, then in its own rows", () => {
    const before = shots().length;
    begin();
    const setup = project().survey.setups.at(-1);
    expect([...grid().querySelectorAll(".book-setup b")].at(-1)?.textContent).toBe(setup?.name);
    type('30 1/8"');
    press("Enter");
    expect(shots()[before]).toMatchObject({ setup: setup?.id, kind: "mark", reading: { text: '30 1/8"' } });
    type('41"');
    press("Enter");
    expect(shots()[before + 1]).toMatchObject({ setup: setup?.id, kind: "ground" });
    expect(shots()).toHaveLength(before + 2);
  });

  it("may be tied by points that another set-up read: ground shots are offered, and the heading says so", () => {
    begin();
    const [before] = [shots().length - 1];
    const ground = shots().filter(({ kind, reading }) => kind === "ground" && reading !== null);
    const kind = (text: string) => editCell(project(), shots()[before] as Shot, "kind", text);
    const turned = kind("turning");
    if (!turned.ok) throw new Error(turned.why);
    const row = turned.project.survey.shots[before] as Shot;
    const offered = optionsOf("of", row, turned.project).map(({ value }) => value);
    expect(offered).toEqual(expect.arrayContaining(ground.map(({ id }) => id)));
    const tied = editCell(turned.project, row, "of", ground[0]?.name ?? "");
    if (!tied.ok) throw new Error(tied.why);
    act(() => showProject(tied.project, { name: null, token: null }));
    grid().focus();
    press("End", { ctrlKey: true });
    press("ArrowUp");
    press("Home");
    press("ArrowRight");
    press("ArrowRight");
    type('50"');
    press("Enter");
    expect(within(grid()).getByText(new RegExp(`shared point ${ground[0]?.name}`))).toBeTruthy();
  });
});
