/** Whether the card of the selected shot's place is unfolded. */
import { createStore } from "zustand/vanilla";

export const placeCardStore = createStore<{ readonly open: boolean }>(() => ({ open: false }));

/** Unfolds it and hands it the keyboard. */
export function openPlaceCard(): void {
  placeCardStore.setState({ open: true });
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>("#place-of-shot .choice-button")?.focus();
  });
}

export function foldPlaceCard(open: boolean): void {
  placeCardStore.setState({ open });
}
