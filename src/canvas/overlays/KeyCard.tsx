/** The key of a map. On a small plan it is a strip of its colours, which opens and shuts the whole. */
import { type ReactNode, useState } from "react";
import { depthOpacity } from "../paint/depthPicture";
import { planSlot } from "../view/slots";

export interface KeyCardProps {
  readonly colours: readonly string[];
  /** What the colours tell, in a word or two. */
  readonly word: string;
  readonly children: ReactNode;
}

export function KeyCard({ colours, word, children }: KeyCardProps) {
  const [open, setOpen] = useState(false);
  return (
    <div className={open ? "key-card open" : "key-card"} data-slot ref={planSlot}>
      <button
        type="button"
        className="plan-card key-chip"
        aria-expanded={open}
        aria-label={`Key: ${word}`}
        onClick={() => setOpen(!open)}
      >
        <span className="key-colours" aria-hidden="true">
          {colours.map((colour) => (
            <span key={colour} style={{ background: colour, opacity: depthOpacity }} />
          ))}
        </span>
        {word}
      </button>
      <div className="key-whole">{children}</div>
    </div>
  );
}
