import { randomBytes } from "node:crypto";

/** Paths stay in the main process; the page holds a token that means a path for as long as the program runs. */
export class FileTokens {
  readonly #paths = new Map<string, string>();
  readonly #tokens = new Map<string, string>();

  /** The same token each time for the same path. */
  tokenFor(path: string): string {
    const known = this.#tokens.get(path);
    if (known) return known;
    const token = randomBytes(16).toString("hex");
    this.#tokens.set(path, token);
    this.#paths.set(token, path);
    return token;
  }

  /** Null for a token that was never given out. */
  pathFor(token: string): string | null {
    return this.#paths.get(token) ?? null;
  }
}
