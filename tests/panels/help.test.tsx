import { cleanup, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { guideSteps, guides, tourStops, wordsOf } from "../../src/help";
import { GlossaryDialog } from "../../src/panels/help/GlossaryDialog";
import { GuideDialog } from "../../src/panels/help/GuideDialog";
import { Tour } from "../../src/panels/help/Tour";
import { LevelBook } from "../../src/panels/levelbook/LevelBook";
import { SidePanel } from "../../src/panels/SidePanel";
import { openDialog, openGlossary, select, setStep, setTour, showProject } from "../../src/store/actions";
import { appStore, shownProject } from "../../src/store/store";
import { demoProject } from "../support/demo";

// jsdom has no CSS.escape, which overlays ask for; the ids here need none.
Object.assign(globalThis, { CSS: { escape: (text: string) => text } });

const state = () => appStore.getState();

beforeEach(() => showProject(demoProject("pottery-studio"), { name: null, token: null }));
afterEach(cleanup);

/** Opens each "Why" in turn: what it tells, and what stands around the button it was opened by. */
function allWhys(): { figure: string; around: string; title: string }[] {
  return screen.getAllByRole("button", { name: /^Why:/ }).map((button) => {
    fireEvent.click(button);
    const dialog = screen.getByRole("dialog");
    const told = {
      title: within(dialog).getByRole("heading").textContent ?? "",
      figure: dialog.querySelector(".why-figure")?.textContent ?? "no figure",
      around: button.closest("tr, .fact, .bill-row, .answer, .check-figure, p, span")?.textContent ?? "",
    };
    fireEvent.keyDown(dialog, { key: "Escape" });
    expect(screen.queryByRole("dialog")).toBeNull();
    return told;
  });
}

describe("why", () => {
  it.each([
    ["lot", 1],
    ["shots", 1],
    ["building", 1],
    ["drive", 1],
    ["water", 5],
    ["floor", 8],
    ["foundation", 1],
    ["quantities", 12],
    ["setout", 8],
  ] as const)(
    "in the panel of the %s: each figure told is the figure that stands beside it",
    (step, least) => {
      setStep(step);
      render(<SidePanel run={() => {}} />);
      const whys = allWhys();
      expect(whys.length).toBeGreaterThanOrEqual(least);
      for (const { figure, around, title } of whys) {
        expect(figure).toMatch(/\d/);
        expect(around, title).toContain(figure);
      }
    },
  );

  it("of a limit of the floor: the height that it allows", () => {
    setStep("floor");
    render(<SidePanel run={() => {}} />);
    fireEvent.click(screen.getByRole("button", { name: /Not above:.*fill under the slab/ }));
    fireEvent.click(screen.getByRole("button", { name: "Why: highest floor it allows" }));
    const dialog = screen.getByRole("dialog");
    const figure = dialog.querySelector(".why-figure")?.textContent ?? "";
    expect(screen.getByText(new RegExp(`^Highest floor it allows: ${figure}`))).toBeTruthy();
    expect(dialog.textContent).toContain("International Residential Code R506.2.1");
  });

  it("of a shot's height, below the level book", () => {
    const shot = shownProject(state()).survey.shots.find(({ kind }) => kind === "ground");
    select([{ kind: "shot", id: shot?.id ?? "" }]);
    render(<LevelBook />);
    const [why] = allWhys();
    expect(why?.around).toContain(`Height ${why?.figure}`);
  });
});

describe("the guide", () => {
  it.each(guideSteps)("%s: stands with its drawing and all of its words", (step) => {
    setStep(step);
    openDialog("guide");
    render(<GuideDialog />);
    const dialog = screen.getByRole("dialog", { name: guides[step].title });
    expect(within(dialog).getByRole("img", { name: guides[step].caption })).toBeTruthy();
    for (const text of [...guides[step].doing, ...guides[step].slips, ...guides[step].cautions]) {
      const plain = wordsOf(text)
        .map(({ text: words }) => words)
        .join("");
      expect(dialog.textContent).toContain(plain);
    }
  });

  it("opens at the question mark of a panel, and goes on to the next step", () => {
    setStep("lot");
    render(
      <>
        <SidePanel run={() => {}} />
        <GuideDialog />
      </>,
    );
    fireEvent.click(screen.getByRole("button", { name: "Guide to this step" }));
    fireEvent.click(screen.getByRole("button", { name: "Next: Shots" }));
    expect(state().step).toBe("shots");
    expect(screen.getByRole("dialog", { name: guides.shots.title })).toBeTruthy();
  });
});

describe("the words of the trade", () => {
  it("are opened at the word that was asked for, and searched", () => {
    openGlossary("swale");
    render(<GlossaryDialog />);
    expect(document.querySelector(".glossary-here dt")?.textContent).toBe("swale");
    fireEvent.change(screen.getByRole("textbox", { name: "Find a word" }), { target: { value: "bulking" } });
    expect([...document.querySelectorAll(".glossary-entry dt")].map((dt) => dt.textContent)).toEqual([
      "swell",
    ]);
    fireEvent.change(screen.getByRole("textbox", { name: "Find a word" }), { target: { value: "qq" } });
    expect(screen.getByText(/No such word here/)).toBeTruthy();
  });
});

describe("the tour", () => {
  it("goes through its stops, opens their steps, and ends", () => {
    setTour(0);
    render(<Tour />);
    for (const [at, stop] of tourStops.entries()) {
      expect(screen.getByRole("dialog", { name: `Tour: ${stop.title}` }).textContent).toContain(stop.text);
      expect(state().step).toBe(stop.step);
      fireEvent.click(screen.getByRole("button", { name: at === tourStops.length - 1 ? "Done" : "Next" }));
    }
    expect(state().tour).toBeNull();
    expect(screen.queryByRole("dialog")).toBeNull();
  });

  it("is left by Esc and by its button, and goes by arrows", () => {
    setTour(2);
    render(<Tour />);
    fireEvent.keyDown(screen.getByRole("dialog"), { key: "ArrowLeft" });
    expect(state().tour).toBe(1);
    fireEvent.keyDown(screen.getByRole("dialog"), { key: "ArrowRight" });
    expect(state().tour).toBe(2);
    fireEvent.keyDown(document.body, { key: "Escape" });
    expect(state().tour).toBeNull();
  });
});
