/** The messages over the window: what is said again is counted, and of what stands in the way only the newest stay. */
import type { Message } from "./state";

/** So many are seen at once. */
export const messagesShown = 2;
/** Errors wait until they are read; more of them than this say nothing new. */
const mostKept = 5;

export type Told = Omit<Message, "id" | "times">;

export function withMessage(messages: readonly Message[], told: Told): readonly Message[] {
  const id = 1 + Math.max(0, ...messages.map((each) => each.id));
  const said = messages.find(({ text, tone }) => text === told.text && tone === told.tone);
  const message = said ? { ...told, id: said.id, times: said.times + 1 } : { ...told, id, times: 1 };
  const others = messages.filter((each) => each !== said);
  const recent = others.slice(-(messagesShown - 1));
  const stay = others.filter((each) => each.tone === "error" || recent.includes(each));
  return [...stay, message].slice(-mostKept);
}

/** A caution is about what was tried: it is over once an edit goes through. */
export function withoutCautions(messages: readonly Message[]): readonly Message[] {
  return messages.some(({ tone }) => tone === "caution")
    ? messages.filter(({ tone }) => tone !== "caution")
    : messages;
}
