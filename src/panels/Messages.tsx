/** Messages over the window, the newest two: errors stay until they are read, the others leave by themselves. */
import { memo, useEffect, useState } from "react";
import { dismiss } from "../store/actions";
import { messagesShown } from "../store/messages";
import type { Message } from "../store/state";
import { useApp } from "../store/useApp";
import { IconAction } from "./fields/Choice";
import { Icon } from "./icons";

const signs = { error: "stop", caution: "warn", done: "check" } as const;
/** How long each stays, ms, while neither pointer nor keyboard is on it. */
const stays = { error: null, caution: 12_000, done: 6000 } as const;

export function Messages() {
  const messages = useApp((state) => state.messages);
  const waiting = messages.length - messagesShown;
  return (
    <section className="messages" aria-label="Messages">
      {waiting > 0 ? (
        <p className="messages-waiting">{`${waiting} more ${waiting === 1 ? "message" : "messages"} after these`}</p>
      ) : null}
      {messages.slice(-messagesShown).map((message) => (
        <MessageCard key={message.id} message={message} />
      ))}
    </section>
  );
}

const MessageCard = memo(function MessageCard({ message }: { message: Message }) {
  const { tone, text, more, times, id } = message;
  const held = useLeaving(message);
  return (
    <div className={`message message-${tone}`} role={tone === "error" ? "alert" : "status"} {...held}>
      <Icon name={signs[tone]} />
      <div className="message-text">
        <p>
          {text}
          {times > 1 ? <span className="soft">{` (${times} times)`}</span> : null}
        </p>
        {more ? (
          <details>
            <summary>More</summary>
            <pre>{more}</pre>
          </details>
        ) : null}
      </div>
      <IconAction icon="close" label="Dismiss this message" onPress={() => dismiss(id)} />
    </div>
  );
});

/** Lets a message leave once its time is over and nobody is at it; said again, its time begins anew. */
function useLeaving(message: Message) {
  const [pointed, setPointed] = useState(false);
  const [focused, setFocused] = useState(false);
  useEffect(() => {
    const time = stays[message.tone];
    if (time === null || pointed || focused) return;
    const timer = setTimeout(() => dismiss(message.id), time);
    return () => clearTimeout(timer);
  }, [message, pointed, focused]);
  return {
    onPointerEnter: () => setPointed(true),
    onPointerLeave: () => setPointed(false),
    onFocus: () => setFocused(true),
    onBlur: () => setFocused(false),
  };
}
