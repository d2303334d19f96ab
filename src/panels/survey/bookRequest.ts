/** Asks the level book to take the keyboard at a row's reading; a new object each time. */
import { createStore } from "zustand/vanilla";

export const bookRequests = createStore<{ readonly asked: { readonly shot: string } | null }>(() => ({
  asked: null,
}));

export function askBook(shot: string): void {
  bookRequests.setState({ asked: { shot } });
}

export function tookRequest(): void {
  bookRequests.setState({ asked: null });
}
