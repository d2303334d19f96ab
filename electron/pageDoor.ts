import { ipcMain } from "electron";
import { type Ask, type Asks, channel, type Note, type Notes } from "./channels";
import type { Sender } from "./sender";
import { checks } from "./validate";

export type Answers = { [A in Ask]: (...given: Asks[A]["given"]) => Promise<unknown> | unknown };
export type Hearers = { [N in Note]: (...given: Notes[N]["given"]) => void };

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
