import type { HostRequest } from "../src/host/host";

/** Requests to the page, held back until it listens. */
export class Requests {
  readonly #deliver: (request: HostRequest) => void;
  #waiting: HostRequest[] = [];
  #listening = false;

  constructor(deliver: (request: HostRequest) => void) {
    this.#deliver = deliver;
  }

  send(request: HostRequest): void {
    if (this.#listening) this.#deliver(request);
    else this.#waiting.push(request);
  }

  pageListens(): void {
    this.#listening = true;
    const held = this.#waiting;
    this.#waiting = [];
    for (const request of held) this.#deliver(request);
  }

  pageLost(): void {
    this.#listening = false;
  }
}
