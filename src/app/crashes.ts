/** What nobody caught becomes a message that stays; the project is untouched. */
import { tell } from "../store/actions";

export function tellCrashes(): void {
  window.addEventListener("error", (event) => {
    // Browsers report this when a resize is answered one frame later; nothing is wrong then.
    if (event.message.startsWith("ResizeObserver loop")) return;
    tellCrash(event.error ?? event.message);
  });
  window.addEventListener("unhandledrejection", (event) => tellCrash(event.reason));
}

export function tellCrash(error: unknown): void {
  console.error(error);
  tell({
    tone: "error",
    text: "Something went wrong in Drysill. Your plan is as it was before this act; save a copy if you are unsure.",
    more: error instanceof Error ? `${error.message}\n${error.stack ?? ""}` : String(error),
  });
}
