/** The page's side and the person's side of closing, so that the guard can be tried without a window. */
export interface ClosingParts {
  /** Tells the page that the window should close. */
  readonly askPage: () => void;
  /** Asks the person, natively, whether to close a page that doesn't answer; true closes. */
  readonly askPerson: () => Promise<boolean>;
  /** Closes for good. `agreed` is false where the page was not asked or did not answer. */
  readonly close: (agreed: boolean) => void;
  /** How long a live page takes at most to say that it heard, ms. */
  readonly patience: number;
}

type State = "open" | "asked" | "heard" | "person-asked";

/**
 * Closing goes through the page, which may first have to ask what becomes of unsaved work. A page that doesn't
 * even hear the question within the patience, or that is asked once more while it still owes an answer, leaves
 * the decision to the person.
 */
export class CloseGuard {
  readonly #parts: ClosingParts;
  #state: State = "open";
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: ClosingParts) {
    this.#parts = parts;
  }

  /** The person wants to close the window. */
  wanted(): void {
    if (this.#state === "heard") void this.#letPersonDecide();
    if (this.#state !== "open") return;
    this.#state = "asked";
    this.#timer = setTimeout(() => void this.#letPersonDecide(), this.#parts.patience);
    this.#parts.askPage();
  }

  /** The page heard the question and is alive. */
  heard(): void {
    if (this.#state !== "asked") return;
    clearTimeout(this.#timer);
    this.#state = "heard";
  }

  answered(may: boolean): void {
    if (this.#state === "open") return;
    clearTimeout(this.#timer);
    this.#state = "open";
    if (may) this.#parts.close(true);
  }

  /** The page is gone, and another may come in its place. */
  pageLost(): void {
    clearTimeout(this.#timer);
    this.#state = "open";
  }

  /** The page failed at its question: a window must not stay because of that. */
  failed(): void {
    if (this.#state === "asked" || this.#state === "heard") void this.#letPersonDecide();
  }

  async #letPersonDecide(): Promise<void> {
    clearTimeout(this.#timer);
    this.#state = "person-asked";
    const close = await this.#parts.askPerson();
    if (close) this.#parts.close(false);
    // The page still owes its answer, unless it gave it while the person was being asked.
    else if (this.#state === "person-asked") this.#state = "heard";
  }
}
