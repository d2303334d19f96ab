/** Messages that stay until they are read; only good news leaves by itself. */
import { memo, useEffect } from "react";
import { dismiss } from "../store/actions";
import type { Message } from "../store/state";
import { useApp } from "../store/useApp";
import { IconAction } from "./fields/Choice";
import { Icon } from "./icons";

const signs = { error: "stop", caution: "warn", done: "check" } as const;
const goodNewsStays = 6000;

export function Messages() {
  const messages = useApp((state) => state.messages);
  return (
    <section className="messages" aria-label="Messages">
      {messages.map((message) => (
        <MessageCard key={message.id} message={message} />
      ))}
    </section>
  );
}

const MessageCard = memo(function MessageCard({ message }: { message: Message }) {
  const { id, tone, text, more } = message;
  useEffect(() => {
    if (tone !== "done") return;
    const timer = setTimeout(() => dismiss(id), goodNewsStays);
    return () => clearTimeout(timer);
  }, [id, tone]);
  return (
    <div className={`message message-${tone}`} role={tone === "error" ? "alert" : "status"}>
      <Icon name={signs[tone]} />
      <div className="message-text">
        <p>{text}</p>
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
