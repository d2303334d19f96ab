import { cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { present, siteEdits } from "../../src/document";
import { NumberField, SlopeField } from "../../src/panels/fields/fields";
import { LengthField } from "../../src/panels/fields/LengthField";
import { showProject, tryRun, undoEdit } from "../../src/store/actions";
import { appStore } from "../../src/store/store";
import { useApp } from "../../src/store/useApp";
import { demoProject } from "../support/demo";

const grading = () => present(appStore.getState().history).grading;

/** Real fields on the real store: the apron of the studio. */
function Fields() {
  const { apron, slopes } = useApp((state) => present(state.history).grading);
  return (
    <>
      <LengthField
        label="Width"
        m={apron.width}
        onCommit={(width) => tryRun(siteEdits.changeApron, { patch: { width } })}
      />
      <LengthField
        label="Showing"
        small
        m={apron.showing}
        least={0}
        onCommit={(showing) => tryRun(siteEdits.changeApron, { patch: { showing } })}
      />
      <SlopeField
        label="Fall"
        ratio={apron.fall}
        onCommit={(fall) => tryRun(siteEdits.changeApron, { patch: { fall } })}
      />
      <NumberField
        label="Fill slopes"
        unit=": 1"
        value={slopes.fill}
        onCommit={(fill) => tryRun(siteEdits.changeSlopes, { patch: { fill } })}
      />
    </>
  );
}

const field = (label: string) => screen.getByLabelText<HTMLInputElement>(label);

function enter(label: string, text: string): void {
  fireEvent.focus(field(label));
  fireEvent.change(field(label), { target: { value: text } });
  fireEvent.keyDown(field(label), { key: "Enter" });
}

beforeEach(() => {
  showProject(demoProject("pottery-studio"), { name: null, token: null });
  render(<Fields />);
});
afterEach(cleanup);

describe("a field", () => {
  it("tells a limit by its own label, and reads a slope typed whole", () => {
    enter("Width", "0");
    expect(screen.getByRole("alert").textContent).toBe("Width must be more than 0.");
    enter("Width", "3");
    enter("Fill slopes", "0:1");
    expect(screen.getByRole("alert").textContent).toContain("should be more than 0: 3 means 3 : 1");
    enter("Fill slopes", "4:1");
    expect(grading().slopes.fill).toBe(4);
    enter("Fill slopes", "1 : 5");
    expect(grading().slopes.fill).toBe(5);
  });

  it("echoes a bare number while it is typed: feet for a width, inches for a thickness", () => {
    fireEvent.change(screen.getByLabelText("Width"), { target: { value: "8" } });
    expect(screen.getAllByRole("status").map((each) => each.textContent)).toContain("= 8′ 0″");
    fireEvent.change(screen.getByLabelText("Showing"), { target: { value: "8" } });
    expect(screen.getAllByRole("status").map((each) => each.textContent)).toContain("= 8″");
    fireEvent.blur(screen.getByLabelText("Showing"));
    expect(grading().apron.showing).toBeCloseTo(8 * 0.0254, 12);
  });

  it("shows the project's notation and takes any", () => {
    expect(field("Width").value).toBe("10′ 0″");
    enter("Width", "2.5 m");
    expect(grading().apron.width).toBe(2.5);
    expect(field("Width").value).toBe("8′ 2⅜″");
    enter("Fall", "1 in 20");
    expect(grading().apron.fall).toBeCloseTo(0.05, 12);
  });

  it("keeps what was typed, with the message beside it, and changes nothing", () => {
    const before = grading();
    enter("Width", "wide");
    expect(field("Width").value).toBe("wide");
    expect(field("Width").getAttribute("aria-invalid")).toBe("true");
    const alert = screen.getByRole("alert");
    expect(alert.textContent).toContain('"wide"');
    expect(field("Width").getAttribute("aria-describedby")).toContain(alert.id);
    expect(grading()).toBe(before);
    enter("Width", "12");
    expect(screen.queryByRole("alert")).toBeNull();
    expect(grading().apron.width).toBeCloseTo(12 * 0.3048, 12);
  });

  it("shows the refusal of the edit itself", () => {
    enter("Width", "0");
    expect(screen.getByRole("alert").textContent).toMatch(/must be more than 0/);
    enter("Showing", '-2"');
    expect(screen.getAllByRole("alert")).toHaveLength(2);
  });

  it("commits when it is left, and takes typing back by Esc", () => {
    fireEvent.focus(field("Fill slopes"));
    fireEvent.change(field("Fill slopes"), { target: { value: "4" } });
    fireEvent.blur(field("Fill slopes"));
    expect(grading().slopes.fill).toBe(4);
    fireEvent.change(field("Fill slopes"), { target: { value: "9" } });
    fireEvent.keyDown(field("Fill slopes"), { key: "Escape" });
    fireEvent.blur(field("Fill slopes"));
    expect(grading().slopes.fill).toBe(4);
    expect(field("Fill slopes").value).toBe("4");
  });

  it("follows an undo", async () => {
    enter("Fill slopes", "5");
    undoEdit();
    expect(await screen.findByDisplayValue("3")).toBe(field("Fill slopes"));
  });
});
