/** A locked building can be read everywhere and typed over nowhere; what was taped of it is still taken down. */
import { cleanup, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, expect, it } from "vitest";
import { drawingEdits } from "../../src/document";
import { Inspector } from "../../src/panels/inspector/Inspector";
import { BuildingPanel } from "../../src/panels/steps/BuildingPanel";
import { run, select, showProject } from "../../src/store/actions";
import { demoProject } from "../support/demo";

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

const fields = () => screen.getAllByRole<HTMLInputElement>("textbox");
const open = () =>
  fields()
    .filter(({ readOnly }) => !readOnly)
    .map(({ placeholder, labels }) => placeholder || labels?.[0]?.textContent);

function locked(isLocked: boolean): void {
  run(drawingEdits.lockThings, { things: [{ kind: "building" }], locked: isLocked });
}

it("shows every figure of its step with the lock, but the tapes", () => {
  locked(true);
  render(<BuildingPanel />);
  expect(fields().length).toBeGreaterThan(15);
  expect([...new Set(open())]).toEqual(["taped"]);
  for (const field of fields().filter(({ readOnly }) => readOnly))
    expect(field.parentElement?.querySelector(".field-lock")?.textContent).toMatch(/^Locked: right click it/);
  const choices = screen.getAllByRole<HTMLButtonElement>("button", { name: /On wall|Kind of door/ });
  expect(choices.map(({ disabled }) => disabled)).toEqual(choices.map(() => true));
});

it("shows all of them in the inspector so, and opens them with the lock", () => {
  locked(true);
  select([{ kind: "building" }]);
  const { unmount } = render(<Inspector commands={[]} run={() => undefined} />);
  expect(fields().length).toBeGreaterThan(8);
  // How far an arrow key nudges is no figure of the building.
  expect(open()).toEqual([expect.stringMatching(/^Arrow keys move it by/)]);
  unmount();
  locked(false);
  render(<Inspector commands={[]} run={() => undefined} />);
  expect(open().length).toBe(fields().length);
});
