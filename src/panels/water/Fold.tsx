import type { ReactNode } from "react";
import "./water.css";

interface FoldProps {
  readonly title: string;
  /** Beside the title: what the part says while it is folded. */
  readonly aside?: string;
  /** Unfolded from the start: it is in use, or has something to say. */
  readonly open: boolean;
  readonly children: ReactNode;
}

/** A part of the step that stays folded until it is wanted. */
export function Fold({ title, aside, open, children }: FoldProps) {
  return (
    <details className="part fold" open={open}>
      <summary className="part-head">
        <h3 className="part-title">{title}</h3>
        {aside ? <span className="part-aside">{aside}</span> : null}
      </summary>
      <div className="part fold-body">{children}</div>
    </details>
  );
}
