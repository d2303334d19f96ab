import type { RecoveredWork } from "../src/host/host";
import { type RecoveryShelf, recoveryShelf } from "../src/host/recoveryShelf";
import type { FileTokens } from "./fileTokens";
import { recoveryFolder } from "./recoveryFolder";

type Work = { readonly name: string; readonly text: string; readonly token: string | null };

/** The page's recovery journal: its tokens become paths on disk, and tokens again when it is handed back. */
export class Recovery {
  readonly #folder: string;
  readonly #tokens: FileTokens;
  #shelf: RecoveryShelf;
  #last: Promise<void> = Promise.resolve();

  constructor(folder: string, tokens: FileTokens) {
    this.#folder = folder;
    this.#tokens = tokens;
    this.#shelf = this.#newShelf();
  }

  #newShelf(): RecoveryShelf {
    return recoveryShelf(recoveryFolder(this.#folder), `unsaved-${Date.now()}-${process.pid}`);
  }

  keep(work: Work | null): void {
    const place = work?.token ? this.#tokens.pathFor(work.token) : null;
    const kept = work && { name: work.name, text: work.text, place, when: Date.now() };
    this.#last = this.#shelf.keep(kept).catch((error: unknown) => {
      console.error("Unsaved work could not be noted:", error);
    });
  }

  async found(): Promise<RecoveredWork | null> {
    const work = await this.#shelf.found();
    if (work === null) return null;
    const token = work.place === null ? null : this.#tokens.tokenFor(work.place);
    return { name: work.name, text: work.text, token, when: work.when };
  }

  /** The page is lost: what it left is found by the next one. */
  async pageLost(): Promise<void> {
    await this.#last;
    this.#shelf = this.#newShelf();
  }

  /** Waits until everything handed in is on the disk, or gone from it. */
  settled(): Promise<void> {
    return this.#last;
  }
}
