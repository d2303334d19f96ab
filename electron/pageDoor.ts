import { ipcMain, type WebContents } from "electron";
import { type Ask, type Asks, channel, type Note, type Notes } from "./channels";
import { checks } from "./validate";

export type Answers = { [A in Ask]: (...given: Asks[A]["given"]) => Promise<unknown> | unknown };
export type Hearers = { [N in Note]: (...given: Notes[N]["given"]) => void };

interface Sender {
  readonly sender: WebContents;
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

/** True where a message comes from the top frame of the page we served, in the window we opened. */
export function isOurPage(
  { sender, senderFrame }: Sender,
  window: WebContents | null,
  pageOrigin: string,
): boolean {
  if (sender !== window || senderFrame === null) return false;
  return senderFrame.parent === null && senderFrame.url.startsWith(`${pageOrigin}/`);
}

/** Answers the page's asks and hears its notes, after checking who sends and what. */
export function openDoor(fromPage: (event: Sender) => boolean, answers: Answers, hearers: Hearers): void {
  for (const name of Object.keys(answers) as Ask[]) {
    const answer = answers[name] as (...given: unknown[]) => unknown;
    ipcMain.handle(channel(name), (event, ...given) => {
      if (!fromPage(event)) throw new Error("refused");
      return answer(...checks[name](given));
    });
  }
  for (const name of Object.keys(hearers) as Note[]) {
    const hear = hearers[name] as (...given: unknown[]) => void;
    ipcMain.on(channel(name), (event, ...given) => {
      if (!fromPage(event)) return;
      try {
        hear(...checks[name](given));
      } catch (error) {
        console.error(`The page sent something wrong (${name}):`, error);
      }
    });
  }
}
