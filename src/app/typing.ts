/** Takes what is being typed in a field or a cell as if it were left, so that an act of the whole plan has it; the focus stays there. */
export function takeTyping(): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement) || field.dataset.typed !== "true") return;
  const table = field.closest<HTMLElement>("[role=grid]");
  field.blur();
  (table ?? field).focus({ preventScroll: true });
}
