import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { present } from "../../src/document";
import { QuantitiesPanel } from "../../src/panels/steps/QuantitiesPanel";
import { showProject, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { formatMoney } from "../../src/units";
import { demoProject } from "../support/demo";

const state = () => appStore.getState();
afterEach(cleanup);

function type(text: string) {
  const field = screen.getByLabelText("Concrete, slab");
  fireEvent.change(field, { target: { value: text } });
  fireEvent.keyDown(field, { key: "Enter" });
  return field;
}

describe("prices", () => {
  it.each([
    ["yd3", 0.764554857984],
    ["m3", 1],
  ] as const)("typed for one %s, kept for a cubic metre, summed, undone", (volume, unit) => {
    const project = demoProject("pottery-studio");
    showProject(
      { ...project, prices: {}, display: { ...project.display, volume } },
      { name: null, token: null },
    );
    render(<QuantitiesPanel run={() => {}} />);
    const field = type("180");
    expect(present(state().history).prices.slab).toBeCloseTo(180 / unit, 9);
    expect(field).toHaveProperty("value", "180.00");
    const { bill, cost } = state().results;
    const slab = bill.find(({ id }) => id === "slab");
    expect(cost.total).toBeCloseTo(((slab?.quantity ?? 0) * (1 + (slab?.waste ?? 0)) * 180) / unit, 6);
    expect(
      screen.getAllByText(formatMoney(cost.total, volume), { normalizer: (text) => text }).length,
    ).toBeGreaterThan(0);
    undoEdit();
    expect(state().results.cost.total).toBe(0);
  });

  it("what is no number is refused beside the field and nothing is lost", () => {
    showProject(demoProject("pottery-studio"), { name: null, token: null });
    render(<QuantitiesPanel run={() => {}} />);
    type("a lot");
    expect(screen.getByText(/Can't read "a lot" as a price/)).toBeTruthy();
    expect(present(state().history).prices.slab).toBeUndefined();
  });
});
