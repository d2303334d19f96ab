/** Asks the level book to take the keyboard at a row's reading, or at the row for the next shot; a new object each time. */
import { createStore } from "zustand/vanilla";

export const bookRequests = createStore<{ readonly asked: { readonly shot: string | null } | null }>(() => ({
  asked: null,
}));

export function askBook(shot: string | null): void {
  bookRequests.setState({ asked: { shot } });
}

export function tookRequest(): void {
  bookRequests.setState({ asked: null });
}
