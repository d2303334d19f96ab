import { act, cleanup, fireEvent, render, screen } from "@testing-library/react";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { Messages } from "../../src/panels/Messages";
import { tell } from "../../src/store/actions";
import { appStore } from "../../src/store/store";

const pass = (ms: number) => act(() => void vi.advanceTimersByTime(ms));

beforeEach(() => {
  vi.useFakeTimers();
  appStore.setState({ messages: [] });
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

it("a caution leaves after a while, but not under the pointer; said again its time begins anew", () => {
  render(<Messages />);
  const say = () => act(() => tell({ tone: "caution", text: "Type a length in figures." }));
  say();
  pass(10_000);
  say();
  pass(10_000);
  const card = screen.getByRole("status");
  expect(card.textContent).toContain("(2 times)");
  fireEvent.pointerEnter(card);
  pass(60_000);
  expect(screen.queryByRole("status")).not.toBeNull();
  fireEvent.pointerLeave(card);
  pass(20_000);
  expect(screen.queryByRole("status")).toBeNull();
});

it("two are seen at once; errors stay, and those behind come when one is read", () => {
  render(<Messages />);
  act(() => {
    for (const text of ["one", "two", "three"]) tell({ tone: "error", text });
  });
  pass(120_000);
  const seen = () => screen.getAllByRole("alert").map(({ textContent }) => textContent);
  expect(seen()).toEqual(["two", "three"]);
  expect(screen.getByText("1 more message after these")).toBeTruthy();
  const [first] = screen.getAllByRole("button", { name: "Dismiss this message" });
  if (first) fireEvent.click(first);
  expect(seen()).toEqual(["one", "three"]);
});
